using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>What a casualty needs, each with the fact it rests on. What can't be told is among them, as unknown.</summary>
/// <remarks>
/// Never from the list of due tasks. What was seen once stands until a look shows otherwise; that there is no need takes a look no older
/// than the protocol lets it count.
/// </remarks>
public static class Needs
{
    /// <summary>Below it, active rewarming; °C. Joint Trauma System, burn care, prolonged field care.</summary>
    private const double RewarmBelow = 36;

    /// <summary>In the order of <see cref="NeedKind"/>, then of the limbs as they are told.</summary>
    public static ImmutableArray<Need> Of(CareFacts facts) =>
        [
            BleedingOf(facts),
            .. facts.Limbs.Where(l => l.Tight != Truth.NotMet).Select(l => SecondTourniquet(l, facts)),
            .. facts.Limbs.Select(l => Surgery(l, facts)),
            .. facts.Limbs.IsEmpty
                ? (Need[])[new(NeedKind.Surgery, null, Truth.Unknown, HandOverTexts.SurgeryForLimb, HandOverTexts.NoTourniquetRecorded)]
                : [],
            Trunk(facts),
            Blood(facts),
            Warming(facts),
            Advice(facts),
        ];

    private static Need BleedingOf(CareFacts facts)
    {
        var what = HandOverTexts.SomeoneForBleeding;
        string[] bleeds =
        [
            .. facts.Wounds.Where(w => w.Bleeds).Select(w => HandOverTexts.BleedsSeen(w.Placed, Ago(w.LastLook, facts))),
            .. facts.Judgement.Observed.Where(o => o.Bleeding == Truth.Met).Select(o => HandOverTexts.BleedsAgain(Say.Limb(o.Limb))),
            .. Rest("bleedingElsewhere", facts) is { Yes: true } rest
                ? [HandOverTexts.ElsewhereSeen(Ago(rest.Latest, facts))]
                : (string[])[],
        ];
        if (bleeds.Length > 0)
            return new(NeedKind.StopBleeding, null, Truth.Met, what, string.Join("; ", bleeds));
        string[] open =
        [
            .. facts
                .Wounds.Select(w => (w.Placed, Missing: Missing(w.LastLook, "bleeding", facts)))
                .Where(w => w.Missing is not null)
                .Select(w => $"{w.Placed} {w.Missing}"),
            .. facts.Judgement.Observed.Where(o => o.Bleeding == Truth.Unknown).Select(o => HandOverTexts.LimbNotLooked(Say.Limb(o.Limb))),
            .. Missing(Rest("bleedingElsewhere", facts).Latest, "bleedingElsewhere", facts) is { } missing
                ? [HandOverTexts.ElsewhereMissing(missing)]
                : (string[])[],
        ];
        return open.Length > 0
            ? new(NeedKind.StopBleeding, null, Truth.Unknown, what, string.Join("; ", open))
            : new(NeedKind.StopBleeding, null, Truth.NotMet, what, HandOverTexts.NoWoundBleeds);
    }

    /// <summary>
    /// Both bleeding and the pulse beyond have to be stopped, else tighten or put a second one beside it: tactical combat casualty care.
    /// On an amputation no pulse can be felt.
    /// </summary>
    private static Need SecondTourniquet(LimbFact limb, CareFacts facts)
    {
        Need Made(Truth state, string because) =>
            new(NeedKind.SecondTourniquet, limb.Limb, state, HandOverTexts.SecondTourniquet(Say.Limb(limb.Limb)), because);
        var last = limb.Events.LastOrDefault(e => e.What is Payload.TourniquetTightened);
        bool Before(Stated s) => last is not null && s.When.SurelyBefore(last.When);
        var wounds = facts.Wounds.Where(w => w.IsOn(limb)).ToArray();
        if (wounds.FirstOrDefault(w => w.Bleeds) is { } bleeding)
            return Made(Truth.Met, HandOverTexts.WoundBleedsSeen(bleeding.Name, Ago(bleeding.LastLook, facts)));
        var felt = limb.DistalPulse.Where(s => !Before(s)).ToImmutableArray();
        if (felt.Any(s => s.As<Payload.SignsTaken>().DistalPulse![limb.Limb] == DistalPulse.Present))
            return Made(Truth.Met, HandOverTexts.PulseFelt(Ago(felt, facts)));
        var amputated = wounds.Any(w => w.Found.Any(f => f.As<Payload.WoundFound>().Nature == WoundNature.Amputation));
        string[] open =
        [
            .. wounds.Length == 0 ? [HandOverTexts.NoWoundDescribed] : (string[])[],
            .. wounds
                .Where(w => w.LastLook.IsEmpty || w.LastLook.Any(Before) || Missing(w.LastLook, "bleeding", facts) is not null)
                .Select(w => HandOverTexts.WoundNotLately(w.Name)),
            .. felt.IsEmpty && !amputated ? [HandOverTexts.PulseNotChecked] : (string[])[],
        ];
        return open.Length > 0 ? Made(Truth.Unknown, string.Join("; ", open)) : Made(Truth.NotMet, HandOverTexts.ItHolds);
    }

