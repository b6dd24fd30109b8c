namespace Farhold.Records;

/// <summary>Signs taken, in one line.</summary>
internal static class SignsWords
{
    public static string Of(Payload.SignsTaken p)
    {
        var pressure = (p.Systolic, p.Diastolic) switch
        {
            (null, null) => null,
            (var s, null) => RecordTexts.Systolic(Number(s)),
            (null, var d) => RecordTexts.Diastolic(Number(d)),
            var (s, d) => RecordTexts.BloodPressure(Number(s), Number(d)),
        };
        var beyond = p.DistalPulse?.Select(d => RecordTexts.PulseBelowLimb(Say.Limb(d.Key), EntryWords.Word(d.Value))) ?? [];
        var all = EntryWords.Listed(
            [
                Measured(RecordTexts.HeartRate, p.HeartRate, "/min"),
                Measured(RecordTexts.Breathing, p.RespiratoryRate, "/min"),
                pressure,
                p.NoPressureCuff == true ? RecordTexts.NoCuff : null,
                Measured(RecordTexts.OxygenSaturation, p.Spo2, "%"),
                p.OnOxygen is { } o ? (o ? RecordTexts.OnOxygen : RecordTexts.WithoutOxygen) : null,
                Measured(RecordTexts.Temperature, p.TemperatureC, "°C"),
                p.Mental is { } mental ? MentalWords(mental) : null,
                Glasgow(p.Gcs),
                YesNo(RecordTexts.Dizzy, p.Dizzy),
                YesNo(RecordTexts.Pale, p.Pale),
                YesNo(RecordTexts.Cool, p.Cool),
                YesNo(RecordTexts.Clammy, p.Clammy),
                p.RadialPulse is { } radial ? RecordTexts.PulseAtWrist(EntryWords.Word(radial)) : null,
                Measured(RecordTexts.CapillaryRefill, p.CapillaryRefillS, "s"),
                p.Pain is { } pain ? RecordTexts.Pain(Say.Number(pain)) : null,
                .. beyond,
            ],
            ", "
        );
        return all.Length == 0 ? RecordTexts.SignsNone : RecordTexts.Signs(all);
    }

    private static string? Glasgow(GlasgowParts? gcs)
    {
        string Part(int? part) => part is { } known ? Say.Number(known) : RecordTexts.NotTestable;
        return gcs is null ? null : RecordTexts.ComaScale(Part(gcs.Eye), Part(gcs.Verbal), Part(gcs.Motor));
    }

    private static string MentalWords(Mental mental) =>
        mental switch
        {
            Mental.Voice => RecordTexts.MentalVoice,
            Mental.Pain => RecordTexts.MentalPain,
            _ => EntryWords.Word(mental),
        };

    private static string? Measured(string what, double? value, string unit) =>
        value is { } known ? $"{what} {Say.Number(known)} {unit}" : null;

    private static string? YesNo(string what, bool? flag) => flag is { } known ? (known ? what : RecordTexts.NotWord(what)) : null;

    private static string Number(double? value) => Say.Number(value!.Value);
}
