using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Review;

/// <summary>Limb by limb: tightening, bleeding, verdicts, attempts.</summary>
internal static class ReviewLimbs
{
    /// <summary>From bleeding seen to tight: the training standard is a minute; two are the hard limit (design).</summary>
    private static readonly Duration BleedingTightened = Duration.FromMinutes(2);

    public static IEnumerable<ReviewPoint> Of(ReviewScene scene) => scene.Clocks.SelectMany(c => Of(c, scene));

    private static IEnumerable<ReviewPoint> Of(LimbClock clock, ReviewScene scene)
    {
        var limb = clock.Limb;
        var tightened = scene.Of(Kind.TourniquetTightened).Where(t => t.As<Payload.TourniquetTightened>().Limb == limb).ToArray();
        return
        [
            .. First(clock, tightened, scene),
            .. Bleeding(limb, tightened, scene),
            .. Verdicts(limb, scene),
            .. Attempts(clock, scene),
            .. Loosened(clock, scene),
        ];
    }

    /// <summary>A time that is known to the minute is what the limits are counted from.</summary>
    private static IEnumerable<ReviewPoint> First(LimbClock clock, Dated[] tightened, ReviewScene scene)
    {
        if (tightened.Length == 0)
            yield break;
        var injured = scene.Of(Kind.InjuryStated).FirstOrDefault(i => !clock.FirstTightened.SurelyBefore(i.When));
        yield return new(ReviewKind.FirstTightened, clock.FirstTightened, clock.Limb, [.. Ids(injured), tightened[0].Id])
        {
            Lasting = injured is null ? null : ReviewScene.Between(injured.When, clock.FirstTightened),
            Fits = clock.FirstTightened.IsInstant ? Truth.Met : Truth.Unknown,
        };
    }

    /// <summary>The first of each run of looks that saw it bleed.</summary>
    private static IEnumerable<ReviewPoint> Bleeding(Limb limb, Dated[] tightened, ReviewScene scene)
    {
        var wounds = LimbWounds.Treated(limb, scene.State, scene.Until);
        Dated? before = null;
        foreach (var look in scene.Of(Kind.BleedingChecked).Where(b => wounds.Contains(b.As<Payload.BleedingChecked>().Wound)))
        {
            var active = look.As<Payload.BleedingChecked>().Bleeding == Farhold.Records.Bleeding.Active;
            if (active && before is null)
            {
                var next = tightened.FirstOrDefault(t => !t.When.SurelyBefore(look.When));
                var lasting = next is null ? (Elapsed?)null : ReviewScene.Between(look.When, next.When);
                yield return new(ReviewKind.BleedingSeen, look.When, limb, [look.Id, .. Ids(next)])
                {
                    SinceTightened = scene.Since(look.When, limb),
                    Lasting = lasting,
                    Asked = BleedingTightened,
                    Fits = lasting is null ? Truth.Unknown : Within(lasting.Value, BleedingTightened),
                };
            }

            before = active ? look : null;
        }
    }

    private static IEnumerable<ReviewPoint> Verdicts(Limb limb, ReviewScene scene)
    {
        Verdict? last = null;
        var possible = false;
        foreach (var turn in scene.Turns.Where(t => t.At <= scene.End))
        {
            if (turn.Judgement.Limbs.FirstOrDefault(l => l.Limb == limb) is not { } now)
            {
                last = null;
                continue;
            }

            var when = Happened.At(turn.At);
            if (now.Verdict != last)
                yield return Point(ReviewKind.VerdictChanged, when, now, scene);
            if (now is { Verdict: Verdict.Attempt, Attempt: null } && !possible)
            {
                possible = true;
                yield return Point(ReviewKind.AttemptPossible, when, now, scene);
            }

            last = now.Verdict;
        }
    }

    private static ReviewPoint Point(ReviewKind kind, Happened when, LimbVerdict limb, ReviewScene scene) =>
        new(kind, when, limb.Limb, [])
        {
            SinceTightened = scene.Since(when, limb.Limb),
            Verdict = limb.Verdict,
            Unknown = [.. limb.CheckFirst.Select(i => i.Name)],
            Reasons = limb.Verdict == Verdict.Attempt ? [] : [.. limb.Reasons.Select(r => r.Criterion.Id)],
        };

