using System.Collections.Immutable;

namespace Farhold.Tests.Laws;

/// <summary>
/// What the rules of the decision ask of an attempt, checked entry by entry as a person with the page in hand would. It shares nothing
/// with the engine but the entries; where times overlap it gives the benefit of the doubt, so that what it finds is surely wrong.
/// </summary>
internal sealed class PageInHand(State state, Limb limb, Instant now)
{
    private static readonly double[] EveryAge = [0.5, 1, 2, 3, 5, 8, 11, 13, 34, 70];

    private static readonly (string Field, int Minutes, Func<Payload.CasualtyLookedOver, bool?> Of, bool Lifts)[] Rest =
    [
        ("bleeding elsewhere", 30, p => p.BleedingElsewhere, false),
        ("trunk", 240, p => p.TrunkWound, true),
        ("breathing", 30, p => p.BreathingHard, true),
        ("cold", 60, p => p.VeryCold, true),
        ("blood thinner", 100_000, p => p.BloodThinner, true),
    ];

    private readonly ImmutableArray<Dated> taken = [.. state.Of(Kind.SignsTaken).Where(s => s.When.Earliest <= now)];

    private readonly double[] ages =
    [
        .. state
            .Of(Kind.CasualtyOpened)
            .Select(o => o.As<Payload.CasualtyOpened>().AgeYears)
            .OfType<double>()
            .DefaultIfEmpty(-1)
            .SelectMany(a => a < 0 ? EveryAge : [a]),
    ];

    /// <summary>What is missing for an attempt to begin now; empty where nothing is.</summary>
    public IEnumerable<string> Missing() => Looks().Concat(LookedOver()).Concat(Watcher()).Concat(Wound()).Concat(Clock()).Concat(Word());

    private static Duration Minutes(int minutes) => Duration.FromMinutes(minutes);

    // Two looks.
    private IEnumerable<string> Looks()
    {
        string?[] aside = [null, .. taken.SelectMany(e => Shown(e)).Where(s => s.Soft).Select(s => s.Name).Distinct().Where(GivesWay)];
        if (!aside.Any(TwoClearLooks) && !(IsClosing && aside.Any(OneClearLook)))
            yield return "no two clear looks";
    }

    private bool TwoClearLooks(string? aside) =>
        Clear(aside)
            .Any(newest =>
                newest.When.Earliest >= now - Minutes(15)
                && Clear(aside)
                    .Any(first => first.When.Latest + Minutes(10) <= newest.When.Earliest && NothingSince(first.When.Latest, aside))
            );

    private bool OneClearLook(string? aside) =>
        Clear(aside).Any(look => look.When.Earliest >= now - Minutes(15)) && NothingSince(LastBled, aside);

    private bool NothingSince(Instant from, string? aside) =>
        taken.Where(e => e.When.Earliest > from).All(e => Shown(e).All(s => s.Name == aside));

    private IEnumerable<Dated> Clear(string? aside) =>
        taken.Where(end =>
            end.When.Latest <= now && end.When.Latest > LastBled && IsWhole(end) && Within(end).All(e => Shown(e).All(s => s.Name == aside))
        );

    private Dated[] Within(Dated end) =>
        [.. taken.Where(e => e.When.Latest <= end.When.Latest && e.When.Earliest >= end.When.Latest - Minutes(5))];

    private bool IsWhole(Dated end)
    {
        var look = Within(end).Select(e => e.As<Payload.SignsTaken>()).ToArray();
        var before = taken.Where(e => e.When.Earliest <= end.When.Latest).Select(e => e.As<Payload.SignsTaken>()).ToArray();
        var measured =
            look.Any(s => s.Systolic is not null)
            || (
                before.Any(s => s.NoPressureCuff == true)
                && (before.All(s => s.Systolic is null) || look.Any(s => s.CapillaryRefillS is not null))
            );
        return measured
            && look.Any(s => s.HeartRate is not null)
            && look.Any(s => s.RespiratoryRate is not null)
            && look.Any(s => s.Mental is not null)
            && look.Any(s => s.Dizzy is not null)
            && look.Any(s => s.Pale is not null)
            && look.Any(s => s.Cool is not null)
            && look.Any(s => s.Clammy is not null)
            && (ArmsTied || look.Any(s => s.RadialPulse is not null));
    }

