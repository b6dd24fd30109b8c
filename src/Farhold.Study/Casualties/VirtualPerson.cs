using Farhold.Physiology.Body;
using Farhold.WayOut.Chance;

namespace Farhold.Study.Casualties;

/// <summary>Draws who a casualty is.</summary>
/// <remarks>
/// Laws of the casualty model's reference, section 11: sizes and ages of grown people from memory, the rest judgement. Nobody below 18 is
/// drawn; nothing here speaks of children.
/// </remarks>
internal static class VirtualPerson
{
    public static Person Draw(Rng casualty)
    {
        double U(string name) => casualty.Draw(StudyDraws.Key("person/" + name));
        var male = U("sex") < 0.8;
        var age = Normal(U("age"), 35, 12, 18, 70);
        var height = male ? Normal(U("height"), 1.77, 0.07, 1.5, 2.1) : Normal(U("height"), 1.64, 0.065, 1.4, 1.95);
        var index = Math.Exp(Normal(U("bmi"), Math.Log(25.5), 0.13, Math.Log(18), Math.Log(38)));
        double Factor(string name, double sigma) => Math.Exp(Normal(U(name), 0, sigma, -3 * sigma, 3 * sigma));
        return new()
        {
            Sex = male ? Farhold.Physiology.Body.Sex.Male : Farhold.Physiology.Body.Sex.Female,
            AgeYears = age,
            HeightM = height,
            MassKg = index * height * height,
            HeartRate = Normal(U("pulse"), 68, 9, 48, 92),
            ArterialPressure = Normal(U("pressure"), 91 + (0.25 * (age - 35)), 7, 75, 115),
            Haematocrit = Normal(U("haematocrit"), male ? 0.44 : 0.40, 0.025, 0.3, 0.52),
            DepressorStrength = BetaLaw.Quantile(U("depressor"), 2, 3),
            DebtThreshold = Normal(U("debt"), 115, 12, 85, 145),
            ReflexGain = Factor("gain", 0.15),
            VenousToneFactor = Factor("veins", 0.20),
            HeartRateReserveFactor = Factor("reserve", 0.20),
            FiltrationFactor = Factor("filtration", 0.25),
            ResistanceFactor = Factor("resistance", 0.25),
            BetaBlockade = Sometimes(U("blocked"), age < 45 ? 0.02 : 0.12, 0.5),
            Anticoagulation = Sometimes(U("anticoagulant"), age < 55 ? 0.01 : 0.06, 0.4),
        };
    }

    /// <summary>Of a normal law cut off at both ends.</summary>
    private static double Normal(double u, double mean, double deviation, double low, double high)
    {
        var (below, above) = (NormalLaw.Cdf((low - mean) / deviation), NormalLaw.Cdf((high - mean) / deviation));
        return Math.Clamp(mean + (deviation * NormalLaw.Quantile(below + (u * (above - below)))), low, high);
    }

    /// <summary>0, but for a share, where it is even between <paramref name="least"/> and 1.</summary>
    private static double Sometimes(double u, double share, double least) => u < share ? least + ((1 - least) * u / share) : 0;
}
