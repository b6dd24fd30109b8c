using System.Text.Json;

namespace Farhold.Rehearsal.Scenarios;

/// <summary>Signs that are set, as they stand in scenarios and truth files: a member each.</summary>
internal static class ShowFields
{
    public static SignOverride Read(LocatedObject o)
    {
        var show = new SignOverride(
            o.Number("heartRate", 0, 250, "/min"),
            o.Number("breathRate", 0, 80, "/min"),
            o.Number("systolic", 0, 300, " mmHg"),
            o.Number("diastolic", 0, 200, " mmHg"),
            o.Number("capillaryRefillS", 0, 20, " s"),
            o.Number("temperatureC", 20, 43, " °C"),
            ActFields.Word<Mental>(o, "mental")
        );
        o.Done();
        if (show.Diastolic > show.Systolic)
            o.Refuse("diastolic", "diastolic is above systolic: swapped?");
        return show;
    }

    /// <summary>The members of what is set, into an object that is open.</summary>
    public static void Write(Utf8JsonWriter w, SignOverride show)
    {
        Number(w, "heartRate", show.HeartRate);
        Number(w, "breathRate", show.BreathRate);
        Number(w, "systolic", show.Systolic);
        Number(w, "diastolic", show.Diastolic);
        Number(w, "capillaryRefillS", show.CapillaryRefillS);
        Number(w, "temperatureC", show.TemperatureC);
        if (show.Mental is { } mental)
            w.WriteString("mental", Wire.Word(mental));
    }

    private static void Number(Utf8JsonWriter w, string name, double? value)
    {
        if (value is { } number)
            w.WriteNumber(name, number);
    }
}
