namespace Farhold.Records;

/// <summary>Signs taken, in one line.</summary>
internal static class SignsWords
{
    public static string Of(Payload.SignsTaken p)
    {
        var pressure = (p.Systolic, p.Diastolic) switch
        {
            (null, null) => null,
            (var s, null) => $"systolic {Number(s)} mmHg",
            (null, var d) => $"diastolic {Number(d)} mmHg",
            var (s, d) => $"blood pressure {Number(s)}/{Number(d)} mmHg",
        };
        var beyond = p.DistalPulse?.Select(d => $"pulse beyond, {Say.Limb(d.Key)}: {EntryWords.Word(d.Value)}") ?? [];
        var all = EntryWords.Listed(
            [
                Measured("heart rate", p.HeartRate, "/min"), Measured("breathing", p.RespiratoryRate, "/min"),
                pressure, p.NoPressureCuff == true ? "no pressure cuff here" : null,
                Measured("oxygen saturation", p.Spo2, "%"), p.OnOxygen is { } o ? (o ? "on oxygen" : "without oxygen") : null,
                Measured("temperature", p.TemperatureC, "°C"),
                p.Mental is { } mental ? MentalWords(mental) : null, Glasgow(p.Gcs),
                YesNo("dizzy", p.Dizzy), YesNo("pale", p.Pale), YesNo("cool", p.Cool), YesNo("clammy", p.Clammy),
                p.RadialPulse is { } radial ? $"pulse at the wrist {EntryWords.Word(radial)}" : null,
                Measured("capillary refill", p.CapillaryRefillS, "s"),
                p.Pain is { } pain ? $"pain {Say.Number(pain)} of 10" : null,
                .. beyond,
            ],
            ", ");
        return all.Length == 0 ? "Signs taken, none that this version knows" : $"Signs: {all}";
    }

    private static string? Glasgow(GlasgowParts? gcs)
    {
        string Part(int? part) => part is { } known ? Say.Number(known) : "not testable";
        return gcs is null ? null : $"coma scale eye {Part(gcs.Eye)}, verbal {Part(gcs.Verbal)}, motor {Part(gcs.Motor)}";
    }

    private static string MentalWords(Mental mental) => mental switch
    {
        Mental.Voice => "answers only to voice",
        Mental.Pain => "answers only to pain",
        _ => EntryWords.Word(mental),
    };

    private static string? Measured(string what, double? value, string unit) =>
        value is { } known ? $"{what} {Say.Number(known)} {unit}" : null;

    private static string? YesNo(string what, bool? flag) => flag is { } known ? (known ? what : $"not {what}") : null;

    private static string Number(double? value) => Say.Number(value!.Value);
}
