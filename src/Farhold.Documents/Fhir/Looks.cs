using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>Looks over the casualty, moves, places and outcomes: an Observation each, in words of the record.</summary>
internal static class Looks
{
    /// <summary>One Observation for each thing that was looked at; one that says so where nothing was.</summary>
    public static IEnumerable<DomainResource> Over(Counted entry, Payload.CasualtyLookedOver p, Draft draft)
    {
        var seen = Rest(p).Where(r => r.Seen is not null).ToArray();
        return seen.Length > 0
            ? seen.Select(r => Findings.Stated(entry, r.Field, r.Text, new FhirBoolean(r.Seen), draft))
            : [NotDone(Findings.Stated(entry, "looked-over", "Casualty looked over", null, draft))];
    }

    public static Observation Region(Counted entry, Payload.RegionLooked p, Draft draft)
    {
        var look = Findings.Stated(entry, "region-looked", "Looked at", Codes.Word(p.Found), draft);
        look.BodySite =
            p.Limb is { } limb ? Codes.Word(limb)
            : p.Region is { } region ? Codes.Word(region)
            : null;
        look.Note.AddRange(Mapping.Notes(p.Note));
        return look;
    }

    public static Observation Step(Counted entry, Payload.StepLooked p, Draft draft)
    {
        var step = Findings.Stated(entry, "step-looked", "Step of the first look", Codes.Word(p.Found), draft);
        step.Component = [new() { Code = Codes.Word("look-step", "what was looked at"), Value = Codes.Word(p.Step) }];
        step.Note.AddRange(Mapping.Notes(p.Note));
        return step;
    }

    public static Observation Injury(Counted entry, Payload.InjuryStated p, Draft draft)
    {
        var injury = Findings.Stated(entry, "mechanism", "How the casualty came to harm", Codes.Word(p.Mechanism), draft);
        injury.Note.AddRange(Mapping.Notes(p.Note));
        return injury;
    }

    public static Observation Contact(Counted entry, Payload.ContactTried p, Draft draft)
    {
        var tried = Findings.Stated(entry, "contact-tried", "Medical advice was reached", new FhirBoolean(p.Reached), draft);
        tried.Note.AddRange(Mapping.Notes(p.Who is { } who ? $"Whom: {who}." : null, p.How is { } how ? $"By: {how}." : null));
        return tried;
    }

    public static Observation Moved(Counted entry, Payload.CasualtyMoved p, Draft draft)
    {
        var moved = Findings.Stated(
            entry,
            "casualty-moved",
            p.Phase == MovePhase.AboutTo ? "Casualty about to be moved" : "Casualty moved",
            Codes.Word(p.How),
            draft
        );
        moved.Component = [new() { Code = Codes.Word("move-phase", "before or after the move"), Value = Codes.Word(p.Phase) }];
        moved.Note.AddRange(Mapping.Notes(p.Note));
        return moved;
    }

    public static Observation Position(Counted entry, Payload.PositionNoted p, Draft draft)
    {
        var place = Findings.Stated(entry, "position", "Where the casualty is (WGS 84)", null, draft);
        place.Component =
        [
            Measured("latitude", "Latitude", p.Lat, "deg"),
            Measured("longitude", "Longitude", p.Lon, "deg"),
            .. p.AccuracyM is { } accuracy ? (Observation.ComponentComponent[])[Measured("accuracy", "Accuracy", accuracy, "m")] : [],
            .. p.AltitudeM is { } altitude ? (Observation.ComponentComponent[])[Measured("altitude", "Altitude", altitude, "m")] : [],
        ];
        return place;
    }

    public static Observation Weather(Counted entry, Payload.WeatherStated p, Draft draft)
    {
        var weather = Findings.Stated(entry, "weather", "Weather where the casualty is", null, draft);
        weather.Component =
        [
            Measured("air-temperature", "Air temperature", p.AirC, "Cel"),
            .. p.WindKmh is { } wind ? (Observation.ComponentComponent[])[Measured("wind", "Wind", wind, "km/h")] : [],
        ];
        weather.Note.AddRange(Mapping.Notes(p.Note));
        return weather;
    }

    /// <summary>What was reported of the casualty and of a limb: one Observation each; the one who reported it answers for it.</summary>
    public static IEnumerable<DomainResource> Outcome(Counted entry, Payload.OutcomeReported p, Draft draft)
    {
        var reported = new List<Observation>();
        if (p.Survived is { } survived)
            reported.Add(Findings.Stated(entry, "survived", "Survived", new FhirBoolean(survived), draft));
        if (p is { Limb: { } limb, LimbOutcome: { } outcome })
        {
            var kept = Findings.Stated(entry, "limb-outcome", "Outcome of the limb", Codes.Word(outcome), draft);
            kept.BodySite = Codes.Word(limb);
            reported.Add(kept);
        }

        if (p is { Limb: { } of, Level: { } level })
            reported.Add(OnLimb(Findings.Stated(entry, "amputation-level", "Level of amputation", Mapping.Said(level), draft), of));
        if (p.Fasciotomy is { } opened)
            reported.Add(OnLimb(Findings.Stated(entry, "fasciotomy", "Fasciotomy", new FhirBoolean(opened), draft), p.Limb));
        if (p.Nerve is { } nerve)
            reported.Add(OnLimb(Findings.Stated(entry, "nerves", "Nerves of the limb", Codes.Word(nerve), draft), p.Limb));
        if (p.Kidney is { } kidney)
            reported.Add(Findings.Stated(entry, "kidneys", "Kidneys", Codes.Word(kidney), draft));
        if (p.Infection is { } infected)
            reported.Add(Findings.Stated(entry, "infection", "Infection of the wound", new FhirBoolean(infected), draft));
        if (p.HospitalDays is { } days)
            reported.Add(Findings.Stated(entry, "hospital-days", "Days in hospital", Codes.Measured(days, "days", "d"), draft));
        if (reported.Count == 0)
            reported.Add(NotDone(Findings.Stated(entry, "outcome", "Outcome", null, draft)));
        foreach (var report in reported)
            report.Performer = [draft.Person(p.From)];
        reported[0].Note.AddRange(Mapping.Notes(p.Note));
        return reported;
    }

    private static (string Field, string Text, bool? Seen)[] Rest(Payload.CasualtyLookedOver p) =>
        [
            ("bleedingElsewhere", "Bleeding elsewhere", p.BleedingElsewhere),
            ("trunkWound", "Wound or hard blow of the trunk", p.TrunkWound),
            ("breathingHard", "Breathing hard", p.BreathingHard),
            ("veryCold", "Very cold", p.VeryCold),
            ("bloodThinner", "Takes a blood thinner or has a clotting disease", p.BloodThinner),
        ];

    private static Observation OnLimb(Observation reported, Limb? limb)
    {
        if (limb is { } known)
            reported.BodySite = Codes.Word(known);
        return reported;
    }

    private static Observation NotDone(Observation look)
    {
        look.DataAbsentReason = Codes.Reason("unknown");
        return look;
    }

    private static Observation.ComponentComponent Measured(string code, string text, double value, string ucum) =>
        new() { Code = Codes.Word(code, text), Value = Codes.Measured(value, Unit(ucum), ucum) };

    private static string Unit(string ucum) =>
        ucum switch
        {
            "deg" => "degrees",
            "Cel" => "°C",
            _ => ucum,
        };
}
