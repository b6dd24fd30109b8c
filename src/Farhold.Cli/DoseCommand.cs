using System.ComponentModel;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class DoseCommand(TimeProvider clock) : Command<DoseCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandArgument(1, "[DRUG]")]
        [Description("A drug by any of its names. Without it: every drug that the local protocol orders.")]
        public string? Drug { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        var formulary = opened.Rules.Formulary;
        if (settings.Drug is { } name && formulary.Named(name) is null)
            return ErrorOutput.Plainly(
                $"{name} is no drug of the formulary; there are {string.Join(", ", formulary.Drugs.Select(d => d.Id))}"
            );
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        Console.Out.WriteLine(VerdictWords.Caution);
        foreach (var line in RulesWords.Of(opened.Rules))
            Console.Out.WriteLine(line);
        var orders = opened.Rules.Protocol.Local?.Orders ?? [];
        var drugs = settings.Drug is { } asked ? [formulary.Named(asked)!] : formulary.Drugs.Where(d => orders.Contains(d.Id)).ToArray();
        if (drugs.Length == 0)
            Console.Out.WriteLine(
                "No local protocol in force orders a drug: ask for advice. Doses are shown only where a named authority orders them."
            );
        var judged = Judge.At(opened.Record, opened.Rules, opened.At);
        foreach (var (drug, answer) in Dosing.Of(drugs, opened.Record, judged))
        foreach (var line in DoseWords.Of(drug, answer, formulary))
            Console.Out.WriteLine(line);
        return 0;
    }
}
