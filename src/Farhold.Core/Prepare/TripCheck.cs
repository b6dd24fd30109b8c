using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Prepare;

/// <summary>One line of the check before a trip.</summary>
/// <param name="State">Not met: missing. Unknown: nobody said.</param>
/// <param name="Sources">Keys of the kit list's sources.</param>
public sealed record TripCheckLine(string Id, Truth State, string Text, ImmutableArray<string> Sources);

/// <summary>What a party has and lacks before it sets out. What nobody said is unknown, never good.</summary>
/// <remarks>Amounts come from the kit list; that two are left to watch in turns, and a day at least is waited for, is design.</remarks>
public static class TripCheck
{
    /// <param name="practised">Whether a practice casualty was gone through on this phone.</param>
    /// <returns>What is missing first, then what nobody said, then the rest; each in order of weight.</returns>
    public static ImmutableArray<TripCheckLine> Of(TripPlan plan, Rulebook rules, bool practised) =>
        [.. Lines(plan, rules.Kit, rules.Protocol, practised).OrderBy(l => l.State)];

    /// <summary>Days that help may take from the worst place, rounded up, at least one.</summary>
    public static double WaitDays(double hoursToHelp) => Math.Max(1, Math.Ceiling(hoursToHelp / 24));

    /// <summary>Pieces to set out with; where nobody said how far help is, what one day of waiting takes.</summary>
    public static int Needed(CarryRule carry, TripPlan plan) =>
        carry.For(Math.Max(1, plan.Party.Length), WaitDays(plan.HoursToHelp ?? 0), plan.Days ?? 1);

    private static IEnumerable<TripCheckLine> Lines(TripPlan plan, KitList kit, Protocol protocol, bool practised)
    {
        yield return Party(plan);
        yield return Help(plan, protocol.Clock);
        yield return Told("alarm", plan.Alarm, PrepareTexts.Alarm);
        yield return new("contacts", Kleene.Of(!plan.Contacts.IsEmpty), PrepareTexts.Contacts, ["design"]);
        var trained = plan.Party.Count(m => m.Practised);
        yield return new(
            "practice",
            plan.Party.IsEmpty ? Truth.Unknown : Kleene.Of(trained >= 2),
            PrepareTexts.Trained(trained),
            ["design"]
        );
        yield return new("practice-here", Kleene.Of(practised), PrepareTexts.PractisedHere, ["design"]);
        yield return new(
            "local",
            Kleene.Of(protocol.Local is { Authority: not null, Standing: Standing.Verified }),
            protocol.Local is { Authority: { } by, Standing: Standing.Verified, Until: { } until } local
                ? PrepareTexts.LocalLoaded(local.Title, by.Name, Say.Time(until))
                : PrepareTexts.LocalMissing,
            ["design"]
        );
        yield return Told("route", plan.Route, PrepareTexts.Route);
        foreach (var item in kit.Items)
            if (item.Carry is { } carry)
                yield return Item(item, carry, plan);
    }

    private static TripCheckLine Party(TripPlan plan) =>
        new(
            "party",
            plan.Party.IsEmpty ? Truth.Unknown : Kleene.Of(plan.Party.Length >= 3),
            plan.Party.IsEmpty ? PrepareTexts.PartyUnknown : PrepareTexts.PartySmall(plan.Party.Length),
            ["design"]
        );

    /// <summary>Against the limits of a tourniquet: whoever is further away has to be able to take it off themselves.</summary>
    private static TripCheckLine Help(TripPlan plan, ClockLimits clock) =>
        plan.HoursToHelp is not { } hours
            ? new("help", Truth.Unknown, PrepareTexts.HelpUnknown, ["design"])
            : new(
                "help",
                Kleene.Of(hours < clock.Limit.TotalHours),
                hours < clock.Limit.TotalHours
                    ? PrepareTexts.HelpWithin(plan.HoursSaid)
                    : PrepareTexts.HelpFar(plan.OrMore ? "" : PrepareTexts.UpTo, plan.HoursSaid, Say.Duration(clock.Limit)),
                ["design"]
            );

    private static TripCheckLine Told(string id, string? said, string text) =>
        new(id, string.IsNullOrWhiteSpace(said) ? Truth.Unknown : Truth.Met, text, ["design"]);

    private static TripCheckLine Item(KitItem item, CarryRule carry, TripPlan plan)
    {
        var needed = Needed(carry, plan);
        var text = plan.Packed.TryGetValue(item.Id, out var packed)
            ? PrepareTexts.Of(SupplyWords.Amount(item, Between.Exactly(packed)), SupplyWords.Amount(item, Between.Exactly(needed)))
            : SupplyWords.Amount(item, Between.Exactly(needed));
        var state =
            !plan.Packed.ContainsKey(item.Id) ? Truth.Unknown
            : packed < needed ? Truth.NotMet
            // enough for some days and people says nothing of more
            : plan.HoursToHelp is null || plan.OrMore || plan.Party.IsEmpty ? Truth.Unknown
            : Truth.Met;
        return new(item.Id, state, $"{char.ToUpperInvariant(item.Name[0])}{item.Name[1..]}: {text}", item.Sources);
    }
}
