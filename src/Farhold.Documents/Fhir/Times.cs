using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>An instant as dateTime; an interval as Period, which then means: at some time within it.</summary>
internal static class Times
{
    public static FhirDateTime Of(NodaTime.Instant instant) => new(WrittenInstant.Write(instant));

    public static DataType Of(Happened happened) => happened.IsInstant ? Of(happened.Earliest) : Between(happened);

    /// <summary>Said beside a Period, which FHIR reads as a time that something took.</summary>
    public static string? Vagueness(Happened happened, string what) =>
        happened.IsInstant ? null : $"Not known more exactly: {what} at some time {Say.Time(happened)}.";

    public static Period Between(Happened happened) =>
        new() { Start = WrittenInstant.Write(happened.Earliest), End = WrittenInstant.Write(happened.Latest) };

    public static Instant Stamp(NodaTime.Instant instant) => new(instant.ToDateTimeOffset());
}
