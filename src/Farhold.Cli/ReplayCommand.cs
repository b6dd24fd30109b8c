using System.ComponentModel;
using System.Text;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class ReplayCommand : Command<ReplayCommand.Settings>
{
    public sealed class Settings : RecordSettings
    {
        [CommandOption("--until <INSTANT>")]
        [Description("Go on to this instant. Without it: to the newest entry.")]
        public string? Until { get; init; }

        [CommandOption("--protocol <FILE>")]
        [Description("A whole protocol in place of the shipped one.")]
        public string? Protocol { get; init; }

        [CommandOption("--local <FILE>")]
        [Description("A local protocol to lay over it. If it is refused, the protocol under it stays in force, and that is said.")]
        public string? Local { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Opened.RecordOf(settings.Record) is not { } record || Opened.ProtocolOf(settings.Protocol) is not { } protocol)
            return Refusing.Unusable;
        if (settings.Until is { } asked && WrittenInstant.TryParse(Encoding.UTF8.GetBytes(asked)) is null)
            return Refusing.Plainly($"--until {asked} is no instant of the years 1900 to 2500; write it like 2031-05-04T02:10:00Z");
        var (local, refused) = Opened.LocalOf(settings.Local, protocol);
        Refusing.Of(refused);
        var until = settings.Until is { } given ? WrittenInstant.TryParse(Encoding.UTF8.GetBytes(given))!.Value
            : record.LastRecorded ?? Instant.MaxValue;
        ReplayText.Write(record, local ?? protocol, until, refused, Console.Out, Width());
        return 0;
    }

    private static int Width() =>
        Console.IsOutputRedirected || Console.WindowWidth <= 0 ? ReplayText.UsualWidth : Console.WindowWidth;
}