    private static Need Surgery(LimbFact limb, CareFacts facts)
    {
        Need Made(string because) => new(NeedKind.Surgery, limb.Limb, Truth.Met, HandOverTexts.SurgeryForThe(Say.Limb(limb.Limb)), because);
        if (limb.Tight == Truth.NotMet)
            return Made(HandOverTexts.LoosenedAfter(Say.Elapsed(limb.Occluded)));
        var perhaps = limb.Tight == Truth.Unknown ? HandOverTexts.CountedAsTight : "";
        return Made(perhaps + $"{Left(limb.WindowAt)}, {Left(limb.LimitAt)}") with { Until = (limb.WindowAt, limb.LimitAt) };

        string Left(Instant at)
        {
            var whole = Say.Duration(at - limb.FirstTightened.Earliest);
            return at > facts.At
                ? HandOverTexts.LeftTo(Say.Duration(at - facts.At), whole)
                : HandOverTexts.PassedAgo(whole, Say.Duration(facts.At - at));
        }
    }

    /// <summary>Penetrating injuries of neck, trunk and groin go to the highest level of care: field triage, Newgard 2022.</summary>
    private static Need Trunk(CareFacts facts)
    {
        var what = HandOverTexts.SurgeryForTrunk;
        var rest = Rest("trunkWound", facts);
        var wound = facts.Wounds.FirstOrDefault(w =>
            w.Found.Any(f =>
                f.As<Payload.WoundFound>() is { Nature: WoundNature.Bleeding, Region: { } region } && region != BodyRegion.Head
            )
        );
        if (wound is not null)
            return new(NeedKind.Surgery, null, Truth.Met, what, HandOverTexts.IsRecorded(wound.Placed));
        if (rest.Yes)
            return new(NeedKind.Surgery, null, Truth.Met, what, HandOverTexts.TrunkSeen(Ago(rest.Latest, facts)));
        return Missing(rest.Latest, "trunkWound", facts) is { } missing
            ? new(NeedKind.Surgery, null, Truth.Unknown, what, HandOverTexts.TrunkMissing(missing))
            : new(NeedKind.Surgery, null, Truth.NotMet, what, HandOverTexts.TrunkClear(Ago(rest.Latest, facts)));
    }

    /// <summary>Signs of shock, those that do not show yet among them (rules of the warning signs).</summary>
    private static Need Blood(CareFacts facts)
    {
        Need Made(Truth state, string because) => new(NeedKind.Blood, null, state, HandOverTexts.Blood, because);
        var shock = facts.Judgement.Shock;
        if (shock.State == Truth.Met)
            return Made(
                Truth.Met,
                HandOverTexts.SignsOfShockAre
                    + string.Join(
                        "; ",
                        Met(shock).SelectMany(f => f.Used).Where(u => u.Input != Input.AgeYears.Name).Select(u => u.Said).Distinct()
                    )
            );
        if (facts.Judgement.ShockLastKnown == Truth.Met)
            return Made(Truth.Met, HandOverTexts.ShockTooOld);
        if ((Warned("shock", facts) ?? Warned("hidden-shock", facts)) is { } warned)
            return Made(Truth.Met, warned);
        if (shock.State == Truth.NotMet)
            return Made(Truth.NotMet, HandOverTexts.ShockNone);
        var open = shock
            .Signs.Where(f => f.Against == Truth.Unknown)
            .Select(f => f.Needs)
            .OfType<Input>()
            .Select(i => InputWords.Name(i.Name));
        return Made(Truth.Unknown, HandOverTexts.ShockMissing(Listed(open)));
    }

    private static IEnumerable<Finding> Met(ShockPicture shock)
    {
        var met = shock.Signs.Where(f => f.Against == Truth.Met).ToArray();
        return met.Any(f => f.Criterion.IsSign) ? met.Where(f => f.Criterion.IsSign) : met;
    }

