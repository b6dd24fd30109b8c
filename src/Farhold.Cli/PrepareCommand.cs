using System.Collections.Immutable;
using System.ComponentModel;
using System.Text;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class PrepareCommand(TimeProvider clock) : Command<PrepareCommand.Settings>
{
    public sealed class Settings : ProtocolSettings
    {
        [CommandArgument(0, "<TRIP>")]
        [Description("A trip before it begins: JSON with who goes, how far help is and what is packed. A dash reads standard input.")]
        public string Trip { get; init; } = "";

        [CommandOption("--route <ROUTE>")]
        [Description(
            "Take the hours to help from this route (as farhold reach does) in place of the trip's own. The track it names is looked "
                + "for beside it."
        )]
        public string? Route { get; init; }

        [CommandOption("--at <INSTANT>")]
        [Description("When the trip begins, such as 2031-05-03T06:00:00Z: a local protocol has to be valid then. Without it: now.")]
        public string? At { get; init; }

        [CommandOption("--practised")]
        [Description("A practice casualty was gone through on the phone that is taken along. Without it: not.")]
        public bool Practised { get; init; }

        [CommandOption("--json")]
        [Description("Print the check as JSON.")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (
            Opened.WholeOf(settings.Trip, bytes => TripReader.Read(bytes, settings.Trip, Opened.Shipped.Kit)) is not { } said
            || Opened.Asked(settings.At, clock) is not { } at
            || Opened.InForce(settings, at) is not var (rules, _)
        )
            return ErrorOutput.Unusable;
        var (trip, reach) = (said, ImmutableArray<string>.Empty);
        if (settings.Route is { } path)
        {
            if (Opened.RouteOf(path) is not { } route)
                return ErrorOutput.Unusable;
            var profile = Profiled(route, rules.Protocol.Clock, cancellationToken);
            trip = said.WithReach(profile.HoursToHelp);
            reach = [ReachWords.Hours(profile), .. Instead(said, trip), .. profile.Cautions];
        }
        else if (Beside(settings.Trip) is { } beside && Opened.RouteOf(beside) is { } near)
        {
            var profile = Profiled(near, rules.Protocol.Clock, cancellationToken);
            reach = [.. Disagreeing(said, profile, beside)];
        }

        var lines = TripCheck.Of(trip, rules, settings.Practised);
        if (settings.Json)
        {
            foreach (var line in reach)
                ErrorOutput.Say(line);
            Console.Out.WriteLine(Encoding.UTF8.GetString(TripJson.Write(lines)));
        }
        else
        {
            Print(reach, lines);
        }

        return 0;
    }

    private static ReachProfile Profiled(Route route, ClockLimits clock, CancellationToken cancellation)
    {
        using var interrupt = new Interrupt(cancellation);
        return ReachProfile.Of(route, ReachProfile.NightsOf(route), LimbDeadlines.Of(clock), new Rng(1), cancellation: interrupt.Token);
    }

    /// <summary>The route of the same trip, if it lies beside it: <c>a.route.json</c> beside <c>a.trip.json</c>.</summary>
    private static string? Beside(string trip)
    {
        const string ending = ".trip.json";
        if (!trip.EndsWith(ending, StringComparison.Ordinal))
            return null;
        var route = trip[..^ending.Length] + ".route.json";
        return File.Exists(route) ? route : null;
    }

    private static IEnumerable<string> Disagreeing(TripPlan said, ReachProfile profile, string route)
    {
        if (said.HoursSaid is { } own && own != said.WithReach(profile.HoursToHelp).HoursSaid)
            yield return $"The trip says {own} to help, its route says otherwise: {ReachWords.Hours(profile)} "
                + $"Amounts are for {own}; to use the route's: --route {route}";
    }

    private static IEnumerable<string> Instead(TripPlan said, TripPlan trip) =>
        said.HoursSaid is { } own && own != trip.HoursSaid ? [$"The trip itself says {own}, which does not count here."] : [];

    private static void Print(ImmutableArray<string> reach, ImmutableArray<TripCheckLine> lines)
    {
        Console.Out.WriteLine(VerdictWords.Caution);
        foreach (var line in reach)
            Console.Out.WriteLine(Plain.Line(line));
        foreach (
            var (title, state) in new[]
            {
                ("Missing", Truth.NotMet),
                ("Nobody said, so not to be counted on", Truth.Unknown),
                ("Ready", Truth.Met),
            }
        )
        {
            var these = lines.Where(l => l.State == state).ToArray();
            if (these.Length == 0)
                continue;
            Console.Out.WriteLine($"{title} ({these.Length}):");
            foreach (var line in these)
                Console.Out.WriteLine(Plain.Line($"  {line.Text}"));
        }

        Console.Out.WriteLine("Apart from water, the amounts are this project's own choice.");
    }
}
