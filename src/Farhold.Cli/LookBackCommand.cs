using System.ComponentModel;
using System.Text;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class LookBackCommand(TimeProvider clock) : Command<LookBackCommand.Settings>
{
    public sealed class Settings : RecordByProtocolSettings
    {
        [CommandOption("--until <INSTANT>")]
        [Description("Look back over the record up to this instant. Without it: to the newest entry.")]
        public string? Until { get; init; }

        [CommandOption("--zone <ZONE>")]
        [Description("Time zone of the times, such as Europe/Oslo. Without it: UTC.")]
        public string? Zone { get; init; }

        [CommandOption("--json")]
        [Description("Print every observation as JSON, with the entries it rests on.")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Opened.RecordOf(settings.Record) is not { } record || Zones.Of(settings.Zone) is not { } zone)
            return ErrorOutput.Unusable;
        if (settings.Until is { } asked && WrittenInstant.TryParse(asked) is null)
            return ErrorOutput.Plainly($"--until {asked} is no instant of the years 1900 to 2500; write it like 2031-05-04T02:10:00Z");
        var until = settings.Until is { } given
            ? WrittenInstant.TryParse(given)!.Value
            : record.LastRecorded ?? Instant.FromDateTimeOffset(clock.GetUtcNow());
        if (Opened.InForce(settings, until) is not var (rules, _))
            return ErrorOutput.Unusable;
        var look = LookBack.Of(record, rules, until);
        if (settings.Json)
            Console.Out.WriteLine(Encoding.UTF8.GetString(ReviewJson.Write(look)));
        else
            ReviewText.Write(look, Console.Out, zone);
        return 0;
    }
}
