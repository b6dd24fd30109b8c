using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using NodaTime;

namespace Farhold.Rehearsal.Runs;

/// <summary>What a carer does in a rehearsal that nobody watches.</summary>
/// <remarks>JSON Lines, a deed each: <c>{"at":"PT2M","look":["signs"],"log":true}</c>, an act, or an entry.</remarks>
public sealed record Script(ImmutableArray<Deed> Deeds)
{
    /// <summary>All that is looked at for the signs of shock; a cuff only where there is one.</summary>
    internal static readonly ImmutableArray<LookKind> Signs =
    [
        LookKind.Pulse,
        LookKind.Wrist,
        LookKind.Breaths,
        LookKind.Mental,
        LookKind.Dizzy,
        LookKind.Skin,
        LookKind.Refill,
        LookKind.Pressure,
    ];

    private const string SignsWord = "signs";
    private static readonly Instant Anytime = Instant.FromUtc(2031, 1, 1, 0, 0);
    private static readonly string[] Envelope = ["id", "happened", "recorded", "by", "previous", "practice"];

    public static Read<Script> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LineFile.Read<Script, Deed>(utf8, file, "an acts file", Line, (lines, _) => new([.. lines.Select(l => l.Line).OrderBy(d => d.At)]));

    private static Deed? Line(LocatedObject o, ReadOnlyMemory<byte> line)
    {
        o.Text("note", 2000);
        var at = SpanFields.Needed(o, "at");
        if (o.IsObject && new[] { o.Has("act"), o.Has("look"), o.Has("entry") }.Count(given => given) != 1)
            o.Refuse("at", "a line is an act, a look or an entry: exactly one of act, look and entry is expected");
        Deed? deed =
            at is not { } when ? null
            : o.Has("act")
                ? ActFields.ReadAsked(o, []) is { } act ? new Deed.Does(when, act)
                    : null
            : o.Has("look") ? Look(o, when)
            : o.Has("entry") ? Entry(o, when, line)
            : null;
        o.Done();
        return deed;
    }

    private static Deed.Looks? Look(LocatedObject o, double at)
    {
        var kinds = ImmutableArray.CreateBuilder<LookKind>();
        if (o.Any("look") is { } look)
            foreach (var item in look.Kind == JsonValueKind.Array ? look.Items : [look])
                if (item.Kind == JsonValueKind.String && item.Text == SignsWord)
                    kinds.AddRange(Signs);
                else if (item.Kind == JsonValueKind.String && Wire.Parse<LookKind>(item.Text) is { } kind)
                    kinds.Add(kind);
                else
                    o.File.RefuseValue(item, "look", LocatedFields.OneOf(Wire.Words<LookKind>().Append(SignsWord)));
        var wound = o.Text("wound", EntryNames.Longest);
        if (wound is null && kinds.Any(k => k is LookKind.Bleeding or LookKind.BleedingBelow))
            o.Refuse("look", "a look at bleeding is at a wound: give wound, such as w1");
        var log = o.Flag("log") ?? false;
        return kinds.Count == 0 ? null : new(at, [.. kinds.Distinct()], wound, log);
    }

    private static Deed.Logs? Entry(LocatedObject o, double at, ReadOnlyMemory<byte> line)
    {
        var entry = o.Object("entry");
        var (happened, acts) = (o.Object("happened"), o.Flag("acts") ?? true);
        (double, double)? range = null;
        if (happened is not null)
        {
            var (earliest, latest) = (
                SpanFields.Needed(happened, "earliest", -SpanFields.Longest),
                SpanFields.Needed(happened, "latest", -SpanFields.Longest)
            );
            if (earliest > latest)
                happened.Refuse("latest", "latest is before earliest");
            happened.Done();
            range = earliest is { } e && latest is { } l ? (e, l) : null;
        }

        if (entry is not { IsObject: true })
            return null;
        using var document = JsonDocument.Parse(line);
        using var composed = new MemoryStream();
        using (var w = new Utf8JsonWriter(composed))
        {
            w.WriteStartObject();
            w.WriteString("id", "check-1");
            EntryWriting.Write(w, "happened", Happened.At(Anytime));
            w.WriteString("recorded", WrittenInstant.Write(Anytime));
            w.WriteString("by", "check");
            foreach (var member in document.RootElement.GetProperty("entry").EnumerateObject())
            {
                if (Envelope.Contains(member.Name))
                    o.Refuse("entry", $"{member.Name} of an entry is filled in by the rehearsal: leave it out");
                member.WriteTo(w);
            }

            w.WriteEndObject();
        }

        switch (new EntryReader().Read(composed.ToArray(), "", 1))
        {
            case Read<Entry>.Usable { Value: { NotUnderstood.IsEmpty: true, Payload: var payload } }:
                return new(at, payload, range, acts);
            case Read<Entry>.Usable(var odd):
                o.Refuse("entry", $"{odd.NotUnderstood[0].Name} is not known in such an entry");
                return null;
            case Read<Entry>.Refused(var why):
                o.Refuse("entry", string.Join("; ", why.Select(r => r.Reason)));
                return null;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }
}

/// <summary>One deed, at a time in seconds from the scenario's start.</summary>
public abstract record Deed
{
    private Deed(double at) => At = at;

    public double At { get; }

    public sealed record Does(double At, AskedAct Act) : Deed(At);

    /// <param name="Log">Logs what was seen, when the last of the looks is over.</param>
    public sealed record Looks(double At, ImmutableArray<LookKind> Kinds, string? Wound, bool Log) : Deed(At);

    /// <param name="Happened">In seconds; null: then.</param>
    /// <param name="Acts">Whether the tap is the act.</param>
    public sealed record Logs(double At, Payload Payload, (double Earliest, double Latest)? Happened, bool Acts) : Deed(At);
}
