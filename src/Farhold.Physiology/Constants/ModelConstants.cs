using System.Collections.Immutable;

namespace Farhold.Physiology.Constants;

/// <summary>Every constant of one numbered model, as <c>models/N.json</c> holds it, with unit, standing and source of each.</summary>
/// <remarks>
/// A changed constant is another model, under another number: recordings name the model they were made with. Exponents that are worked
/// out by squares and square roots stand in the equations, and the hashes of whole courses hold those to the number too.
/// </remarks>
public sealed class ModelConstants
{
    public required int Model { get; init; }
    public required CirculationConstants Circulation { get; init; }
    public required HeartConstants Heart { get; init; }
    public required ReflexesConstants Reflexes { get; init; }
    public required VesselsConstants Vessels { get; init; }
    public required OxygenConstants Oxygen { get; init; }
    public required ShiveringConstants Shivering { get; init; }
    public required BreathingConstants Breathing { get; init; }
    public required BrainConstants Brain { get; init; }
    public required SkinConstants Skin { get; init; }
    public required FluidsConstants Fluids { get; init; }
    public required LactateConstants Lactate { get; init; }
    public required PotassiumConstants Potassium { get; init; }
    public required LimbConstants Limb { get; init; }
    public required ClottingConstants Clotting { get; init; }
    public required DeathConstants Death { get; init; }
    public required HeatConstants Heat { get; init; }
    public required SignsConstants Signs { get; init; }
    public required ActsConstants Acts { get; init; }
    public required LooksConstants Looks { get; init; }

    /// <summary>How fast what goes by temperature grows.</summary>
    /// <remarks>Worked out once, so this is no record: a copy with another constant would keep it.</remarks>
    internal Q10Rates Q10 => field ??= new(this);

    /// <summary>Cerebral supply and the Glasgow score it goes with, rising; straight between two points.</summary>
    public required ImmutableArray<ImmutableArray<double>> Glasgow { get; init; }
}

/// <summary>Growth a kelvin, natural logarithm, from the factor for ten.</summary>
internal sealed class Q10Rates(ModelConstants k)
{
    public double Use { get; } = ExactMath.Log(k.Oxygen.UseQ10) / 10;
    public double LimbLactate { get; } = ExactMath.Log(k.Limb.LactateQ10) / 10;
    public double MuscleDeath { get; } = ExactMath.Log(k.Limb.DeathQ10) / 10;
}
