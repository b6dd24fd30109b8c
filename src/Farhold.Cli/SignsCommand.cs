using System.ComponentModel;
using Farhold.Exchange.HandOver;
using Farhold.Exchange.Spreadsheet;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class SignsCommand(TimeProvider clock) : Command<SignsCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandOption("--csv")]
        [Description("Print every look as a table for a spreadsheet; without it, the last of each sign in words.")]
        public bool Csv { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        var facts = CareFacts.Of(opened.Record, opened.Rules, opened.At);
        if (settings.Csv)
            Console.Out.Write(SignsTable.Write(facts));
        else
            foreach (var line in new FactWords(facts, DateTimeZone.Utc).Signs)
                Console.Out.WriteLine(line);
        return 0;
    }
}