    /// <summary>Allowed is what the verdict was by what had been written down by then: nobody can go by what was entered later.</summary>
    private static IEnumerable<ReviewPoint> Attempts(LimbClock clock, ReviewScene scene)
    {
        var limb = clock.Limb;
        foreach (var attempt in Attempt.On(limb, scene.State, scene.Until))
        {
            var begun = scene
                .Of(Kind.AttemptStarted)
                .FirstOrDefault(s => s.When == attempt.Started && s.As<Payload.AttemptStarted>().Tourniquet == attempt.Tourniquet);
            if (begun is not null)
            {
                var known = scene.Before(attempt.Started.Latest, limb);
                var written = scene.Written(begun, limb);
                var possible = Allowed(limb, attempt.Started.Latest, scene);
                yield return new(ReviewKind.AttemptBegun, attempt.Started, limb, [begun.Id])
                {
                    SinceTightened = scene.Since(attempt.Started, limb),
                    Lasting = possible is { } at ? ReviewScene.Between(Happened.At(at), attempt.Started) : null,
                    Verdict = known?.Verdict,
                    WrittenVerdict = written?.Verdict,
                    Unknown = [.. written?.CheckFirst.Select(i => i.Name) ?? []],
                    Reasons = written is null or { Verdict: Verdict.Attempt } ? [] : [.. written.Reasons.Select(r => r.Criterion.Id)],
                    Fits = written?.Verdict switch
                    {
                        Verdict.Attempt => Truth.Met,
                        null or Verdict.CheckFirst => Truth.Unknown,
                        _ => Truth.NotMet,
                    },
                };
            }

            if (attempt.Ended is { } ended && ended.Latest <= scene.Until)
                yield return new(ReviewKind.AttemptEnded, ended, limb, [])
                {
                    SinceTightened = scene.Since(ended, limb),
                    Lasting = begun is null ? null : ReviewScene.Between(attempt.Started, ended),
                    Text = Wire.Word(attempt.Result),
                };
        }
    }

    /// <summary>Since when the verdict had allowed an attempt; null where it did not.</summary>
    private static Instant? Allowed(Limb limb, Instant at, ReviewScene scene)
    {
        Instant? since = null;
        foreach (var turn in scene.Turns.TakeWhile(t => t.At < at))
            since = turn.Judgement.Limbs.Any(l => l is { Verdict: Verdict.Attempt, Attempt: null } && l.Limb == limb)
                ? since ?? turn.At
                : null;
        return since;
    }

    private static IEnumerable<ReviewPoint> Loosened(LimbClock clock, ReviewScene scene)
    {
        var attempts = Attempt.On(clock.Limb, scene.State, scene.Until);
        foreach (var stretch in clock.Stretches.Where(s => s.Stopped == Truth.Met && s.To < scene.Until))
        {
            if (clock.Stretches.Any(s => s.From == stretch.To) || attempts.Any(a => Around(a, stretch.To)))
                continue;
            var by = scene
                .Of(Kind.TourniquetSlackened)
                .Concat(scene.Of(Kind.TourniquetRemoved))
                .LastOrDefault(l => l.When.Earliest <= stretch.To && l.When.Latest >= stretch.To);
            var before = scene.Before(stretch.To, clock.Limb);
            yield return new(ReviewKind.LoosenedOutsideAttempt, Happened.At(stretch.To), clock.Limb, [.. Ids(by)])
            {
                SinceTightened = scene.Since(Happened.At(stretch.To), clock.Limb),
                Verdict = before?.Verdict,
                WrittenVerdict = by is null ? null : scene.Written(by, clock.Limb)?.Verdict,
                Fits = before is null ? Truth.Unknown : Truth.NotMet,
            };
        }
    }

    /// <summary>Begun by then, and not over before.</summary>
    private static bool Around(Attempt attempt, Instant at) =>
        attempt.Started.Earliest <= at && (attempt.Ended is not { } ended || ended.Latest >= at);

    /// <summary>On the worse side: unknown where only a part of the range is within.</summary>
    internal static Truth Within(Elapsed elapsed, Duration limit) =>
        elapsed.Max <= limit ? Truth.Met
        : elapsed.Min > limit ? Truth.NotMet
        : Truth.Unknown;

    internal static IEnumerable<EntryId> Ids(Dated? entry) => entry is null ? [] : [entry.Id];
}
