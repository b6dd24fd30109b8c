using System.ComponentModel;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class DueCommand(TimeProvider clock) : Command<DueCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandOption("--hours <HOURS>")]
        [Description("Only what is due within so many hours. Without it: all.")]
        public double? Hours { get; init; }

        [CommandOption("--party <NAMES>")]
        [Description(
            "Who shares the watch, such as Ane,Jon,Mika: prints who watches when, who does what, and how much each sleeps, over "
                + "--hours (24)."
        )]
        public string? Party { get; init; }

        [CommandOption("--zone <ZONE>")]
        [Description(
            "Time zone of the place, such as Europe/Oslo: times are shown in it, and its nights let comfort wait for a change of watch."
        )]
        public string? Zone { get; init; }

        [CommandOption("--night <HOURS>")]
        [Description("When night is by the clock of the place. Without it: 22-6.")]
        public string Night { get; init; } = "22-6";
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Hours is { } asked && !(asked is > 0 and <= 720))
            return ErrorOutput.Plainly("--hours is above 0, at most 720");
        if (Zones.Of(settings.Zone) is not { } zone)
            return ErrorOutput.Unusable;
        if (Party.Of(settings.Party, settings.Zone is null ? null : zone, settings.Night, out var refusal) is not { } party)
            return ErrorOutput.Plainly(refusal!);
        if (party.Members.Length > 0 && settings.Hours > Roster.Longest.TotalHours)
            return ErrorOutput.Plainly($"a roster is for up to {Roster.Longest.TotalHours} h");
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        var length = Duration.FromHours(settings.Hours ?? 24);
        var watches = party.Members.IsEmpty ? [] : Roster.Of(party.Members, opened.At, opened.At + length);
        var judgement = Judge.At(opened.Record, opened.Rules, opened.At, party.Nights(opened.At).With(watches));
        Console.Out.WriteLine(VerdictWords.Caution);
        Console.Out.WriteLine("Due:");
        var until = settings.Hours is { } hours ? opened.At + Duration.FromHours(hours) : Instant.MaxValue;
        foreach (var due in judgement.Due.Where(d => d.At <= until))
            Console.Out.WriteLine(
                $"  {When(due, opened.At, party.Zone)}  "
                    + $"{(due.Limb is { } limb ? $"{Farhold.Text.Say.Limb(limb)}: " : "")}{due.Said(party.Zone)}{(due.Reason is { } reason ? $" {reason}" : "")}"
            );
        foreach (var withheld in judgement.Withheld)
            Console.Out.WriteLine($"  NOT NOW  {withheld.Text}");
        if (judgement.Exposure is { } exposure)
        {
            Console.Out.WriteLine("Air and wind:");
            foreach (var line in exposure.Lines(opened.At))
                Console.Out.WriteLine($"  {line}");
        }

        if (!watches.IsEmpty)
            foreach (
                var line in RosterText.Of(
                    TaskRoster.Of(judgement, party.Members, watches, party.Nights(opened.At), opened.At + length),
                    party.Zone
                )
            )
                Console.Out.WriteLine(line);
        var found = WarningSigns.Of(opened.Record, opened.Rules, opened.At);
        Console.Out.WriteLine(found.Any(f => f.State == Truth.Met) ? "Warning signs:" : "Warning signs: none seen");
        foreach (var finding in found.Where(f => f.State != Truth.NotMet))
        foreach (var line in WarningSignWords.Of(finding, opened.Rules.WarningSigns))
            Console.Out.WriteLine($"  {line}");
        return 0;
    }

    private static string When(DueTask due, Instant now, DateTimeZone zone) =>
        due.AtOnce ? "AT ONCE"
        : due.At <= now ? $"overdue since {Farhold.Text.Say.Time(due.At, zone)}"
        : Farhold.Text.Say.Time(due.At, zone);
}
