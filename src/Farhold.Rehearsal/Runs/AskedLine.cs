using System.Text;

namespace Farhold.Rehearsal.Runs;

/// <summary>What somebody asks of a rehearsal: an act, a look, an inject, signs to show, another pace.</summary>
/// <remarks>As it stands in a truth file, under <c>asked</c>.</remarks>
public static class AskedLine
{
    private const int Longest = 10_000;

    private const double MostRate = 1_000;

    /// <param name="json">One object, such as <c>{"act":"slacken","limb":"left-leg"}</c>.</param>
    /// <returns>Null where it is none.</returns>
    public static TruthLine? Parse(string json, double at = 0)
    {
        var file = new LocatedJson(Encoding.UTF8.GetBytes(json), "asked", Longest);
        if (file.Parse() is not { } root)
            return null;
        var fields = new LocatedObject(file, root, "what is asked");
        var line = fields.IsObject ? Read(fields, at) : null;
        fields.Done();
        return file.Refusals.Count == 0 ? line : null;
    }

    /// <summary>Has it happen now, at whatever time the line was asked.</summary>
    /// <param name="by">In place of who is named there.</param>
    /// <returns>Why nothing comes of it, or null; null too for what nobody asked.</returns>
    public static string? Do(RehearsalSession session, TruthLine line, string? by = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        return line switch
        {
            TruthLine.ActAsked asked => session.Do(asked.Act, by ?? asked.By),
            TruthLine.LookAsked asked => session.Look(asked.Look, asked.Wound, by ?? asked.By),
            TruthLine.InjectAsked asked => session.InjectNow(asked.Inject),
            TruthLine.ShowAsked asked => session.Show(asked.Show),
            TruthLine.Paced paced => session.Pace(paced.Wall, paced.Rate),
            _ => null,
        };
    }

    internal static bool Is(TruthLine line) =>
        line is TruthLine.ActAsked or TruthLine.LookAsked or TruthLine.InjectAsked or TruthLine.ShowAsked or TruthLine.Paced;

    internal static TruthLine? Read(LocatedObject o, double at)
    {
        if (o.Has("look"))
            return ActFields.Word<LookKind>(o, "look") is { } kind
                ? new TruthLine.LookAsked(at, kind, o.Text("wound", EntryNames.Longest), By(o))
                : null;
        if (o.Has("inject"))
            return o.Text("inject", EntryNames.Longest) is { } inject ? new TruthLine.InjectAsked(at, inject) : null;
        if (o.Has("wall"))
            return o.Instant("wall") is { } wall && ActFields.Needed(o, "rate", 0, MostRate) is { } rate
                ? new TruthLine.Paced(at, wall, rate)
                : null;
        if (o.Has("show"))
            return o.Object("show") is { } show ? new TruthLine.ShowAsked(at, ShowFields.Read(show)) : null;
        return ActFields.ReadAsked(o, []) is { } act ? new TruthLine.ActAsked(at, act, By(o)) : null;
    }

    private static string? By(LocatedObject o) => o.Text("by", EntryNames.Longest);
}
