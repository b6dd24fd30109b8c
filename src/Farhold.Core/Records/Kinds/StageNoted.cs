using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>What became of a stage of the way out; happened when it was begun, done or given up.</summary>
    /// <param name="Stage">Where it stands in the plan, such as <c>2.1.3</c>.</param>
    /// <param name="Plan">Which plan; null: the only one.</param>
    /// <param name="Note">What people call the stage, so that the log can be read without the plan.</param>
    public sealed record StageNoted(string Stage, StageState Became, string? Plan = null, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.StageNoted;

        internal static StageNoted Through(FieldCodec f, StageNoted? p) =>
            new(
                f.RequiredName(Field.Stage, p?.Stage),
                f.RequiredWord(Field.Became, p?.Became),
                f.Name(Field.Plan, p?.Plan),
                f.Text(Field.Note, p?.Note)
            );

        internal override string Said(DateTimeZone? zone)
        {
            var became = Became switch
            {
                StageState.Begun => RecordTexts.StageBegun,
                StageState.Done => RecordTexts.StageDone,
                _ => RecordTexts.StageGivenUp,
            };
            return RecordTexts.Stage(Stage, EntryWords.Note(Note), became, Plan is { } plan ? RecordTexts.StagePlan(plan) : "");
        }
    }
}
