using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Signs;

/// <summary>
/// The values of one look: those of an entry, and beside them the nearest of others surely taken within five minutes of it.
/// </summary>
/// <param name="Signs">All values together.</param>
internal sealed record SignLook(Dated Entry, Payload.SignsTaken Signs, ImmutableArray<(string Field, Dated From)> Borrowed)
{
    /// <summary>Rule 3 of the decision: what was taken within five minutes is one look (design).</summary>
    public static readonly Duration Length = Duration.FromMinutes(5);

    private static readonly ImmutableArray<(string Field, Func<Payload.SignsTaken, bool> Given)> Fields =
    [
        ("heartRate", s => s.HeartRate is not null),
        ("breathRate", s => s.RespiratoryRate is not null),
        ("systolic", s => s.Systolic is not null),
        ("diastolic", s => s.Diastolic is not null),
        ("spo2", s => s.Spo2 is not null),
        ("temperatureC", s => s.TemperatureC is not null),
        ("capillaryRefillS", s => s.CapillaryRefillS is not null),
        ("mental", s => s.Mental is not null),
        ("gcs", s => s.Gcs is not null),
        ("radialPulse", s => s.RadialPulse is not null),
        ("dizzy", s => s.Dizzy is not null),
        ("pale", s => s.Pale is not null),
        ("cool", s => s.Cool is not null),
        ("clammy", s => s.Clammy is not null),
    ];

    /// <param name="others">Entries of signs among which those of the same look are, in order of time.</param>
    public static SignLook Of(Dated entry, List<Dated> others) =>
        Near(entry, others) is { } near ? WithNearest(entry, near) : new(entry, entry.As<Payload.SignsTaken>(), []);

    private static SignLook WithNearest(Dated entry, List<Dated> near)
    {
        var own = entry.As<Payload.SignsTaken>();
        Dated[] nearestFirst = [.. near.OrderBy(o => Apart(entry, o)).ThenByDescending(o => o.When.Latest)];
        var borrowed = ImmutableArray.CreateBuilder<(string, Dated)>();
        foreach (var (field, given) in Fields)
            if (!given(own) && Array.Find(nearestFirst, o => given(o.As<Payload.SignsTaken>())) is { } nearest)
                borrowed.Add((field, nearest));
        return new(
            entry,
            Together(own, field => borrowed.FirstOrDefault(b => b.Item1 == field).Item2?.As<Payload.SignsTaken>()),
            borrowed.ToImmutable()
        );
    }

    /// <summary>Signs, and for what they do not give, others.</summary>
    public static Payload.SignsTaken Beside(Payload.SignsTaken signs, Payload.SignsTaken others) => Together(signs, _ => others);

    public static bool Gives(Payload.SignsTaken signs, string field) => Fields.First(f => f.Field == field).Given(signs);

    /// <summary>The entry that the value of a field is from.</summary>
    public Dated From(string field) => Borrowed.FirstOrDefault(b => b.Field == field).From ?? Entry;

    /// <summary>Those of the same look, in order of time. Nobody looks through hours for what lies within minutes. Null: none.</summary>
    private static List<Dated>? Near(Dated entry, List<Dated> others)
    {
        List<Dated>? near = null;
        var at = others.BinarySearch(entry, DatedOrder.Instance);
        var from = at < 0 ? ~at : at;
        while (from > 0 && entry.When.Latest - others[from - 1].When.Latest <= Length)
            from--;
        for (var i = from; i < others.Count && others[i].When.Latest - entry.When.Latest <= Length; i++)
            if (others[i].Id != entry.Id && IsOneLook(entry, others[i]))
                (near ??= []).Add(others[i]);
        return near;
    }

    /// <summary>Surely: however the times of both are read.</summary>
    private static bool IsOneLook(Dated a, Dated b) =>
        Instant.Max(a.When.Latest, b.When.Latest) - Instant.Min(a.When.Earliest, b.When.Earliest) <= Length;

    private static Duration Apart(Dated a, Dated b) =>
        Instant.Max(a.When.Latest, b.When.Latest) - Instant.Min(a.When.Latest, b.When.Latest);

    private static Payload.SignsTaken Together(Payload.SignsTaken own, Func<string, Payload.SignsTaken?> borrowed) =>
        own with
        {
            HeartRate = own.HeartRate ?? borrowed("heartRate")?.HeartRate,
            RespiratoryRate = own.RespiratoryRate ?? borrowed("breathRate")?.RespiratoryRate,
            Systolic = own.Systolic ?? borrowed("systolic")?.Systolic,
            Diastolic = own.Diastolic ?? borrowed("diastolic")?.Diastolic,
            Spo2 = own.Spo2 ?? borrowed("spo2")?.Spo2,
            TemperatureC = own.TemperatureC ?? borrowed("temperatureC")?.TemperatureC,
            CapillaryRefillS = own.CapillaryRefillS ?? borrowed("capillaryRefillS")?.CapillaryRefillS,
            Mental = own.Mental ?? borrowed("mental")?.Mental,
            Gcs = own.Gcs ?? borrowed("gcs")?.Gcs,
            RadialPulse = own.RadialPulse ?? borrowed("radialPulse")?.RadialPulse,
            Dizzy = own.Dizzy ?? borrowed("dizzy")?.Dizzy,
            Pale = own.Pale ?? borrowed("pale")?.Pale,
            Cool = own.Cool ?? borrowed("cool")?.Cool,
            Clammy = own.Clammy ?? borrowed("clammy")?.Clammy,
        };
}
