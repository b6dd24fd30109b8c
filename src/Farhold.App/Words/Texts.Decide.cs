namespace Farhold.App.Words;

/// <summary>Of the decision: what is asked before an attempt, and why one is not offered yet.</summary>
public sealed partial class Texts
{
    public string QuickLookedOver => Get();

    public string QuickContact => Get();

    public string QuickMoved => Get();

    public string QuickImproved => Get();

    public string RestBleeding => Get();

    public string RestBleedingHint => Get();

    public string RestTrunk => Get();

    public string RestTrunkHint => Get();

    public string RestBreathing => Get();

    public string RestBreathingHint => Get();

    public string RestCold => Get();

    public string RestColdHint => Get();

    public string RestThinner => Get();

    public string RestThinnerHint => Get();

    public string RestNone => Get();

    public string RestNoneBut(string what) => Fill(what);

    public string HelpSurgery => Get();

    public string HelpSurgeryHint => Get();

    public string HelpClinic => Get();

    public string HelpClinicHint => Get();

    public string HelpHands => Get();

    public string HelpHandsHint => Get();

    public string CareEndedAt(string time) => Fill(time);

    public string HandedOver => Get();

    public string FieldMissing(string field) => Fill(field);

    public string MentalVoice => Get();

    public string MentalPain => Get();

    public string StepOn(string step, string limb) => Fill(step, limb);

    public string LatestIn(string care, int hours) => Fill(care, hours);

    public string ContactNobody => Get();

    public string ContactBy(string way) => Fill(way);

    public string ContactNotBy(string way) => Fill(way);

    public string ContactNobodyHint => Get();

    public string ContactReached => Get();

    public string ContactReachedHint => Get();

    public string ContactPhone => Get();

    public string ContactRadio => Get();

    public string ContactMessage => Get();

    public string ContactNoSignal => Get();

    public string MoveAhead => Get();

    public string MoveAheadHint => Get();

    public string MoveOver => Get();

    public string MoveOverHint => Get();

    public string TightenBled(string what) => Fill(what);

    public string TightenPrecaution(string what) => Fill(what);

    public string TightenReSited(string what) => Fill(what);

    public string ImprovedHint => Get();

    public string ImprovedLight => Get();

    public string ImprovedSupplies => Get();

    public string ImprovedHands => Get();

    public string WatchHint => Get();

    public string HasItStopped => Get();

    public string HasItStoppedOn(string what) => Fill(what);

    public string OtherLimbFirst(string what) => Fill(what);

    public string SecondLookDue(string what) => Fill(what);

    public string LookAgainBy(string what) => Fill(what);

    public string ReadBefore => Get();

    public string FindingsAsk => Get();

    public string FindingsSoft => Get();

    public string FindingsGiveWay => Get();

    public string ProtocolAsks => Get();

    public string ProtocolSoft => Get();

    public string ProtocolAdviceLifts => Get();

    public string ProtocolGivesWay(string what) => Fill(what);

    public string ProtocolGate(string what) => Fill(what);

    public string ProtocolTwice(string what) => Fill(what);

    public string StepBefore => Get();

    public string GateTitle => Get();

    public string GateDone => Get();

    public string HoldTwice => Get();
}