    private IEnumerable<(string Name, bool Soft)> Shown(Dated entry)
    {
        var s = entry.As<Payload.SignsTaken>();
        bool At(Func<double, bool> sign) => ages.All(sign);
        if (s.Mental > Mental.Confused || (s.Mental == Mental.Confused && state.Of(Kind.DrugGiven).IsEmpty))
            yield return ("mental", false);
        if (s.RadialPulse > RadialPulse.Strong && !ArmsTied)
            yield return ("wrist", false);
        if (s.HeartRate > 120 && At(a => a >= 12))
            yield return ("heart rate", false);
        if (s.RespiratoryRate > 30 && At(a => a >= 12))
            yield return ("breathing", false);
        if (
            At(a =>
                s.Systolic
                < (
                    a >= 65 ? 110
                    : a >= 10 ? 90
                    : a < 1 ? 70
                    : 70 + (2 * Math.Floor(a))
                )
            )
        )
            yield return ("pressure", false);
        if (s.HeartRate > s.Systolic && At(a => a >= 10))
            yield return ("rate over pressure", false);
        if (s.Pale == true)
            yield return ("pale", true);
        if (s.Cool == true)
            yield return ("cool", true);
        if (s.Clammy == true)
            yield return ("clammy", true);
        if (s.Dizzy == true)
            yield return ("dizzy", true);
        if (s.Systolic < 100 && At(a => a >= 10))
            yield return ("low normal", true);
        if (s.HeartRate > 0.9 * s.Systolic && At(a => a >= 16))
            yield return ("index", true);
        if (At(a => a >= 65 ? s.CapillaryRefillS > 4.6 : s.CapillaryRefillS >= 3))
            yield return ("refill", true);
    }

    /// <summary>
    /// Advice given since it was seen allows an attempt; or nobody can be reached and three looks over half an hour show it.
    /// </summary>
    private bool GivesWay(string sign)
    {
        var seen = taken.Where(e => Shown(e).Any(s => s.Name == sign)).ToArray();
        var looks = seen.Where(e => e.When.Latest <= now && IsWhole(e)).ToArray();
        return Allowing.Any(a => seen.Any(s => s.When.Earliest <= a.When.Latest))
            || (Unreached && looks.Length >= 3 && looks.Max(l => l.When.Latest) - looks.Min(l => l.When.Earliest) >= Minutes(30));
    }

    private bool IsClosing => On >= Duration.FromMinutes(100) && On < Duration.FromHours(2);

    // The rest of the casualty.
    private IEnumerable<string> LookedOver()
    {
        var over = state.Of(Kind.CasualtyLookedOver).Where(o => o.When.Earliest <= now).ToArray();
        var regions = state.Of(Kind.RegionLooked).Select(r => r.As<Payload.RegionLooked>().Region).Distinct().Count();
        foreach (var (field, fresh, of, lifts) in Rest)
        {
            var said = over.Where(o => of(o.As<Payload.CasualtyLookedOver>()) is not null && o.When.Earliest >= now - Minutes(fresh))
                .ToArray();
            var newest = said.Where(o => said.All(other => !o.When.SurelyBefore(other.When)));
            var fine = newest.Any(o => of(o.As<Payload.CasualtyLookedOver>()) == false || (lifts && (Allowing.Length > 0 || Unreached)));
            if (
                !fine
                && !(regions >= 4 && field is "bleeding elsewhere" or "trunk")
                && !(lifts && (Allowing.Length > 0 || Unreached) && IsSaidOtherwise(field))
            )
                yield return $"not looked over, or not well: {field}";
        }

        foreach (
            var wound in state
                .Of(Kind.BleedingChecked)
                .Where(b => b.When.Earliest <= now)
                .GroupBy(b => b.As<Payload.BleedingChecked>().Wound)
        )
            if (
                wound
                    .Where(b => wound.All(other => !b.When.SurelyBefore(other.When)))
                    .All(b => b.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active)
                && state.Of(Kind.WoundFound).Any(f => f.As<Payload.WoundFound>().Wound == wound.Key && f.When.Earliest <= now)
            )
                yield return $"{wound.Key} bleeds";
    }

    /// <summary>Entries that say the same as a look over the casualty.</summary>
    private bool IsSaidOtherwise(string field) =>
        field switch
        {
            "trunk" => state.Of(Kind.WoundFound).Any(w => w.As<Payload.WoundFound>().Region is not null),
            "breathing" => taken.Any(e => e.As<Payload.SignsTaken>() is { RespiratoryRate: < 10 or > 29 } or { Spo2: < 90 }),
            "cold" => taken.Any(e => e.As<Payload.SignsTaken>().TemperatureC < 34),
            _ => state
                .Of(Kind.CasualtyOpened)
                .Any(o => o.As<Payload.CasualtyOpened>() is { Medicines.IsDefault: false } or { History: not null }),
        };

    private IEnumerable<string> Watcher()
    {
        var said = state.Of(Kind.WatchStated).Where(w => w.When.Earliest <= now).ToArray();
        if (
            !said.Where(w => said.All(other => !w.When.SurelyBefore(other.When)) && w.When.Earliest >= now - Minutes(60))
                .Any(w => w.As<Payload.WatchStated>() is { Able: true } p && (p.Who != Farhold.Records.Watcher.Casualty || Unreached))
        )
            yield return "nobody watches";
        var moves = state.Of(Kind.CasualtyMoved).Where(m => m.When.Earliest <= now).ToArray();
        if (
            moves.Any(m =>
                m.As<Payload.CasualtyMoved>().Phase == MovePhase.AboutTo
                && m.When.Latest <= now
                && moves.All(other => other == m || other.When.SurelyBefore(m.When))
            )
        )
            yield return "about to be moved";
    }

