using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Records;

public abstract partial record Payload
{
    /// <summary>Signs seen at one look; what was not looked at is null.</summary>
    public sealed record SignsTaken : Payload
    {
        /// <summary>Beats per minute.</summary>
        public double? HeartRate { get; init; }

        /// <summary>Breaths per minute.</summary>
        public double? RespiratoryRate { get; init; }

        /// <summary>mmHg.</summary>
        public double? Systolic { get; init; }

        /// <summary>mmHg.</summary>
        public double? Diastolic { get; init; }

        /// <summary>Oxygen saturation by pulse oximeter, percent.</summary>
        public double? Spo2 { get; init; }

        public double? TemperatureC { get; init; }

        public Mental? Mental { get; init; }

        public GlasgowParts? Gcs { get; init; }

        public bool? Dizzy { get; init; }

        public bool? Pale { get; init; }

        public bool? Cool { get; init; }

        public bool? Clammy { get; init; }

        public RadialPulse? RadialPulse { get; init; }

        /// <summary>Seconds.</summary>
        public double? CapillaryRefillS { get; init; }

        /// <summary>0 (none) to 10 (worst imaginable).</summary>
        public double? Pain { get; init; }

        /// <summary>The pulse beyond the wound, by limb; limbs not felt are missing.</summary>
        public ImmutableSortedDictionary<Limb, DistalPulse>? DistalPulse { get; init; }

        public bool? OnOxygen { get; init; }

        /// <summary>
        /// True: there is no way to measure blood pressure here. A known answer, unlike silence; it stands until a
        /// pressure is recorded.
        /// </summary>
        public bool? NoPressureCuff { get; init; }

        internal override Kind OfKind => Records.Kind.SignsTaken;

        internal static SignsTaken Through(FieldCodec f, SignsTaken? p)
        {
            var signs = new SignsTaken
            {
                HeartRate = f.Number(FieldRange.HeartRate, Field.HeartRate, p?.HeartRate),
                RespiratoryRate = f.Number(FieldRange.RespiratoryRate, Field.BreathRate, p?.RespiratoryRate),
                Systolic = f.Number(FieldRange.Systolic, Field.Systolic, p?.Systolic),
                Diastolic = f.Number(FieldRange.Diastolic, Field.Diastolic, p?.Diastolic),
                Spo2 = f.Number(FieldRange.Spo2, Field.Spo2, p?.Spo2),
                TemperatureC = f.Number(FieldRange.TemperatureC, Field.TemperatureC, p?.TemperatureC),
                Mental = f.Word(Field.Mental, p?.Mental),
                Gcs = f.Object(Field.Gcs, "{eye, verbal, motor}", p?.Gcs, GlasgowParts.Through),
                Dizzy = f.Flag(Field.Dizzy, p?.Dizzy),
                Pale = f.Flag(Field.Pale, p?.Pale),
                Cool = f.Flag(Field.Cool, p?.Cool),
                Clammy = f.Flag(Field.Clammy, p?.Clammy),
                RadialPulse = f.Word(Field.RadialPulse, p?.RadialPulse),
                CapillaryRefillS = f.Number(FieldRange.CapillaryRefillS, Field.CapillaryRefillS, p?.CapillaryRefillS),
                Pain = f.Number(FieldRange.Pain, Field.Pain, p?.Pain),
                DistalPulse = f.ByLimb(Field.DistalPulse, p?.DistalPulse),
                OnOxygen = f.Flag(Field.OnOxygen, p?.OnOxygen),
                NoPressureCuff = f.Flag(Field.NoPressureCuff, p?.NoPressureCuff),
            };
            f.Check(
                !(signs.Diastolic > signs.Systolic),
                Field.Diastolic,
                $"diastolic {signs.Diastolic} is above systolic {signs.Systolic}: swapped?"
            );
            return signs;
        }

        internal override string Said(DateTimeZone? zone) => SignsWords.Of(this);
    }
}