    private static Need Warming(CareFacts facts)
    {
        Need Made(Truth state, string because) => new(NeedKind.Warming, null, state, HandOverTexts.Warming, because);
        var very = Rest("veryCold", facts);
        var temperature = Sign("temperatureC", facts);
        var cool = Sign("cool", facts);
        if (very.Yes)
            return Made(Truth.Met, HandOverTexts.VeryColdSeen(Ago(very.Latest, facts)));
        if (temperature.Latest.FirstOrDefault(v => v.Number < RewarmBelow) is { } low)
            return Made(Truth.Met, HandOverTexts.TemperatureAgo(low.Text, Say.Elapsed(low.Age)));
        if (cool.Latest.FirstOrDefault(v => v.Of.As<Payload.SignsTaken>().Cool == true) is { } skin)
            return Made(Truth.Met, HandOverTexts.SkinCoolAgo(Say.Elapsed(skin.Age)));
        if (facts.Steps.FirstOrDefault(IsColdFound) is { } found)
            return Made(
                Truth.Met,
                HandOverTexts.NoteSeen(found.As<Payload.StepLooked>().Note ?? HandOverTexts.WetOrCold, Ago([found], facts))
            );
        if (Missing(very.Latest, "veryCold", facts) is null)
            return Made(Truth.NotMet, HandOverTexts.NotVeryCold(Ago(very.Latest, facts)));
        if (temperature.Latest is { IsEmpty: false } taken && taken.All(v => !v.Stale))
            return Made(
                Truth.NotMet,
                HandOverTexts.TemperatureAgo(string.Join(HandOverTexts.Or, taken.Select(v => v.Text).Distinct()), Say.Elapsed(taken[0].Age))
            );
        return Made(Truth.Unknown, very.Latest.IsEmpty ? HandOverTexts.NobodyFeltCold : HandOverTexts.LastFelt(Ago(very.Latest, facts)));
    }

    /// <summary>Who is wet or shivers is not very cold yet, and cools on: it stands until that step is looked at again.</summary>
    private static bool IsColdFound(Stated look) => look.As<Payload.StepLooked>() is { Step: LookStep.Cold, Found: StepFound.Something };

    private static Need Advice(CareFacts facts)
    {
        Need Made(Truth state, string because) => new(NeedKind.Advice, null, state, HandOverTexts.Advice, because);
        if (facts.Questions.LastOrDefault(q => !Answered(q, facts)) is { } open)
            return Made(
                Truth.Met,
                Plain.Line(HandOverTexts.AskedAgo(Say.Elapsed(open.When.Until(facts.At)), open.As<Payload.QuestionAsked>().Text))
            );
        var asks = facts
            .Judgement.Limbs.SelectMany(l => l.Reasons)
            .FirstOrDefault(f =>
                f.Against == Truth.Met && (f.Criterion.Role == Role.Asks || f.Criterion.Condition.Inputs.Contains(Input.Oversight))
            );
        if (asks is not null)
            return Made(Truth.Met, asks.Criterion.Text);
        if (!facts.Advice.IsEmpty)
            return Made(Truth.NotMet, HandOverTexts.LastGiven(Ago([facts.Advice[^1]], facts)));
        return facts.Contacts.IsEmpty
            ? Made(Truth.Met, HandOverTexts.AdviceNotAsked)
            : Made(Truth.Met, HandOverTexts.AdviceTried(Ago([facts.Contacts[^1]], facts)));
    }

    /// <summary>By advice that names it, or that names no question and is not surely older.</summary>
    private static bool Answered(Stated question, CareFacts facts) =>
        facts.Advice.Any(a => a.As<Payload.AdviceReceived>().Answers is { } to ? to == question.Id : !a.When.SurelyBefore(question.When));

    private static string? Warned(string rule, CareFacts facts) =>
        facts.Warnings.FirstOrDefault(w => w.State == Truth.Met && w.Rule.Id == rule)?.Rule.Text;

    private static RestFact Rest(string field, CareFacts facts) => facts.Rest.Single(r => r.Kind.Field == field);

    private static SignFact Sign(string field, CareFacts facts) => facts.Signs.Single(s => s.Kind.Field == field);

    /// <summary>Why a look tells nothing of now; null where it does.</summary>
    private static string? Missing(ImmutableArray<Stated> last, string input, CareFacts facts)
    {
        if (last.IsEmpty)
            return HandOverTexts.NotLookedAt;
        var fresh = facts.Judgement.Protocol.Freshness.GetValueOrDefault(input, Duration.MaxValue);
        return last.Any(l => l.When.Until(facts.At).Max > fresh) ? HandOverTexts.LastLooked(Ago(last, facts)) : null;
    }

    private static string Ago(ImmutableArray<Stated> last, CareFacts facts) =>
        string.Join(HandOverTexts.Or, last.Select(l => HandOverTexts.Ago(Say.Elapsed(l.When.Until(facts.At)))).Distinct());

    private const int Most = 4;

    private static string Listed(IEnumerable<string> names)
    {
        var all = names.Distinct().ToArray();
        return all.Length <= Most
            ? string.Join(", ", all)
            : HandOverTexts.AndMore(string.Join(", ", all.Take(Most)), Say.Number(all.Length - Most));
    }
}
