using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record QuestionAsked(string To, string Text) : Payload
    {
        internal override Kind OfKind => Records.Kind.QuestionAsked;

        internal static QuestionAsked Through(FieldCodec f, QuestionAsked? p) =>
            new(f.RequiredText(Field.To, p?.To), f.RequiredText(Field.Text, p?.Text));

        internal override string Said(DateTimeZone? zone) => RecordTexts.Asked(To, Text);
    }
}
