using System.Collections.Immutable;

namespace Farhold.Rehearsal.Pictures;

public enum DeedKind
{
    Tight,
    Loose,
    Packed,
    Dressed,

    /// <summary>What lay on a wound came off: done by nobody.</summary>
    GaveWay,
}

/// <param name="At">
/// In seconds from the scenario's start: when the tourniquet was tight, the packing in, the dressing on; when letting out began.
/// </param>
/// <param name="On">The limb or wound, in words.</param>
public sealed record DeedMark(double At, DeedKind Kind, string On);

/// <summary>
/// Blood lost over time, and what was done meanwhile. In seconds from the start, at which the trainee arrived, and mL since.
/// </summary>
/// <param name="Until">When the rehearsal was over; above 0.</param>
/// <param name="Lost">Once a minute, in order.</param>
/// <param name="Deeds">In order.</param>
public sealed record CoursePicture(double Until, ImmutableArray<(double At, double LostMl)> Lost, ImmutableArray<DeedMark> Deeds)
{
    public static CoursePicture Of(RehearsalSession session)
    {
        var frames = session.Frames.Where(f => f.At >= 0).ToArray();
        return new(
            Math.Max(1, session.Time),
            [.. frames.Select(f => (f.At, f.LostMl - frames[0].LostMl))],
            [.. session.Truth.Select(Mark).OfType<DeedMark>().Where(d => d.At >= 0 && d.At <= session.Time).OrderBy(d => d.At)]
        );
    }

    /// <summary>mL lost by a time, straight between the minutes.</summary>
    public double LostAt(double at)
    {
        var (before, after) = (Lost.LastOrDefault(l => l.At <= at), Lost.FirstOrDefault(l => l.At > at));
        return after.At <= before.At
            ? before.LostMl
            : before.LostMl + ((after.LostMl - before.LostMl) * (at - before.At) / (after.At - before.At));
    }

    private static DeedMark? Mark(TruthLine line) =>
        line switch
        {
            TruthLine.Began { Act: Act.Tighten { Loose: false, Limb: { } limb } } b => new(b.Until, DeedKind.Tight, Word(limb)),
            TruthLine.Began { Act: Act.Slacken { Limb: { } limb } } b => new(b.At, DeedKind.Loose, Word(limb)),
            TruthLine.Began { Act: Act.Pack pack } b => new(b.Until, DeedKind.Packed, pack.Wound),
            TruthLine.Began { Act: Act.Dress dress } b => new(b.Until, DeedKind.Dressed, dress.Wound),
            TruthLine.Failed failed => new(failed.At, DeedKind.GaveWay, failed.Wound),
            _ => null,
        };

    private static string Word(string limb) => Wire.Parse<Limb>(limb) is { } known ? Say.Limb(known) : limb;
}
