using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>One sign over time.</summary>
/// <param name="Readings">In order of time, at least one.</param>
/// <param name="NotTaken">Looks at which it was left out.</param>
/// <param name="Stale">The last reading is too old to decide by.</param>
public sealed record SignCurve(
    ChartedSign Sign,
    ImmutableArray<Seen<double>> Readings,
    ImmutableArray<Instant> NotTaken,
    SignLimits Limits,
    SignChange? Change,
    bool Stale
);

/// <summary>The signs of a casualty over time, beside what was on each limb: all that their picture shows.</summary>
/// <param name="Gap">Where readings of a sign may lie further apart than this, its line is broken.</param>
/// <param name="Scores">NEWS2 at each look; empty where it is not made for the casualty.</param>
public sealed record SignPicture(
    Instant From,
    Instant Now,
    DateTimeZone Zone,
    Duration Gap,
    double? AgeYears,
    ImmutableArray<LimbPicture> Limbs,
    ImmutableArray<SignCurve> Curves,
    ImmutableArray<Seen<Mental>> Minds,
    ImmutableArray<Seen<ScoreBounds>> Scores
)
{
    /// <summary>Where no task of the protocol asks for signs (design).</summary>
    private static readonly Duration UsualInterval = Duration.FromHours(1);

    private static readonly Duration LeastSpan = Duration.FromMinutes(30);

    /// <summary>A value of one sign alone is no look at which others were left out (design).</summary>
    private const int SignsOfALook = 2;

    /// <summary>Null where no sign with a panel was taken in the time asked for.</summary>
    /// <param name="back">How far back; null: from the first look or tourniquet on.</param>
    public static SignPicture? At(State state, Rulebook rules, Instant now, DateTimeZone zone, Duration? back = null)
    {
        var from = back is { } span ? now - span : Instant.MinValue;
        var taken = state.Of(Kind.SignsTaken).Where(d => d.When.Latest <= now && d.When.Latest >= from && IsCharted(d)).ToImmutableArray();
        if (taken.IsEmpty)
            return null;
        var looks = Looks(taken, rules.Protocol.Looks.Within);
        var limbs = Enum.GetValues<Limb>()
            .Select(l => LimbPicture.Of(l, state, rules.Protocol, now, zone))
            .OfType<LimbPicture>()
            .ToImmutableArray();
        var first = limbs.Select(l => l.Clock.FirstTightened.Earliest).Append(taken.Min(d => d.When.Earliest)).Min();
        var age = CasualtyProfile.At(state, now)?.AgeYears;
        var every = rules.Protocol.Tasks.Where(t => t.DoneBy.Contains(Kind.SignsTaken)).Min(t => t.Every) ?? UsualInterval;
        return new(
            Instant.Min(Instant.Max(first, from), now - LeastSpan),
            now,
            zone,
            every * 2,
            age,
            limbs,
            [.. ChartedSign.All.Select(s => Curve(s, state, now, taken, looks, age, rules)).Where(c => !c.Readings.IsEmpty)],
            [
                .. taken
                    .Where(d => d.As<Payload.SignsTaken>().Mental is not null)
                    .Select(d => new Seen<Mental>(d.As<Payload.SignsTaken>().Mental!.Value, d.When)),
            ],
            News2Course.IsFor(state, now)
                ? News2Course.At([.. looks.Where(l => Held(l) >= SignsOfALook)], Freshness(rules, FieldRange.HeartRate.Field))
                : []
        );
    }

    private static SignCurve Curve(
        ChartedSign sign,
        State state,
        Instant now,
        ImmutableArray<Dated> taken,
        ImmutableArray<ImmutableArray<Dated>> looks,
        double? age,
        Rulebook rules
    )
    {
        ImmutableArray<Seen<double>> readings =
        [
            .. taken
                .Where(d => sign.Value(d.As<Payload.SignsTaken>()) is not null)
                .Select(d => new Seen<double>(sign.Value(d.As<Payload.SignsTaken>())!.Value, d.When)),
        ];
        return new(
            sign,
            readings,
            [
                .. looks
                    .Where(l => Held(l) >= SignsOfALook && l.All(d => sign.Value(d.As<Payload.SignsTaken>()) is null))
                    .Select(l => l[^1].When.Latest),
            ],
            SignLimits.For(sign.Range, age, rules),
            // Of all that is on record, whatever part of it is shown.
            SignChange.From(SignsSeen.Course(state, now, sign.Value), sign),
            readings is [.., var last] && !last.IsFreshAt(now, Freshness(rules, sign.Field))
        );
    }

    private static Duration Freshness(Rulebook rules, string field) => rules.Protocol.Freshness.GetValueOrDefault(field, UsualInterval);

    private static bool IsCharted(Dated entry) =>
        entry.As<Payload.SignsTaken>() is var s && (s.Mental is not null || ChartedSign.All.Any(c => c.Value(s) is not null));

    /// <summary>How many signs with a panel a look holds.</summary>
    private static int Held(ImmutableArray<Dated> look) =>
        ChartedSign.All.Count(s => look.Any(d => s.Value(d.As<Payload.SignsTaken>()) is not null))
        + (look.Any(d => d.As<Payload.SignsTaken>().Mental is not null) ? 1 : 0);

    /// <summary>Entries within a few minutes of the first of them are one look.</summary>
    private static ImmutableArray<ImmutableArray<Dated>> Looks(ImmutableArray<Dated> taken, Duration within)
    {
        var looks = ImmutableArray.CreateBuilder<ImmutableArray<Dated>>();
        for (var (start, end) = (0, 0); start < taken.Length; start = end)
        {
            while (end < taken.Length && taken[end].When.Latest - taken[start].When.Latest <= within)
                end++;
            looks.Add(taken[start..end]);
        }

        return looks.ToImmutable();
    }
}
