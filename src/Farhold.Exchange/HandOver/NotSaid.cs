using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>What the record holds and a spoken form passes over: the form says so, or its silence would pass for "nothing".</summary>
internal static class NotSaid
{
    private static readonly FormKind[] Structured = [FormKind.Mist, FormKind.Atmist, FormKind.Sbar];
    private static readonly FormKind[] AllButNineLine = [.. Structured, FormKind.Radio];
    private static readonly FormKind[] WithPerson = [FormKind.Atmist, FormKind.Sbar, FormKind.Radio];

    private static readonly ImmutableArray<Topic> Topics =
    [
        new(
            () => HandOverTexts.TopicWho,
            WithPerson,
            f => !f.Person.Aliases.IsEmpty || !f.Person.Sexes.IsEmpty || !f.Person.AgesYears.IsEmpty
        ),
        new(() => HandOverTexts.TopicAllergies, WithPerson, f => f.Person.Allergies is not null),
        new(() => HandOverTexts.TopicMedicines, [FormKind.Atmist, FormKind.Sbar], f => f.Person.Medicines is not null),
        new(() => HandOverTexts.TopicHistory, [FormKind.Atmist, FormKind.Sbar], f => !f.Person.Histories.IsEmpty),
        new(() => HandOverTexts.TopicMechanism, AllButNineLine, f => !f.Injuries.IsEmpty),
        new(
            () => HandOverTexts.TopicRest,
            AllButNineLine,
            f => !f.Regions.IsEmpty || !f.Steps.IsEmpty || f.Rest.Any(r => !r.Latest.IsEmpty)
        ),
        new(() => HandOverTexts.TopicSigns, AllButNineLine, f => f.Signs.Any(s => !s.Latest.IsEmpty)),
        new(() => HandOverTexts.TopicPulse, AllButNineLine, f => f.Limbs.Any(l => !l.DistalPulse.IsEmpty)),
        new(() => HandOverTexts.TopicFlow, Structured, f => !f.Limbs.IsEmpty),
        new(() => HandOverTexts.TopicAttempts, AllButNineLine, f => f.Limbs.Any(l => !l.Attempts.IsEmpty)),
        new(() => HandOverTexts.TopicCare, Structured, f => !f.Moves.IsEmpty || f.Wounds.Any(w => !w.Care.IsEmpty)),
        new(() => HandOverTexts.TopicDrugs, AllButNineLine, f => !f.Drugs.IsEmpty || !f.Fluids.IsEmpty || !f.Urine.IsEmpty),
        new(() => HandOverTexts.TopicAdvice, [FormKind.Sbar], f => !f.Advice.IsEmpty || !f.Contacts.IsEmpty || !f.Questions.IsEmpty),
        new(() => HandOverTexts.TopicHelp, [FormKind.Sbar, FormKind.Radio], f => !f.Help.IsEmpty),
        new(() => HandOverTexts.TopicPlace, [FormKind.Sbar, FormKind.Radio, FormKind.NineLine], f => !f.Positions.IsEmpty),
        new(() => HandOverTexts.TopicWatch, [FormKind.Sbar], f => !f.Watch.IsEmpty),
        new(() => HandOverTexts.TopicEnd, Structured, f => !f.Ended.IsEmpty || !f.Outcomes.IsEmpty),
        new(() => HandOverTexts.TopicDue, [FormKind.Sbar], f => !f.Judgement.Due.IsEmpty),
        new(() => HandOverTexts.TopicNotes, [], f => !f.Notes.IsEmpty),
        new(() => HandOverTexts.TopicSupplies, [], f => !f.Supplies.IsEmpty),
        new(() => HandOverTexts.TopicNewer, [], f => !f.OfNewerVersion.IsEmpty),
        new(() => HandOverTexts.TopicRules, [FormKind.Sbar], f => !f.Helpers.IsEmpty),
    ];

    /// <summary>One line; empty where the form says all that the record holds.</summary>
    public static ImmutableArray<string> In(FormKind form, CareFacts facts)
    {
        var left = Topics.Where(t => !t.SaidIn.Contains(form) && t.Holds(facts)).Select(t => t.Name()).ToArray();
        return left.Length == 0 ? [] : [HandOverTexts.NotSaid(string.Join(", ", left))];
    }

    private sealed record Topic(Func<string> Name, FormKind[] SaidIn, Func<CareFacts, bool> Holds);
}
