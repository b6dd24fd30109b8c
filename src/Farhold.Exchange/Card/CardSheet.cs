using System.Collections.Immutable;
using Farhold.Exchange.HandOver;
using NodaTime;

namespace Farhold.Exchange.Card;

/// <summary>The card that goes with a casualty, as parts in order: paper and screen draw the same ones.</summary>
/// <param name="Title">Who it is about.</param>
/// <param name="AsOf">The instant it is told as of, and the zone of its times.</param>
/// <param name="Fingerprint">Of the record, for whoever wants to compare it with the data.</param>
/// <param name="Top">What has to be seen at once: cautions, and each limb with its times and its line.</param>
/// <param name="Front">The rest of what the next hands need.</param>
/// <param name="Log">Every entry, corrections and withdrawals beside what they are about.</param>
public sealed record CardSheet(
    string Title,
    string AsOf,
    bool Practice,
    string Fingerprint,
    ImmutableArray<CardPart> Top,
    ImmutableArray<CardPart> Front,
    ImmutableArray<CardPart> Log
)
{
    public static string PracticeNotice => CardTexts.PracticeNotice;

    public static string Caution => VerdictWords.Caution;

    /// <summary><c>Record fingerprint 3f2a 91bc 07de 5512 c0ff</c>.</summary>
    public string Print => CardTexts.Fingerprint(Fingerprint);

    public IEnumerable<CardPart> Parts => Top.Concat(Front).Concat(Log);

    /// <param name="rules">Those in force.</param>
    /// <param name="rhythm">Day and night, and the watches, as the app goes by; null where nobody tells, and nothing waits.</param>
    public static CardSheet Of(CareRecord record, Rulebook rules, Instant now, DateTimeZone zone, Rhythm? rhythm = null)
    {
        var facts = CareFacts.Of(record, rules, now, rhythm);
        var times = new CardTimes(zone);
        return new(
            Who(facts.Person),
            times.Head(now),
            facts.Practice,
            Evidence.Fingerprint.Of(record),
            [.. CardCare.Cautions(facts), .. CardLimbs.Top(facts, record, rules.Protocol, zone, times)],
            [
                .. CardNeeds.Of(facts, times),
                .. CardLimbs.Told(facts, times),
                .. CardNeeds.Injury(facts, times),
                .. CardCare.Wounds(facts, times),
                .. CardCare.Rest(facts, times),
                .. CardCare.Person(facts.Person),
                .. CardSigns.Of(facts, times),
                .. CardCare.Given(facts, times),
                .. CardCare.Places(facts, times),
                .. CardCare.Ahead(facts, times),
                .. CardCare.People(facts, times),
            ],
            CardLog.Of(record, times)
        );
    }

    private static string Who(Person person)
    {
        var parts = new[]
        {
            person.Aliases.IsEmpty ? CardTexts.NameNotRecorded : Either(person.Aliases),
            person.Sexes.IsEmpty ? null : Either(person.Sexes.Select(s => Say.Word(s))),
            person.AgesYears.IsEmpty ? null : CardTexts.Years(Either(person.AgesYears.Select(Say.Number))),
            person.MassesKg.IsEmpty ? null : CardTexts.Kilograms(Either(person.MassesKg.Select(Say.Number))),
        };
        return Plain.Line(string.Join(", ", parts.OfType<string>()));
    }

    /// <summary>Several values: the record disagrees, and the card says all.</summary>
    internal static string Either(IEnumerable<string> values) => Plain.Line(string.Join(CardTexts.Or, values.Distinct()));
}