    private IEnumerable<string> Wound()
    {
        if (
            state
                .Of(Kind.WoundFound)
                .Any(w =>
                    w.When.Earliest <= now
                    && w.As<Payload.WoundFound>() is { Nature: WoundNature.Amputation or WoundNature.PartialAmputation } p
                    && p.Limb == limb
                )
        )
            yield return "an amputation";
        var mine = Mine.Select(t => t.As<Payload.TourniquetTightened>().Wound).ToArray();
        var named = mine.OfType<string>().ToArray();
        foreach (var wound in named)
            if (
                !state
                    .Of(Kind.BleedingChecked)
                    .Any(b =>
                        b.When.Earliest <= now
                        && b.When.Earliest >= now - Minutes(30)
                        && b.As<Payload.BleedingChecked>() is { Bleeding: not Bleeding.Active } p
                        && p.Wound == wound
                    )
            )
                yield return $"{wound} was not seen to be dry lately";
    }

    private IEnumerable<string> Clock()
    {
        if (On > Duration.FromMinutes(347) && !(Allowing.Length > 0 && Loosened))
            yield return "too late to begin";
        if (On >= Duration.FromHours(2) && Allowing.Length == 0 && !Unreached)
            yield return "past two hours, and nobody was asked";
    }

    private IEnumerable<string> Word()
    {
        var words = state
            .Of(Kind.AdviceReceived)
            .Where(a =>
                a.When.Earliest <= now
                && a.As<Payload.AdviceReceived>().Allows is { IsDefault: false } allows
                && (allows.IsEmpty || allows.Contains("attempt"))
            )
            .ToArray();
        if (
            words.Length > 0
            && words
                .Where(w => words.All(other => !w.When.SurelyBefore(other.When)))
                .All(w => w.As<Payload.AdviceReceived>() is { Allows.IsEmpty: true } no && !(no.Until <= now))
        )
            yield return "an express no stands";
        if (
            LastBled > Instant.MinValue
            && HereBled
            && !Allowing.Any(a => a.When.Latest > LastBled)
            && !state.Of(Kind.TaskDone).Any(t => t.As<Payload.TaskDone>().Task.StartsWith("improved.", StringComparison.Ordinal))
        )
            yield return "the last attempt bled";
    }

    private Duration On => now - Mine.Min(t => t.When.Earliest);

    private Dated[] Mine =>
        [.. state.Of(Kind.TourniquetTightened).Where(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Limb == limb)];

    private bool Loosened => state.Of(Kind.TourniquetSlackened).Concat(state.Of(Kind.TourniquetRemoved)).Any(l => l.When.Earliest <= now);

    private bool ArmsTied =>
        new[] { Limb.LeftArm, Limb.RightArm }.All(arm =>
            state.Of(Kind.TourniquetTightened).Any(t => t.As<Payload.TourniquetTightened>().Limb == arm)
        );

    /// <summary>Written down as bled, anywhere on the casualty, at the earliest.</summary>
    private Instant LastBled => Bled.Select(e => e.When.Earliest).DefaultIfEmpty(Instant.MinValue).Max();

    private bool HereBled =>
        Bled.Any(e =>
            Mine.Any(t => t.As<Payload.TourniquetTightened>().Tourniquet == e.As<Payload.AttemptEnded>().Tourniquet)
            && e.When.Earliest == LastBled
        );

    private IEnumerable<Dated> Bled =>
        state
            .Of(Kind.AttemptEnded)
            .Where(e =>
                e.When.Latest <= now
                && e.As<Payload.AttemptEnded>() is { Outcome: AttemptOutcome.Bled } p
                && state
                    .Of(Kind.TourniquetTightened)
                    .Any(t => t.When.Earliest <= now && t.As<Payload.TourniquetTightened>().Tourniquet == p.Tourniquet)
            );

    private Dated[] Allowing =>
        [
            .. state
                .Of(Kind.AdviceReceived)
                .Where(a =>
                    a.When.Latest <= now
                    && a.As<Payload.AdviceReceived>() is { Allows.IsDefault: false } p
                    && p.Allows.Contains("attempt")
                    && now < (p.Until ?? (a.When.Latest + Duration.FromHours(2)))
                ),
        ];

    private bool Unreached =>
        state
            .Of(Kind.ContactTried)
            .Any(c =>
                c.When.Earliest >= now - Minutes(60)
                && c.When.Latest <= now
                && (!c.As<Payload.ContactTried>().Reached || c.When.Earliest <= now - Minutes(30))
            );
}
