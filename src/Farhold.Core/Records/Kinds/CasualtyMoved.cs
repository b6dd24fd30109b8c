using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    public sealed record CasualtyMoved(Movement How, MovePhase Phase, string? Note = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.CasualtyMoved;

        internal static CasualtyMoved Through(FieldCodec f, CasualtyMoved? p) =>
            new(f.RequiredWord(Field.How, p?.How), f.RequiredWord(Field.Phase, p?.Phase), f.Text(Field.Note, p?.Note));

        internal override string Said(DateTimeZone? zone)
        {
            var how = How switch
            {
                Movement.Vehicle => RecordTexts.ByVehicle,
                Movement.Boat => RecordTexts.ByBoat,
                Movement.Aircraft => RecordTexts.ByAircraft,
                var word => EntryWords.Word(word),
            };
            return $"{(Phase == MovePhase.AboutTo ? RecordTexts.AboutToMove : RecordTexts.Moved)}: {how}{EntryWords.Note(Note)}";
        }
    }
}
