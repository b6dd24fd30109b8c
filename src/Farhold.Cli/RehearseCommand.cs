using System.ComponentModel;
using System.Globalization;
using System.Text;
using Farhold.Rehearsal.Runs;
using Farhold.Rehearsal.Scenarios;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class RehearseCommand : Command<RehearseCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<SCENARIO>")]
        [Description("A scenario: JSON, such as those of scenarios/.")]
        public string Scenario { get; init; } = "";

        [CommandOption("--acts <FILE>")]
        [Description("What the carer does: JSON Lines, each an act, a look or an entry at a time. Without it: nobody does anything.")]
        public string? Acts { get; init; }

        [CommandOption("--seed <N>")]
        [Description("Another seed than the scenario's own: it varies as the scenario says, and draws other luck.")]
        public string? Seed { get; init; }

        [CommandOption("--record <FILE>")]
        [Description("Write the practice record of the rehearsal.")]
        public string? Record { get; init; }

        [CommandOption("--truth <FILE>")]
        [Description("Write what truly happened, for the debrief. Don't read it before.")]
        public string? Truth { get; init; }

        [CommandOption("--share <FILE>")]
        [Description("Write the run in few words: another phone or command line makes the same of it.")]
        public string? Share { get; init; }

        [CommandOption("--run <FILE>")]
        [Description("A run as --share or a phone wrote it, in place of acts and seed.")]
        public string? Run { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        ulong? seed = null;
        if (settings.Seed is { } asked)
        {
            if (!int.TryParse(asked, NumberStyles.None, CultureInfo.InvariantCulture, out var given))
                return ErrorOutput.Plainly($"--seed {asked} is no whole number from 0 to {int.MaxValue}");
            seed = (ulong)given;
        }

        if (Opened.WholeOf(settings.Scenario, bytes => ScenarioReader.Read(bytes, settings.Scenario)) is not { } scenario)
            return ErrorOutput.Unusable;
        if (settings.Run is { } shared)
            return settings.Acts is not null || settings.Seed is not null
                ? ErrorOutput.Plainly("a run has its own acts and seed: leave --acts and --seed out")
                : Again(scenario, shared, settings);
        var script = settings.Acts is { } acts ? Opened.WholeOf(acts, bytes => Script.Read(bytes, acts)) : new Script([]);
        if (script is null)
            return ErrorOutput.Unusable;
        var refused = new List<(double At, string Why)>();
        var session = Headless.Run(scenario, script, seed, (at, why) => refused.Add((at, why)));
        RunReport.Write(session, refused, Console.Out);
        return Written(session, settings);
    }

    private static int Again(Scenario scenario, string file, Settings settings)
    {
        if (Opened.WholeOf(file, bytes => SharedRun.Read(bytes, file)) is not { } run)
            return ErrorOutput.Unusable;
        if (run.Objection(scenario, file) is { } objection)
            return ErrorOutput.Of([objection]);
        var session = run.Again(scenario);
        RunReport.Write(session, [], Console.Out);
        Console.Out.Write("\n" + run.Compared(session) + "\n");
        return Written(session, settings);
    }

    private static int Written(RehearsalSession session, Settings settings)
    {
        foreach (
            var (path, text) in new (string?, Func<string>)[]
            {
                (settings.Record, () => RecordOf(session)),
                (settings.Truth, () => TruthFile.Write(session.Truth)),
                (settings.Share, () => SharedRun.Write(session)),
            }
        )
            if (path is not null && Files.Write(path, Encoding.UTF8.GetBytes(text())) is { } why)
                return ErrorOutput.Plainly(why);
        return 0;
    }

    private static string RecordOf(RehearsalSession session) => string.Concat(session.Record.Select(e => e.Json + "\n"));
}
