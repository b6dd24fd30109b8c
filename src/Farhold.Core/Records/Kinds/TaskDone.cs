using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record TaskDone(string Task, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.TaskDone;

        internal static TaskDone Through(FieldCodec f, TaskDone? p) =>
            new(f.RequiredName(Field.Task, p?.Task), f.Text(Field.Note, p?.Note));

        /// <remarks>What settles a doubt is named by its reason: its id is nothing but a print.</remarks>
        internal override string Said(DateTimeZone? zone) =>
            RecordTexts.TaskDone(Note is { } note && Doubt.IsNamedByReason(Task) ? note : $"{TaskWords.Of(Task)}{EntryWords.Note(Note)}");
    }
}
