namespace Farhold.Evaluation;

/// <summary>Which sign an input of criteria is read from.</summary>
internal static class InputSigns
{
    /// <summary>What an input of criteria is read from, where that is one sign.</summary>
    private static readonly Dictionary<Input, SignRead> ByInput = new()
    {
        [Input.HeartRate] = SignRead.HeartRate,
        [Input.RespiratoryRate] = SignRead.RespiratoryRate,
        [Input.Spo2] = SignRead.Spo2,
        [Input.TemperatureC] = SignRead.TemperatureC,
        [Input.CapillaryRefillS] = SignRead.CapillaryRefillS,
        [Input.Mental] = SignRead.Mental,
        [Input.RadialPulse] = SignRead.RadialPulse,
        [Input.Dizzy] = SignRead.Dizzy,
        [Input.Pale] = SignRead.Pale,
        [Input.Cool] = SignRead.Cool,
        [Input.Clammy] = SignRead.Clammy,
        [Input.Systolic] = SignRead.Systolic,
    };

    /// <summary>Null where it is read from something else than one sign.</summary>
    public static SignRead? Of(Input input) => ByInput.GetValueOrDefault(input);
}
