using System.ComponentModel;
using System.Text;
using Farhold.Xml;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class ReachCommand : Command<ReachCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<ROUTE>")]
        [Description("A route: JSON. The track it names is looked for beside it. A dash reads standard input.")]
        public string Route { get; init; } = "";

        [CommandOption("-o|--output <FILE>")]
        [Description("Where to: a name ending in .svg, .gpx or .geojson.")]
        public string? Output { get; init; }

        [CommandOption("--start <INSTANT>")]
        [Description("When the casualty is assumed, in place of the route's own start.")]
        public string? Start { get; init; }

        [CommandOption("--protocol <FILE>")]
        [Description("The protocol whose window and limit are marked, in place of the shipped one.")]
        public string? Protocol { get; init; }

        [CommandOption("--trials <NUMBER>")]
        [Description("Trials at every point, 100 to 100000; 2000 without it.")]
        public int Trials { get; init; } = ReachProfile.UsualTrials;

        [CommandOption("--seed <NUMBER>")]
        [Description("Same seed, same answer. Without it: 1.")]
        public ulong Seed { get; init; } = 1;

        [CommandOption("--json")]
        [Description("Print the whole profile as JSON.")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var ending = settings.Output is { } output ? Path.GetExtension(output) : null;
        if (ending is not (null or ".svg" or ".gpx" or ".geojson"))
            return ErrorOutput.Plainly($"--output {settings.Output} has to end in .svg, .gpx or .geojson");
        if (settings.Trials is < 100 or > 100_000)
            return ErrorOutput.Plainly($"--trials {settings.Trials} has to be 100 to 100000");
        Instant? start = settings.Start is { } asked ? WrittenInstant.TryParse(Encoding.UTF8.GetBytes(asked)) : null;
        if (settings.Start is not null && start is null)
            return ErrorOutput.Plainly(
                $"--start {settings.Start} is no instant of the years 1900 to 2500; write it like 2031-05-04T02:10:00Z"
            );
        if (Opened.RulesOf(settings.Protocol) is not { } rules || Opened.RouteOf(settings.Route) is not { } read)
            return ErrorOutput.Unusable;
        var route = start is null ? read : read with { Start = start };
        using var interrupt = new Interrupt(cancellationToken);
        var profile = ReachProfile.Of(
            route,
            ReachProfile.NightsOf(route),
            LimbDeadlines.Of(rules.Protocol.Clock),
            new Rng(settings.Seed),
            settings.Trials,
            interrupt.Token
        );
        if (settings.Output is { } to)
        {
            var bytes = ending switch
            {
                ".svg" => Encoding.UTF8.GetBytes(ReachSvg.Draw(profile)),
                ".gpx" => ReachGpx.Write(profile),
                _ => ReachGeoJson.Write(profile).Utf8.ToArray(),
            };
            if (Files.Write(to, bytes) is { } fault)
                return ErrorOutput.Plainly(fault);
        }

        if (settings.Json)
            Console.Out.WriteLine(Encoding.UTF8.GetString(ReachJson.Write(profile).Utf8.Span));
        else
            Tell(profile);
        return 0;
    }

    private static void Tell(ReachProfile profile)
    {
        var blank = new[] { "" };
        var lines = ReachWords
            .Sentences(profile)
            .Concat(blank)
            .Concat(ReachWords.Table(profile))
            .Concat(blank)
            .Append("It rests on:")
            .Concat(profile.Rests.Select(rest => $"  [{rest.Mark.ToString().ToLowerInvariant()}] {rest.What} ({rest.Source})"))
            .Append(FormattableString.Invariant($"{profile.Points.Length} points, {profile.Trials} trials at each, {profile.Rng}"));
        foreach (var line in lines)
            Console.Out.WriteLine(Plain.Line(line));
    }
}
