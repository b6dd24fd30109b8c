using Farhold.Exchange.HandOver;
using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>What the casualty needs and what is recommended, as of the document's date: words alone, by the rules named in them.</summary>
internal static class HandOverSection
{
    public const string Word = "hand-over";

    public static Composition.SectionComponent Of(CareRecord record, Rulebook rules, NodaTime.Instant at)
    {
        var words = new FactWords(CareFacts.Of(record, rules, at), NodaTime.DateTimeZone.Utc);
        return new()
        {
            Title = "Needs and recommendation",
            Code = Codes.Word(Word, "Needs and recommendation"),
            Text = Legible.Narrative([
                $"As of {Say.Time(at)}. {VerdictWords.Caution}",
                .. words.NeedLines,
                .. words.Recommendations,
                .. words.Mechanism,
                words.Injured,
                .. words.Looks,
                words.Protocol,
            ]),
        };
    }
}
