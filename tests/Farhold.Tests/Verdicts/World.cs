using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests.Verdicts;

public enum Cuff
{
    There,
    NeverThere,

    /// <summary>A pressure was measured once; there is no cuff any more.</summary>
    Lost,
}

public enum Link
{
    None,

    /// <summary>Somebody answers after a while and allows the attempt.</summary>
    Allows,
    Refuses,

    /// <summary>Calls go through, and nobody ever answers.</summary>
    Silent,
}

public enum HelpSaid
{
    Nothing,
    SurgeryFar,
    SurgeryNear,
    ClinicFar,
    HandsOnly,
    KindNotSaid,
    LatestPassed,
}

public enum Looks
{
    None,
    FewSigns,
    Whole,
    Stale,
}

public enum Tried
{
    Never,
    Bled,
    BledAndBetterNow,
    Abandoned,
}

/// <summary>A limb with a tourniquet, as the carer finds it written down.</summary>
public sealed record TiedLimb(Limb Limb, int Minutes, bool WoundWritten, Tried Tried)
{
    public string Wound => $"w-{Wire.Word(Limb)}";

    public string Tourniquet => $"t-{Wire.Word(Limb)}";
}

/// <summary>A casualty who is well, as they really are, and what has been written down so far.</summary>
/// <param name="Sign">A lone soft sign that stays; empty for none.</param>
public sealed record World(
    double Age,
    bool AgeWritten,
    ImmutableArray<string> Medicines,
    Cuff Cuff,
    string Sign,
    bool Cold,
    bool Trunk,
    Link Link,
    int AnswersAfter,
    HelpSaid Help,
    Looks Looks,
    ImmutableArray<TiedLimb> Limbs,
    bool Counted,
    bool OnTheMove,
    string OtherWound,
    int TriesAgainAfter
)
{
    public static readonly Gen<World> Any = Gen.Select(
        Gen.Select(Gen.OneOf(0.8, 1.5, 3, 5, 8, 11, 13, 15, 34, 34, 34, 50, 66, 80), Gen.Bool, Medicine, Gen.OneOf(Enum.GetValues<Cuff>())),
        Gen.Select(Gen.OneOf("", "", "", "pale", "cool", "clammy", "dizzy", "lowNormal", "index", "rates"), Few, Few),
        Gen.Select(
            Gen.OneOf(Enum.GetValues<Link>()),
            Gen.Int[1, 12],
            Gen.OneOf(Enum.GetValues<HelpSaid>()),
            Gen.OneOf(Enum.GetValues<Looks>())
        ),
        Gen.Select(TiedLimbs, Gen.Bool, Few, Gen.OneOf("", "", "neck", "arm broken", "back grazed"), Gen.Int[5, 31]),
        (who, how, where, what) =>
            new World(
                who.Item1,
                who.Item2,
                who.Item3,
                who.Item4,
                how.Item1,
                how.Item2,
                how.Item3,
                where.Item1,
                where.Item2,
                where.Item3,
                where.Item4,
                what.Item1,
                what.Item2,
                what.Item3,
                what.Item4,
                what.Item5
            ).Plausible()
    );

    private static Gen<bool> Few => Gen.Frequency((5, false), (1, true));

    private static Gen<ImmutableArray<string>> Medicine =>
        Gen.Frequency<ImmutableArray<string>>(
            (4, []),
            (1, ["bisoprolol"]),
            (1, ["apixaban"]),
            (1, ["aspirin", "clopidogrel", "metoprolol"])
        );

    private static Gen<ImmutableArray<TiedLimb>> TiedLimbs =>
        Gen.Select(
            Gen.OneOf<Limb[]>(
                [Limb.LeftLeg],
                [Limb.LeftLeg],
                [Limb.RightArm],
                [Limb.LeftLeg, Limb.RightLeg],
                [Limb.LeftArm, Limb.RightArm]
            ),
            Gen.Frequency((3, Gen.Int[1, 110]), (2, Gen.Int[110, 355])),
            Gen.Int[0, 20],
            Gen.Bool,
            Gen.Frequency((6, Tried.Never), (1, Tried.Bled), (1, Tried.BledAndBetterNow), (1, Tried.Abandoned)),
            (limbs, minutes, apart, written, tried) =>
                limbs
                    .Select((l, i) => new TiedLimb(l, minutes + (i * apart), written, i == 0 && minutes > 40 ? tried : Tried.Never))
                    .ToImmutableArray()
        );

    /// <summary>Signs that do not go with an age or with one another are left out.</summary>
    private World Plausible() =>
        this with
        {
            Sign = Sign switch
            {
                "lowNormal" or "index" when Age is < 16 or >= 65 || Cuff == Cuff.NeverThere || Cuff == Cuff.Lost => "pale",
                "rates" when Age >= 10 => "dizzy", // 118 and more beats would be above the pressure, a strong sign
                _ => Sign,
            },
            Medicines = Age < 18 ? [] : Medicines,
        };

    public bool BothArms => Limbs.Any(l => l.Limb == Limb.LeftArm) && Limbs.Any(l => l.Limb == Limb.RightArm);

    /// <summary>A look at the signs as it would come out.</summary>
    public Payload.SignsTaken Signs(bool refill) =>
        new()
        {
            HeartRate = Sign switch
            {
                "index" => 116,
                "rates" => (
                    Age < 1 ? 180
                    : Age < 3 ? 140
                    : Age < 6 ? 120
                    : 118
                ) + 4,
                _ => Rates.Heart,
            },
            RespiratoryRate = Rates.Breath,
            Systolic =
                Cuff != Cuff.There ? null
                : Sign == "lowNormal" ? 97
                : Rates.Systolic,
            NoPressureCuff = Cuff == Cuff.There ? null : true,
            Mental = Mental.Alert,
            RadialPulse = BothArms ? null : RadialPulse.Strong,
            Pale = Sign == "pale",
            Cool = Sign == "cool",
            Clammy = Sign == "clammy",
            Dizzy = Sign == "dizzy",
            TemperatureC = Cold ? 34.6 : null,
            CapillaryRefillS = refill ? 2 : null,
        };

    /// <summary>Rates awake and a pressure in the middle of their ranges.</summary>
    private (double Heart, double Breath, double Systolic) Rates =>
        Age switch
        {
            < 1 => (130, 36, 86),
            < 3 => (112, 28, 92),
            < 6 => (100, 24, 98),
            < 12 => (92, 20, 108),
            < 16 => (84, 16, 116),
            < 65 => (84, 16, 124),
            _ => (76, 16, 140),
        };
}
