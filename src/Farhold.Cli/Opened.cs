using Farhold.Xml;
using NodaTime;

namespace Farhold.Cli;

/// <summary>A record that was read, the rules in force and the instant asked about.</summary>
/// <param name="Refused">Why a local protocol is not in force.</param>
/// <param name="ClockNote">Said where this machine's clock can't be right.</param>
internal sealed record Opened(CareRecord Record, Rulebook Rules, Instant At, IReadOnlyList<Refusal> Refused, string? ClockNote)
{
    /// <summary>The record, or null with the refusals said.</summary>
    public static CareRecord? RecordOf(string path) => FileOf(path) is { } file ? CareRecord.Of(file) : null;

    private static RecordFile? FileOf(string path)
    {
        if (WholeOf(path, bytes => RecordReader.Read(bytes, path)) is not { } file)
            return null;
        ErrorOutput.Of(file.Damaged.SelectMany(d => d.Explained).Concat(file.NotUnderstood(path)).OrderBy(r => r.Line));
        return file;
    }

    public static Opened? Of(JudgingSettings settings, TimeProvider clock)
    {
        if (FileOf(settings.Record) is not { } file || Asked(settings.At, clock) is not { } here)
            return null;
        var (record, now) = settings.At is null ? CareRecord.In(file, here) : (CareRecord.Of(file), here);
        if (InForce(settings, now) is not var (rules, refused))
            return null;
        return new(record, rules, now, refused, now == here ? null : Wrong(here, now));
    }

    /// <summary>What every run begins with.</summary>
    public static Rulebook Shipped => ShippedRules.Book;

    /// <summary>By a protocol in place of the shipped one, or null with the refusals said.</summary>
    public static Rulebook? RulesOf(string? path) =>
        path is null ? Shipped
        : WholeOf(path, bytes => ProtocolReader.Read(bytes, path)) is { } protocol ? Shipped.By(protocol)
        : null;

    /// <summary>What a file holds, or null with the refusals said.</summary>
    public static T? WholeOf<T>(string path, Func<ReadOnlyMemory<byte>, Read<T>> reader)
        where T : class
    {
        var read = Files.Read(path) switch
        {
            Read<ReadOnlyMemory<byte>>.Usable(var bytes) => reader(bytes),
            Read<ReadOnlyMemory<byte>>.Refused(var why) => new Read<T>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        return read is Read<T>.Usable(var whole) ? whole : Nothing<T>(((Read<T>.Refused)read).Refusals);
    }

    /// <summary>A route with the track it names beside it, what is odd about that said; null with the refusals said.</summary>
    public static Route? RouteOf(string path)
    {
        var route = WholeOf(path, bytes => RouteReader.Read(bytes, path, XmlTracks.In(Files.Beside(path))));
        foreach (var odd in route?.Track.Oddities ?? [])
            ErrorOutput.Say($"{odd} (taken all the same)");
        return route;
    }

    /// <summary>The rules in force, and why a local one is not, which is said; null, and said, where there is none at all.</summary>
    /// <param name="at">When it has to be valid.</param>
    public static (Rulebook Rules, IReadOnlyList<Refusal> Refused)? InForce(ProtocolSettings settings, Instant at)
    {
        if (RulesOf(settings.Protocol) is not { } under)
            return null;
        switch (settings.Local is { } path ? Trust.Local(path, settings.Issuers, under, at) : new Read<Rulebook>.Usable(under))
        {
            case Read<Rulebook>.Usable laid:
                return (laid.Value, []);
            case Read<Rulebook>.Refused no:
                ErrorOutput.Of(no.Refusals);
                return (under, no.Refusals);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>An instant asked for, else now; null, and said, where it is none.</summary>
    public static Instant? Asked(string? asked, TimeProvider clock)
    {
        if (asked is null)
            return Instant.FromDateTimeOffset(clock.GetUtcNow());
        if (WrittenInstant.TryParse(asked) is { } at)
            return at;
        ErrorOutput.Plainly($"--at {asked} is no instant of the years 1900 to 2500; write it like 2031-05-04T02:10:00Z");
        return null;
    }

    private static string Wrong(Instant here, Instant now) =>
        $"The clock of this machine shows {Farhold.Text.Say.Time(here)}, which is before the newest entry of the record. "
        + $"It can't be right: the time of that entry is used, {Farhold.Text.Say.Time(now)}. Give --at for another.";

    private static T? Nothing<T>(IEnumerable<Refusal> refusals)
        where T : class
    {
        ErrorOutput.Of(refusals);
        return null;
    }
}
