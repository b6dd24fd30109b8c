using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class LogCommand : Command<LogCommand.Settings>
{
    public sealed class Settings : RecordSettings;

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Opened.RecordOf(settings.Record) is not { } record)
            return ErrorOutput.Unusable;
        LogText.Write(record, Console.Out);
        return 0;
    }
}
