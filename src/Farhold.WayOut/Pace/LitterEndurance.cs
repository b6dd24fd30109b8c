using System.Collections.Immutable;

namespace Farhold.WayOut.Pace;

/// <summary>How long bearers last at 4.8 km/h on the level before they must put the litter down.</summary>
/// <param name="People">Carrying at once.</param>
/// <param name="LoadKg">Manikin, with the stretcher where it was counted.</param>
/// <param name="Minutes">Mean to exhaustion.</param>
/// <param name="Sd">Standard deviation between pairs or teams, minutes.</param>
public sealed record LitterEndurance(string Id, Func<string> Carried, int People, int LoadKg, double Minutes, double Sd, string Source)
{
    private static readonly Func<string> Hands = () => PaceTexts.ByHand;

    private const string Knapik = "Knapik 2000, Ergonomics 43:639-652, abstract; treadmill, stopped at 30 min";
    private const string Rice = "Rice 1996, Int J Ind Ergon 18:27-40, abstract";

    /// <summary>All read. Straps matter more than the third and fourth bearer.</summary>
    public static ImmutableArray<LitterEndurance> All { get; } =
    [
        new("hand_carry_endurance_2_person_80kg_4.8kmh", Hands, 2, 80, 2.7, 1.4, Knapik),
        new("shoulder_strap_endurance_2_person_80kg_4.8kmh", () => PaceTexts.ShoulderStraps, 2, 80, 14.5, 8.3, Knapik),
        new("hip_shoulder_harness_endurance_2_person_80kg_4.8kmh", () => PaceTexts.HipHarness, 2, 80, 25.4, 8.1, Knapik),
        new("belt_clip_endurance_2_person_80kg_4.8kmh", () => PaceTexts.BeltClip, 2, 80, 21.7, 9.9, Knapik),
        new("hand_carry_endurance_2_person_88kg_4.8kmh", Hands, 2, 88, 3.0, 1.8, Rice),
        new("harness_endurance_4_person_88kg_4.8kmh", () => PaceTexts.Harness, 4, 88, 24.5, 9.0, Rice),
    ];

    /// <summary>What the litter hangs on.</summary>
    public string Means => Carried();

    /// <summary>Without straps or harness.</summary>
    public bool ByHand => Carried == Hands;
}
