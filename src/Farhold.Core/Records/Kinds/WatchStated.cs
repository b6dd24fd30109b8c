using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>Someone can (or can't) watch the wound closely from now on.</summary>
    /// <param name="Who">Null: somebody other than the casualty.</param>
    public sealed record WatchStated(bool Able, Watcher? Who = null) : Payload
    {
        internal override Kind OfKind => Records.Kind.WatchStated;

        internal static WatchStated Through(FieldCodec f, WatchStated? p) =>
            new(f.RequiredFlag(Field.Able, p?.Able), f.Word(Field.Who, p?.Who));

        internal override string Said(DateTimeZone? zone)
        {
            var who = (Able, Who) switch
            {
                (true, Watcher.Casualty) => RecordTexts.WatchCasualtyAlone,
                (true, _) => RecordTexts.WatchSomeone,
                (false, _) => RecordTexts.WatchNobody,
            };
            return RecordTexts.WatchStated(who);
        }
    }
}
