using System.Globalization;

namespace Farhold.Records;

/// <summary>What a number in an entry may be. Outside it the entry is refused, with the range in the message.</summary>
/// <remarks>
/// The ranges are plausibility limits for catching slips and mixed-up units, wider than anything seen in a living
/// casualty; they are a design choice, not clinical limits.
/// </remarks>
public sealed record FieldRange(string Field, double Min, double Max, string Unit, bool Whole = false)
{
    public static readonly FieldRange AgeYears = new("ageYears", 0, 130, "years");
    public static readonly FieldRange MassKg = new("massKg", 0.3, 400, "kg");
    public static readonly FieldRange Minutes = new("minutes", 0, 1440, "minutes");
    public static readonly FieldRange HeartRate = new("heartRate", 0, 350, "/min");
    public static readonly FieldRange RespiratoryRate = new("breathRate", 0, 150, "/min");
    public static readonly FieldRange Systolic = new("systolic", 0, 350, "mmHg");
    public static readonly FieldRange Diastolic = new("diastolic", 0, 250, "mmHg");
    public static readonly FieldRange Spo2 = new("spo2", 0, 100, "%");
    public static readonly FieldRange TemperatureC = new("temperatureC", 10, 50, "°C");
    public static readonly FieldRange CapillaryRefillS = new("capillaryRefillS", 0, 60, "s");
    public static readonly FieldRange Pain = new("pain", 0, 10, "of 10");
    public static readonly FieldRange Count = new("count", 0, 100_000, "pieces", Whole: true);
    public static readonly FieldRange Amount = new("amount", 0, 1_000_000, "of its unit");
    public static readonly FieldRange Millilitres = new("millilitres", 0, 50_000, "mL");
    public static readonly FieldRange Eye = new("eye", 1, 4, "points", Whole: true);
    public static readonly FieldRange Verbal = new("verbal", 1, 5, "points", Whole: true);
    public static readonly FieldRange Motor = new("motor", 1, 6, "points", Whole: true);

    public static readonly FieldRange HospitalDays = new("hospitalDays", 0, 3_650, "days");

    public static readonly FieldRange Lat = new("lat", -90, 90, "degrees");
    public static readonly FieldRange Lon = new("lon", -180, 180, "degrees");
    public static readonly FieldRange AccuracyM = new("accuracyM", 0, 100_000, "m");
    public static readonly FieldRange AltitudeM = new("altitudeM", -500, 9_000, "m");

    public static readonly FieldRange AirC = new("airC", -70, 60, "°C");
    public static readonly FieldRange WindKmh = new("windKmh", 0, 250, "km/h");

    public bool Holds(double value) => value >= Min && value <= Max && (!Whole || value == Math.Truncate(value));

    /// <summary>Why the value is refused, for a person.</summary>
    public string Objection(string written) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Field} is {written}; a {(Whole ? "whole number" : "number")} from {Min} to {Max} {Unit} is expected"
        );
}
