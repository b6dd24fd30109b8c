using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>When higher care is expected. Times are of the expected event, not of the entry.</summary>
    public sealed record HelpExpected(
        Instant Likely,
        Instant? Earliest = null,
        Instant? Latest = null,
        string? Basis = null,
        string? Plan = null,
        HelpCare? Care = null
    ) : Payload
    {
        internal override Kind OfKind => Records.Kind.HelpExpected;

        internal static HelpExpected Through(FieldCodec f, HelpExpected? p)
        {
            var help = new HelpExpected(
                Care: f.Word(Field.Care, p?.Care),
                Likely: f.RequiredTime(Field.Likely, p?.Likely),
                Earliest: f.Time(Field.Earliest, p?.Earliest),
                Latest: f.Time(Field.Latest, p?.Latest),
                Basis: f.Text(Field.Basis, p?.Basis),
                Plan: f.Name(Field.Plan, p?.Plan)
            );
            f.Check(
                !(help.Earliest > help.Likely || help.Latest < help.Likely),
                Field.Likely,
                "the likely time has to lie between earliest and latest"
            );
            return help;
        }

        internal override string Said(DateTimeZone? zone)
        {
            var range = (Earliest, Latest) switch
            {
                (null, null) => "",
                (var e, null) => RecordTexts.HelpEarliest(Say.Time(e!.Value, zone)),
                (null, var l) => RecordTexts.HelpLatest(Say.Time(l!.Value, zone)),
                var (e, l) => RecordTexts.HelpBetween(Say.Time(e!.Value, zone), Say.Time(l!.Value, zone)),
            };
            var from = EntryWords.Listed([Basis, Plan is { } plan ? RecordTexts.HelpPlan(plan) : null], "; ");
            var what = Care switch
            {
                HelpCare.Hands => RecordTexts.HelpHands,
                HelpCare.Clinic => RecordTexts.HelpClinic,
                HelpCare.Surgery => RecordTexts.HelpSurgery,
                _ => RecordTexts.Help,
            };
            return RecordTexts.HelpExpected(what, Say.Time(Likely, zone), range, from.Length == 0 ? "" : $" ({from})");
        }
    }
}
