using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>
    /// Advice received; <paramref name="Allows"/> names what it expressly allows (known word: <see cref="AllowsAttempt"/>),
    /// and is empty where it expressly allows nothing.
    /// </summary>
    /// <param name="Answers">The question it answers.</param>
    /// <param name="Until">When what it allows, or its no, ends.</param>
    /// <param name="ReadBack">The carer repeated it and the adviser agreed.</param>
    /// <param name="Authority">In what office the adviser answers for it: duty doctor, medical director.</param>
    public sealed record AdviceReceived(
        string From,
        string Text,
        ImmutableArray<string> Allows = default,
        EntryId? Answers = null,
        Instant? Until = null,
        bool? ReadBack = null,
        string? Authority = null
    ) : Payload
    {
        public const string AllowsAttempt = "attempt";

        internal override Kind OfKind => Records.Kind.AdviceReceived;

        internal static AdviceReceived Through(FieldCodec f, AdviceReceived? p) =>
            new(
                f.RequiredText(Field.From, p?.From),
                f.RequiredText(Field.Text, p?.Text),
                f.Texts(Field.Allows, p?.Allows ?? default),
                f.OptionalId(Field.Answers, p?.Answers),
                f.Time(Field.Until, p?.Until),
                f.Flag(Field.ReadBack, p?.ReadBack),
                f.Text(Field.Authority, p?.Authority)
            );

        internal override string Said(DateTimeZone? zone)
        {
            var allows =
                Allows.IsDefault ? null
                : Allows.IsEmpty ? RecordTexts.AdviceAllowsNone
                : RecordTexts.AdviceAllows(string.Join(", ", Allows));
            var more = EntryWords.Listed(
                [
                    allows,
                    Until is { } until ? RecordTexts.AdviceUntil(Say.Time(until, zone)) : null,
                    Answers is { } question ? RecordTexts.AdviceAnswers(question.ToString()) : null,
                    ReadBack is { } back ? (back ? RecordTexts.AdviceReadBack : RecordTexts.AdviceNotReadBack) : null,
                ],
                "; "
            );
            return RecordTexts.Advice(From, Authority is null ? "" : $" ({Authority})", Text, more.Length == 0 ? "" : $" [{more}]");
        }
    }
}
