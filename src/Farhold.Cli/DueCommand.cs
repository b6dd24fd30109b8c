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
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Hours is { } asked && !(asked is > 0 and <= 720))
            return Refusing.Plainly("--hours is above 0, at most 720");
        if (Opened.Of(settings, clock) is not { } opened)
            return Refusing.Unusable;
        if (opened.ClockNote is { } note)
            Refusing.Say(note);
        var judgement = Judge.At(opened.Record, opened.Protocol, opened.At);
        Console.Out.WriteLine(VerdictWords.Caution);
        Console.Out.WriteLine("Due:");
        var until = settings.Hours is { } hours ? opened.At + Duration.FromHours(hours) : Instant.MaxValue;
        foreach (var due in judgement.Due.Where(d => d.At <= until))
            Console.Out.WriteLine($"  {When(due, opened.At)}  {(due.Limb is { } limb ? $"{Farhold.Say.Limb(limb)}: " : "")}{due.Text}");
        var rules = ShippedTrouble.Rules;
        var found = opened.Record.Readings.SelectMany(state => TroubleWatch.Of(state, rules, opened.Protocol, opened.At))
            .GroupBy(f => (f.Rule, f.Limb)).Select(g => g.MaxBy(f => f.State)!).ToArray();
        Console.Out.WriteLine(found.Any(f => f.State == Truth.Met) ? "Trouble:" : "Trouble: none seen");
        foreach (var finding in found.Where(f => f.State != Truth.NotMet).OrderByDescending(f => f.State))
            foreach (var line in TroubleWords.Of(finding, rules))
                Console.Out.WriteLine($"  {line}");
        return 0;
    }

    private static string When(DueTask due, Instant now) => due.AtOnce ? "AT ONCE" : due.At <= now ? $"overdue since {Farhold.Say.Time(due.At)}" : Farhold.Say.Time(due.At);
}
