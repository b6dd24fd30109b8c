using System.Globalization;

namespace Farhold.App.WayOut;

/// <summary>Legs in words.</summary>
public static class LegWords
{
    extension(Texts t)
    {
        public string ModeWord(TravelMode mode) =>
            mode switch
            {
                TravelMode.Walk => t.ModeWalk,
                TravelMode.Carry => t.ModeCarry,
                TravelMode.Vehicle => t.ModeVehicle,
                TravelMode.Boat => t.ModeBoat,
                TravelMode.Aircraft => t.ModeAircraft,
                _ => t.ModeWait,
            };

        public string ModeWhat(TravelMode mode) =>
            mode switch
            {
                TravelMode.Walk => t.ModeWalkWhat,
                TravelMode.Carry => t.ModeCarryWhat,
                TravelMode.Vehicle => t.ModeVehicleWhat,
                TravelMode.Boat => t.ModeBoatWhat,
                TravelMode.Aircraft => t.ModeAircraftWhat,
                _ => t.ModeWaitWhat,
            };

        public string EvidenceWord(Evidence mark) =>
            mark switch
            {
                Evidence.Read => t.KnownRead,
                Evidence.Computed => t.EvidenceComputed,
                Evidence.Memory => t.KnownMemory,
                _ => t.EvidenceAssumption,
            };

        public string ForkWord(ChoiceKind kind) =>
            kind switch
            {
                ChoiceKind.Branches => t.ForkChance,
                ChoiceKind.First => t.ForkFirst,
                ChoiceKind.Until => t.ForkUntil,
                ChoiceKind.Try => t.ForkTry,
                _ => t.ForkAll,
            };

        /// <summary>When something closes, from the plan's start.</summary>
        public string ClosesIn(Extent time) =>
            time switch
            {
                ThreePoint p when p.Low == p.High => t.ClosesAfter(Say.Duration(p.Low)),
                ThreePoint p => t.ClosesBetween(Say.Duration(p.Low), Say.Duration(p.High)),
                Percentiles p => t.ClosesBetween(Say.Duration(p.P10), Say.Duration(p.P90)),
                _ => throw new System.Diagnostics.UnreachableException(),
            };

        public string LegTitle(Travel leg) =>
            leg.Name is { } name ? $"{t.ModeWord(leg.Mode)}: {Priors.Titled(name)}" : t.ModeWord(leg.Mode);

        public string LegFacts(Travel leg) => string.Join(", ", t.Facts(leg).Where(f => f.Length > 0));

        private IEnumerable<string> Facts(Travel leg)
        {
            switch (leg.Extent)
            {
                case ThreePoint p:
                    yield return t.LegTimes(Say.Duration(p.Low), Say.Duration(p.High), Say.Duration(p.Likely));
                    break;
                case Percentiles p:
                    yield return t.LegTenths(Say.Duration(p.P10), Say.Duration(p.P90));
                    break;
                case Measured { Stretch: { } s } m:
                    yield return t.LegGround(
                        t.Number(s.DistanceKm),
                        s.AscentM.ToString("0", CultureInfo.InvariantCulture),
                        s.DescentM.ToString("0", CultureInfo.InvariantCulture)
                    );
                    yield return m.Surface is { } surface ? surface.Name : "";
                    yield return m.Rule is { } rule ? rule.Name : "";
                    yield return m.Bearers is { } bearers ? t.LegBearers(bearers) : "";
                    yield return m.SpeedKmh is { } speed ? t.LegSpeed(t.Number(speed)) : "";
                    break;
            }

            if (leg.Dark == DarkRule.Stop)
                yield return t.LegHalts;
            if (leg.Window == FlightWindow.Daylight)
                yield return t.LegDaylight;
            if (leg.Hold is { } hold)
                yield return t.LegHold(t.InTen(hold.Probability), Say.Duration(hold.Time.Low), Say.Duration(hold.Time.High));
        }

        /// <summary><c>7 in 10</c>; finer shares as hundredths.</summary>
        public string InTen(double share) =>
            Math.Abs((share * 10) - Math.Round(share * 10)) < 1e-9
                ? t.OfTen((int)Math.Round(share * 10))
                : t.OfHundred(t.Number(Math.Round(share * 100, 1)));
    }
}
