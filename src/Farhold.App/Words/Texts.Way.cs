namespace Farhold.App.Words;

/// <summary>Of the way out.</summary>
public sealed partial class Texts
{
    public string PlaceWayOut => Get();

    public string ModeWalk => Get();

    public string ModeCarry => Get();

    public string ModeVehicle => Get();

    public string ModeBoat => Get();

    public string ModeAircraft => Get();

    public string ModeWait => Get();

    public string ModeWalkWhat => Get();

    public string ModeCarryWhat => Get();

    public string ModeVehicleWhat => Get();

    public string ModeBoatWhat => Get();

    public string ModeAircraftWhat => Get();

    public string ModeWaitWhat => Get();

    public string EvidenceComputed => Get();

    public string EvidenceAssumption => Get();

    public string LegTimes(string first, string second, string third) => Fill(first, second, third);

    public string LegTenths(string first, string second) => Fill(first, second);

    public string LegTenth(int first) => Fill(first);

    public string LegGround(string first, string second, string third) => Fill(first, second, third);

    public string LegBearers(int first) => Fill(first);

    public string LegSpeed(string first) => Fill(first);

    public string LegHalts => Get();

    public string LegDaylight => Get();

    public string LegHold(string first, string second, string third) => Fill(first, second, third);

    public string OfTen(int first) => Fill(first);

    public string OfHundred(string first) => Fill(first);

    public string LegHow => Get();

    public string LegByGround => Get();

    public string LegByTimes => Get();

    public string LegTimesLabel => Get();

    public string LegLow => Get();

    public string LegLikely => Get();

    public string LegHigh => Get();

    public string LegTimesRise => Get();

    public string LegOtherTime => Get();

    public string LegGroundLabel => Get();

    public string LegKm => Get();

    public string LegUp => Get();

    public string LegDown => Get();

    public string LegSpeedLabel => Get();

    public string LegBearersLabel => Get();

    public string LegUnderfoot(string first) => Fill(first);

    public string LegUsual => Get();

    public string LegSurface => Get();

    public string LegRule(string first) => Fill(first);

    public string LegRules => Get();

    public string LegPackaging => Get();

    public string LegWanted(int first) => Fill(first);

    public string LegLasts => Get();

    public string LegLastsOne(int first, int second, string third) => Fill(first, second, third);

    public string LegLastsHow => Get();

    public string PriorsTitle => Get();

    public string PriorsWhy => Get();

    public string PriorTimes(double first, double second, double third) => Fill(first, second, third);

    public string LegDark => Get();

    public string LegGoesOn => Get();

    public string LegHaltsNight => Get();

    public string LegFlies => Get();

    public string LegAnyHour => Get();

    public string LegDaylightOnly => Get();

    public string LegNeedsPlace => Get();

    public string LegName => Get();

    public string LegEarlier => Get();

    public string LegRemove => Get();

    public string LegHoldTitle(string what) => Fill(what);

    public string LegHoldLeftOut => Get();

    public string LegHoldWhy => Get();

    public string LegHoldChance => Get();

    public string LegHoldTimes => Get();

    public string LegMissing => Get();

    public string LegLeave => Get();

    public string LegKeep => Get();

    public string LegAdd => Get();

    public string LegAddHere => Get();

    public string ForkChance => Get();

    public string ForkFirst => Get();

    public string ForkAll => Get();

    public string ForkRemove => Get();

    public string WayHelicopter => Get();

    public string WayElse => Get();

    public string WayNumber(int first) => Fill(first);

    public string WayChance(string first) => Fill(first);

    public string WayStart => Get();

    public string WayStartNow => Get();

    public string WayStartIn(string first) => Fill(first);

    public string WayPlace => Get();

    public string WayPlaceWhy => Get();

    public string WayPlaceIs(string first) => Fill(first);

    public string WayPlaceFault(int first, string second) => Fill(first, second);

    public string WayLoadTitle => Get();

    public string WayLoad => Get();

    public string WayLoadWhy => Get();

    public string WayTooLarge(long first) => Fill(first);

    public string WayRefused => Get();

    public string WayAnswer => Get();

    public string WayBefore(string first, string second) => Fill(first, second);

    public string WayPast => Get();

    public string WayChanceIs(string first, string second, string third) => Fill(first, second, third);

    public string WayNoLimb => Get();

    public string WayQuantiles => Get();

    public string WayShare => Get();

    public string WayArrivedBy => Get();

    public string WayError => Get();

    public string WayTrials(int trials) => Fill(trials);

    public string WayDrivers => Get();

    public string WayDriversWhy => Get();

    public string WayWhatIf => Get();

    public string WayWorking => Get();

    public string WayLegByLeg => Get();

    public string WayTaken(string first) => Fill(first);

    public string WayInTheDark(string first) => Fill(first);

    public string WayDark => Get();

    public string WayDarkUnknown => Get();

    public string WayNoDark => Get();

    public string WayRests => Get();

    public string WayNever => Get();

    public string WayProgress(int first, int second) => Fill(first, second);

    public string TrackReading => Get();

    public string TrackNoReader => Get();

    public string WayCancel => Get();

    public string WayNotKept => Get();

    public string WayOtherDay(string first) => Fill(first);

    public string WayReplaceTitle => Get();

    public string WayReplaceHere(string first) => Fill(first);

    public string WayReplaceLoaded(string first, string second) => Fill(first, second);

    public string WayReplaceNo => Get();

    public string WayReplaceYes => Get();

    public string WayStale(string first) => Fill(first);

    public string WayWork => Get();

    public string WayPlan => Get();

    public string WayWhy => Get();

    public string WayShared => Get();

    public string WaySharedNone => Get();

    public string WaySharedHalf => Get();

    public string WaySharedAll => Get();

    public string WayDiscard => Get();

    public string WayDiscardQuestion => Get();

    public string WayDiscardYes => Get();

    public string WayIsLogged => Get();

    public string WayNoHelp => Get();

    /// <summary>With surgery at its end.</summary>
    public string WayLog => Get();

    public string WayLogClinic => Get();
}
