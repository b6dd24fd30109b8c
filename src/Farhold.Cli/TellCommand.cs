using System.ComponentModel;
using System.Text;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class TellCommand(TimeProvider clock) : Command<TellCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandOption("--json")]
        [Description("Print the whole evaluation as JSON.")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        var judgement = Judge.At(opened.Record, opened.Rules, opened.At);
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        if (settings.Json)
        {
            Console.Out.WriteLine(Encoding.UTF8.GetString(JudgementJson.Write(judgement, opened.Refused)));
            return 0;
        }

        if (opened.ClockNote is not null)
            Console.Out.WriteLine(opened.ClockNote);
        Console.Out.Write(JudgementText.Of(judgement, opened.Refused));
        return 0;
    }
}
