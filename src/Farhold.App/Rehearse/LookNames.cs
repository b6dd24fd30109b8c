using System.Collections.Immutable;

namespace Farhold.App.Rehearse;

/// <summary>What a trainee can look at and do, by the words that a kept run holds.</summary>
public static class LookNames
{
    public static ImmutableArray<(string Title, ImmutableArray<string> Looks)> Groups(Texts texts) =>
        [
            (texts.RehearsalOfWound, ["bleeding", "bleeding-below"]),
            (texts.RehearsalOfShock, ["pulse", "wrist", "breaths", "mental", "skin", "dizzy", "refill", "pressure"]),
            (texts.RehearsalElse, ["beyond", "temperature"]),
            (texts.RehearsalDeeds, Deeds.All),
        ];

    public static bool IsOfWound(string look) => look is "bleeding" or "bleeding-below";

    public static string Say(string look, Texts texts) =>
        look switch
        {
            "bleeding" => texts.RehearsalSeeBleeding,
            "bleeding-below" => texts.RehearsalSeeBelow,
            "pulse" => texts.RehearsalSeePulse,
            "wrist" => texts.RehearsalSeeWrist,
            "breaths" => texts.RehearsalSeeBreaths,
            "mental" => texts.RehearsalSeeMental,
            "skin" => texts.RehearsalSeeSkin,
            "dizzy" => texts.RehearsalSeeDizzy,
            "refill" => texts.RehearsalSeeRefill,
            "pressure" => texts.RehearsalSeePressure,
            "beyond" => texts.RehearsalSeeBeyond,
            "temperature" => texts.RehearsalSeeTemperature,
            Deeds.Wrap => texts.RehearsalWrap,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}
