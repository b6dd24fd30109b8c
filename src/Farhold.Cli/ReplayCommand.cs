using System.ComponentModel;
using System.Text;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class ReplayCommand(TimeProvider clock) : Command<ReplayCommand.Settings>
{
    public sealed class Settings : RecordByProtocolSettings
    {
        [CommandOption("--until <INSTANT>")]
        [Description("Go on to this instant. Without it: to the newest entry.")]
        public string? Until { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Opened.RecordOf(settings.Record) is not { } record)
            return ErrorOutput.Unusable;
        if (settings.Until is { } asked && WrittenInstant.TryParse(Encoding.UTF8.GetBytes(asked)) is null)
            return ErrorOutput.Plainly($"--until {asked} is no instant of the years 1900 to 2500; write it like 2031-05-04T02:10:00Z");
        var until = settings.Until is { } given
            ? WrittenInstant.TryParse(Encoding.UTF8.GetBytes(given))!.Value
            : record.LastRecorded ?? Instant.MaxValue;
        var at = until == Instant.MaxValue ? Instant.FromDateTimeOffset(clock.GetUtcNow()) : until;
        if (Opened.InForce(settings, at) is not var (rules, refused))
            return ErrorOutput.Unusable;
        ReplayText.Write(record, rules, until, refused, Console.Out, Width());
        return 0;
    }

    private static int Width() => Console.IsOutputRedirected || Console.WindowWidth <= 0 ? ReplayText.UsualWidth : Console.WindowWidth;
}
