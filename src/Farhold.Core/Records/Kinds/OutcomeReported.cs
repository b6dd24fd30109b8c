using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>What came of it, as <paramref name="From"/> reports later; may come after care has ended.</summary>
    /// <param name="Limb">Set together with <paramref name="LimbOutcome"/>.</param>
    public sealed record OutcomeReported(
        string From, bool? Survived = null, Limb? Limb = null, LimbFate? LimbOutcome = null, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.OutcomeReported;

        internal static OutcomeReported Through(FieldCodec f, OutcomeReported? p)
        {
            f.Together(Field.Limb, Field.LimbOutcome);
            return new(
                f.RequiredText(Field.From, p?.From),
                f.Flag(Field.Survived, p?.Survived),
                f.Word(Field.Limb, p?.Limb),
                f.Word(Field.LimbOutcome, p?.LimbOutcome),
                f.Text(Field.Note, p?.Note));
        }

        internal override string Said(DateTimeZone? zone)
        {
            var all = EntryWords.Listed(
                [
                    Survived is { } survived ? (survived ? "survived" : "died") : null,
                    Limb is { } limb && LimbOutcome is { } outcome ? $"{Say.Limb(limb)} {EntryWords.Word(outcome)}" : null,
                ],
                ", ");
            return $"Outcome, from {From}: {(all.Length == 0 ? "nothing recorded" : all)}{EntryWords.Note(Note)}";
        }
    }
}
