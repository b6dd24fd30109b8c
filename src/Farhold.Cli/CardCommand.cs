using System.ComponentModel;
using Farhold.Documents.Card;
using Farhold.Exchange.Card;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class CardCommand(TimeProvider clock) : Command<CardCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandOption("-o|--output <FILE>", isRequired: true)]
        [Description("Where to: a name ending in .pdf.")]
        public string Output { get; init; } = "";

        [CommandOption("--paper <PAPER>")]
        [Description("a5 or a4; a4 without it.")]
        public string Paper { get; init; } = "a4";

        [CommandOption("--zone <ZONE>")]
        [Description("Time zone of the times written, such as Europe/Oslo. Without it: UTC.")]
        public string? Zone { get; init; }

        [CommandOption("--night <HOURS>")]
        [Description("When night is by the clock of the zone: comfort may wait in it. Without it: 22-6; without a zone there is no night.")]
        public string Night { get; init; } = "22-6";
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Path.GetExtension(settings.Output) != ".pdf")
            return ErrorOutput.Plainly($"--output {settings.Output} has to end in .pdf");
        if (!Enum.TryParse<Paper>(settings.Paper, ignoreCase: true, out var paper) || !Enum.IsDefined(paper) || settings.Paper.Length != 2)
            return ErrorOutput.Plainly($"--paper {settings.Paper} has to be a5 or a4");
        if (Zones.Of(settings.Zone) is not { } zone)
            return ErrorOutput.Unusable;
        if (Party.Of(null, settings.Zone is null ? null : zone, settings.Night, out var refusal) is not { } party)
            return ErrorOutput.Plainly(refusal!);
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        var sheet = CardSheet.Of(opened.Record, opened.Rules, opened.At, zone, party.Nights(opened.At));
        if (Files.Write(settings.Output, CardPdf.Write(sheet, paper, opened.At, cancellationToken)) is { } fault)
            return ErrorOutput.Plainly(fault);
        Console.Out.WriteLine(Plain.Line($"{settings.Output}: {sheet.Title}, as of {sheet.AsOf}"));
        return 0;
    }
}
