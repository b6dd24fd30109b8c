using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Respond;

/// <summary>
/// The questions of the first look, by what the record says already. Order of the steps: massive bleeding, airway, respiration,
/// circulation, hypothermia, head, as published for tactical care; the rest is this project's choice.
/// </summary>
/// <param name="wound">A name for a wound that is new to the record.</param>
/// <param name="tourniquet">Likewise for a tourniquet.</param>
/// <param name="passed">Questions that nobody could answer just now, by id: they are not asked again at once.</param>
public sealed class LookQuestions(State state, Instant now, string wound, string tourniquet, IReadOnlySet<string>? passed = null)
{
    private static readonly ImmutableArray<string> Common = ["common"];

    private readonly FirstLook look = FirstLook.At(state, now);

    private readonly Payload.CasualtyOpened? person = CasualtyProfile.At(state, now);

    /// <summary>The question that a step stands at; null once it is answered in full.</summary>
    public LookQuestion Of(LookStep step) =>
        step switch
        {
            LookStep.Bleeding => Bleeding(),
            LookStep.Airway => Airway(),
            LookStep.Breathing => Breathing(),
            LookStep.Circulation => Circulation(),
            LookStep.Cold => Cold(),
            LookStep.Head => Head(),
            LookStep.Belly => Belly(),
            LookStep.Background => Background(),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>How bleeding at a place is stopped.</summary>
    /// <remarks>Source: TCCC wording in Shackelford 2015; common practice for neck, groin and armpit.</remarks>
    public static string Control(Limb? limb, BodyRegion? region) =>
        (limb, region) switch
        {
            ({ }, _) => RespondTexts.ControlLimb,
            (_, BodyRegion.Groin or BodyRegion.Axilla) => RespondTexts.ControlJunction,
            (_, BodyRegion.Neck) => RespondTexts.ControlNeck,
            (_, BodyRegion.Chest or BodyRegion.Abdomen) => RespondTexts.ControlTrunk,
            (_, BodyRegion.Head) => RespondTexts.ControlHead,
            _ => RespondTexts.ControlOther,
        };

    private bool FoundOn(params ReadOnlySpan<BodyRegion> regions)
    {
        foreach (var found in state.Of(Kind.WoundFound))
            if (found.When.Earliest <= now && found.As<Payload.WoundFound>().Region is { } region && regions.Contains(region))
                return true;
        return false;
    }

    private bool FoundOnLimb => state.Of(Kind.WoundFound).Any(w => w.When.Earliest <= now && w.As<Payload.WoundFound>().Limb is not null);

    private bool Said(Func<Payload.CasualtyLookedOver, bool?> answer) =>
        Current
            .Of<YesNo>(state.Of(Kind.CasualtyLookedOver), now, d => answer(d.As<Payload.CasualtyLookedOver>()) is { } yes ? new(yes) : null)
            .Any(r => r.Yes);

    private bool Seen(Func<Payload.SignsTaken, bool?> bad) =>
        Current
            .Of<YesNo>(state.Of(Kind.SignsTaken), now, d => bad(d.As<Payload.SignsTaken>()) is { } yes ? new(yes) : null)
            .Any(r => r.Yes);

    /// <summary>The answer that nothing (more) is there; with what was found in this step already, it ends as found.</summary>
    private static LookAnswer Clear(LookStep step, bool found, string nothing, string nothingMore, params ImmutableArray<Payload> facts) =>
        new(
            found ? nothingMore : nothing,
            [new Payload.StepLooked(step, found ? StepFound.Something : StepFound.Nothing), .. found ? [] : facts]
        )
        {
            Ends = true,
        };

    private static LookAnswer NotLooked(LookStep step, string? text = null) =>
        new(text ?? RespondTexts.CantLook, new Payload.StepLooked(step, StepFound.NotLooked)) { Ends = true, IsNotLooked = true };

    private static LookAnswer Finding(string text, HandsOn? act, params ImmutableArray<Payload> entries) =>
        new(text, entries) { Act = act };

    private LookQuestion Bleeding()
    {
        var found = FoundOnLimb || FoundOn(BodyRegion.Groin, BodyRegion.Axilla, BodyRegion.Neck, BodyRegion.Back);
        return new(
            "bleeding",
            LookStep.Bleeding,
            RespondTexts.Bleeding,
            RespondTexts.BleedingHow,
            [
                // That nothing else bleeds holds also where a wound was found and is looked after.
                new(
                    found ? RespondTexts.BleedingNothingMore : RespondTexts.BleedingNothing,
                    new Payload.StepLooked(LookStep.Bleeding, found ? StepFound.Something : StepFound.Nothing),
                    new Payload.CasualtyLookedOver(BleedingElsewhere: false)
                )
                {
                    Ends = true,
                },
                new(RespondTexts.BleedingLimb)
                {
                    Choices =
                    [
                        .. Enum.GetValues<Limb>().Select(l => OnLimb(l, WoundNature.Bleeding, Say.Limb(l))),
                        .. Enum.GetValues<Limb>().Select(l => OnLimb(l, WoundNature.Amputation, RespondTexts.LimbTornOff(Say.Limb(l)))),
                    ],
                },
                new(RespondTexts.BleedingJunction)
                {
                    Choices =
                    [
                        OnTrunk(BodyRegion.Groin, RespondTexts.Groin),
                        OnTrunk(BodyRegion.Axilla, RespondTexts.Armpit),
                        OnTrunk(BodyRegion.Neck, RespondTexts.Neck),
                        OnTrunk(BodyRegion.Back, RespondTexts.Back),
                    ],
                },
                NotLooked(LookStep.Bleeding),
            ]
        );
    }

    private LookAnswer OnLimb(Limb limb, WoundNature nature, string text) =>
        Finding(
            char.ToUpperInvariant(text[0]) + text[1..],
            new(
                RespondTexts.PlaceAct(Sentence(Say.Limb(limb)), Control(limb, null)),
                ["common", "Shackelford-2015"],
                [
                    new(
                        RespondTexts.StoppedByTourniquet,
                        new Payload.TourniquetTightened(tourniquet, limb, Wound: wound),
                        new Payload.BleedingChecked(wound, Records.Bleeding.None)
                    ),
                    new(RespondTexts.StoppedByPressing, new Payload.BleedingChecked(wound, Records.Bleeding.None)),
                ]
            ),
            new Payload.WoundFound(wound, limb, null, nature),
            new Payload.BleedingChecked(wound, Records.Bleeding.Active)
        );

    private LookAnswer OnTrunk(BodyRegion region, string text) =>
        Finding(
            text,
            new(
                RespondTexts.PlaceAct(text, Control(null, region)),
                ["common", "Shackelford-2015"],
                [
                    new(
                        RespondTexts.StoppedByPacking,
                        new Payload.WoundPacked(wound, PackingMaterial.PlainGauze),
                        new Payload.BleedingChecked(wound, Records.Bleeding.None)
                    ),
                    new(RespondTexts.StoppedByPressing, new Payload.BleedingChecked(wound, Records.Bleeding.None)),
                ]
            ),
            new Payload.WoundFound(wound, null, region, WoundNature.Bleeding),
            new Payload.BleedingChecked(wound, Records.Bleeding.Active)
        );

    private static LookQuestion Airway() =>
        new(
            "airway",
            LookStep.Airway,
            RespondTexts.Airway,
            RespondTexts.AirwayHow,
            [
                new(RespondTexts.AirwayFree, new Payload.StepLooked(LookStep.Airway, StepFound.Nothing)) { Ends = true },
                Finding(
                    RespondTexts.AirwayBlocked,
                    new(
                        AirwayAct,
                        Common,
                        [
                            new(RespondTexts.AirwayFreeNow, new Payload.StepLooked(LookStep.Airway, StepFound.Nothing, "was not free"))
                            {
                                Ends = true,
                            },
                        ]
                    ),
                    new Payload.StepLooked(LookStep.Airway, StepFound.Something)
                ) with
                {
                    Ends = true,
                },
                NotLooked(LookStep.Airway),
            ]
        );

    /// <summary>What to do at once while an airway is not free. Common practice.</summary>
    internal static string AirwayAct => RespondTexts.AirwayAct;

    private LookQuestion Breathing() =>
        new(
            "breathing",
            LookStep.Breathing,
            RespondTexts.Breathing,
            RespondTexts.BreathingHow,
            [
                Clear(
                    LookStep.Breathing,
                    FoundOn(BodyRegion.Chest) || Said(p => p.BreathingHard),
                    RespondTexts.BreathingNothing,
                    RespondTexts.NothingElse,
                    new Payload.CasualtyLookedOver(BreathingHard: false)
                ),
                new(RespondTexts.ChestHole)
                {
                    Choices =
                    [
                        OnChest(BodySide.Left, BodyFace.Front),
                        OnChest(BodySide.Right, BodyFace.Front),
                        OnChest(BodySide.Left, BodyFace.Back),
                        OnChest(BodySide.Right, BodyFace.Back),
                    ],
                },
                Finding(
                    RespondTexts.ChestBlow,
                    null,
                    new Payload.WoundFound(wound, null, BodyRegion.Chest, WoundNature.Other, "blow"),
                    new Payload.BleedingChecked(wound, Records.Bleeding.None),
                    new Payload.CasualtyLookedOver(TrunkWound: true)
                ),
                Finding(
                    RespondTexts.BreathingHard,
                    new(RespondTexts.BreathingHardAct, Common, []),
                    new Payload.CasualtyLookedOver(BreathingHard: true)
                ),
                NotLooked(LookStep.Breathing),
            ]
        );

    private LookAnswer OnChest(BodySide side, BodyFace face) =>
        Finding(
            RespondTexts.PlaceSide(Sentence(Say.Word(face)), Say.Word(side)),
            new(RespondTexts.ChestHoleAct, Common, [new(RespondTexts.Covered, new Payload.DressingApplied(wound, DressingKind.Plain))]),
            new Payload.WoundFound(wound, null, BodyRegion.Chest, WoundNature.Bleeding, null, side, face),
            new Payload.BleedingChecked(wound, Records.Bleeding.Oozing),
            new Payload.CasualtyLookedOver(TrunkWound: true)
        );

    private LookQuestion Circulation()
    {
        var found =
            Seen(s => s.RadialPulse is { } pulse ? pulse != RadialPulse.Strong : null)
            || Seen(s => s.Pale)
            || Seen(s => s.Cool)
            || Seen(s => s.Clammy);
        return new(
            "circulation",
            LookStep.Circulation,
            RespondTexts.Circulation,
            RespondTexts.CirculationHow,
            [
                Clear(
                    LookStep.Circulation,
                    found,
                    RespondTexts.CirculationNothing,
                    RespondTexts.NothingElse,
                    new Payload.SignsTaken
                    {
                        RadialPulse = RadialPulse.Strong,
                        Pale = false,
                        Cool = false,
                        Clammy = false,
                    }
                ),
                Finding(RespondTexts.PulseWeak, Shock, new Payload.SignsTaken { RadialPulse = RadialPulse.Weak }),
                Finding(RespondTexts.PulseNone, Shock, new Payload.SignsTaken { RadialPulse = RadialPulse.Absent }),
                new(RespondTexts.SkinBad)
                {
                    Choices =
                    [
                        Finding(RespondTexts.PaleLips, null, new Payload.SignsTaken { Pale = true }),
                        Finding(RespondTexts.CoolChest, null, new Payload.SignsTaken { Cool = true }),
                        Finding(RespondTexts.ClammySkin, null, new Payload.SignsTaken { Clammy = true }),
                    ],
                },
                NotLooked(LookStep.Circulation),
            ]
        );
    }

    private static HandsOn Shock => new(RespondTexts.ShockAct, Common, []);

    private LookQuestion Cold() =>
        new(
            "cold",
            LookStep.Cold,
            RespondTexts.Cold,
            RespondTexts.ColdHow,
            [
                Clear(
                    LookStep.Cold,
                    Said(p => p.VeryCold),
                    RespondTexts.ColdNothing,
                    RespondTexts.NothingElse,
                    new Payload.CasualtyLookedOver(VeryCold: false)
                ),
                Finding(
                    RespondTexts.WetOrShivering,
                    new(RespondTexts.WetAct, ["TCCC-warmth"], []),
                    new Payload.CasualtyLookedOver(VeryCold: false),
                    new Payload.StepLooked(LookStep.Cold, StepFound.Something, "wet or shivering")
                ) with
                {
                    Ends = true,
                },
                Finding(
                    RespondTexts.ChestCold,
                    new(RespondTexts.ChestColdAct, ["TCCC-warmth", "common"], []),
                    new Payload.CasualtyLookedOver(VeryCold: true),
                    new Payload.StepLooked(LookStep.Cold, StepFound.Something, "very cold")
                ) with
                {
                    Ends = true,
                },
                NotLooked(LookStep.Cold),
            ]
        );

    private LookQuestion Head()
    {
        var mind = Seen(s => s.Mental is { } mental ? mental != Mental.Alert : null);
        var knowsMind = state.Of(Kind.SignsTaken).Any(s => s.When.Earliest <= now && s.As<Payload.SignsTaken>().Mental is not null);
        var wounded = FoundOn(BodyRegion.Head);
        return new(
            "head",
            LookStep.Head,
            RespondTexts.Head,
            RespondTexts.HeadHow,
            [
                Clear(
                    LookStep.Head,
                    mind || wounded,
                    RespondTexts.HeadNothing,
                    mind || knowsMind ? RespondTexts.NothingElse : RespondTexts.HeadNothingMore,
                    new Payload.SignsTaken { Mental = Mental.Alert }
                )
                    is var clear
                && wounded
                && !mind
                && !knowsMind
                    ? clear with
                    {
                        Entries = [.. clear.Entries, new Payload.SignsTaken { Mental = Mental.Alert }],
                    }
                    : clear,
                new(RespondTexts.MindAltered)
                {
                    Choices =
                    [
                        Finding(RespondTexts.MindConfused, Mind, new Payload.SignsTaken { Mental = Mental.Confused }),
                        Finding(RespondTexts.MindVoice, Mind, new Payload.SignsTaken { Mental = Mental.Voice }),
                        Finding(RespondTexts.MindPain, Mind, new Payload.SignsTaken { Mental = Mental.Pain }),
                        Finding(RespondTexts.MindNoAnswer, Mind, new Payload.SignsTaken { Mental = Mental.Unresponsive }),
                    ],
                },
                new(RespondTexts.HeadWound)
                {
                    Choices =
                    [
                        Finding(
                            RespondTexts.HeadBleeds,
                            new(
                                Sentence(Control(null, BodyRegion.Head)),
                                Common,
                                [new(RespondTexts.Stopped, new Payload.BleedingChecked(wound, Records.Bleeding.None))]
                            ),
                            new Payload.WoundFound(wound, null, BodyRegion.Head, WoundNature.Bleeding),
                            new Payload.BleedingChecked(wound, Records.Bleeding.Active)
                        ),
                        Finding(
                            RespondTexts.HeadBump,
                            null,
                            new Payload.WoundFound(wound, null, BodyRegion.Head, WoundNature.Other, "blow"),
                            new Payload.BleedingChecked(wound, Records.Bleeding.None)
                        ),
                    ],
                },
                NotLooked(LookStep.Head),
            ]
        );
    }

    private static HandsOn Mind => new(RespondTexts.MindAct, Common, []);

    private bool MayBePregnant => person is not ({ Sex: Sex.Male } or { AgeYears: < 10 or > 60 });

    private LookQuestion Belly()
    {
        // The trunk is clear only where chest, back, belly and pelvis have all been looked at.
        var trunkSeen =
            look[LookStep.Bleeding].Found != Truth.Unknown
            && look[LookStep.Breathing].Found != Truth.Unknown
            && !FoundOn(BodyRegion.Chest, BodyRegion.Back);
        return new(
            "belly",
            LookStep.Belly,
            MayBePregnant ? RespondTexts.BellyPregnant : RespondTexts.Belly,
            RespondTexts.BellyHow,
            [
                Clear(
                    LookStep.Belly,
                    FoundOn(BodyRegion.Abdomen, BodyRegion.Pelvis) || person?.Pregnant == true,
                    MayBePregnant ? RespondTexts.BellyNothingNotPregnant : RespondTexts.BellyNothing,
                    RespondTexts.NothingElse,
                    trunkSeen ? [new Payload.CasualtyLookedOver(TrunkWound: false)] : []
                )
                    is var clear
                && MayBePregnant
                && person?.Pregnant is null
                && clear.Entries[0] is Payload.StepLooked { Found: StepFound.Nothing }
                    ? clear with
                    {
                        Person = new(Pregnant: false),
                    }
                    : clear,
                new(RespondTexts.BellyFound)
                {
                    Choices =
                    [
                        Finding(
                            RespondTexts.BellyOpen,
                            new(
                                RespondTexts.BellyOpenAct,
                                ["common", "handbook-belly"],
                                [new(RespondTexts.Covered, new Payload.DressingApplied(wound, DressingKind.Plain))]
                            ),
                            new Payload.WoundFound(wound, null, BodyRegion.Abdomen, WoundNature.Bleeding),
                            new Payload.BleedingChecked(wound, Records.Bleeding.Oozing),
                            new Payload.CasualtyLookedOver(TrunkWound: true)
                        ),
                        Finding(
                            RespondTexts.BellyPain,
                            new(RespondTexts.BellyPainAct, Common, []),
                            new Payload.WoundFound(wound, null, BodyRegion.Abdomen, WoundNature.Other, "pain or hard"),
                            new Payload.BleedingChecked(wound, Records.Bleeding.None),
                            new Payload.CasualtyLookedOver(TrunkWound: true)
                        ),
                    ],
                },
                Finding(
                    RespondTexts.PelvisPain,
                    new(RespondTexts.PelvisAct, Common, []),
                    new Payload.WoundFound(wound, null, BodyRegion.Pelvis, WoundNature.Fracture),
                    new Payload.BleedingChecked(wound, Records.Bleeding.None),
                    new Payload.CasualtyLookedOver(TrunkWound: true)
                ),
                .. MayBePregnant
                    ? (LookAnswer[])
                        [new(RespondTexts.Pregnant) { Person = new(Pregnant: true), Act = new(RespondTexts.PregnantAct, Common, []) }]
                    : [],
                NotLooked(LookStep.Belly),
            ]
        );
    }

    private ImmutableArray<YesNo> Thinner =>
        Current.Of<YesNo>(
            state.Of(Kind.CasualtyLookedOver),
            now,
            d => d.As<Payload.CasualtyLookedOver>().BloodThinner is { } yes ? new(yes) : null
        );

    private LookQuestion Background() =>
        Thinner.IsEmpty && state.Of(Kind.InjuryStated).IsEmpty && passed?.Contains(Taken) != true ? TakenBefore() : WhatHappened();

    private const string Taken = "taken";

    private static string NobodyCanSay => RespondTexts.NobodyCanSay;

    private static LookQuestion TakenBefore() =>
        new(
            Taken,
            LookStep.Background,
            RespondTexts.Taken,
            RespondTexts.TakenHow,
            [
                new(RespondTexts.TakenNone, new Payload.CasualtyLookedOver(BloodThinner: false)) { Person = new(NothingTaken: true) },
                new(RespondTexts.TakenThinner, new Payload.CasualtyLookedOver(BloodThinner: true)),
                new(RespondTexts.TakenOther, new Payload.CasualtyLookedOver(BloodThinner: false)) { Act = EnterThem },
                new(NobodyCanSay) { IsNotLooked = true },
            ]
        );

    private static HandsOn EnterThem => new(RespondTexts.TakenEnter, Common, []);

    private LookQuestion WhatHappened()
    {
        var found =
            Thinner.IsEmpty ? StepFound.NotLooked
            : Thinner.Any(t => t.Yes) ? StepFound.Something
            : StepFound.Nothing;
        return new(
            "happened",
            LookStep.Background,
            RespondTexts.Happened,
            RespondTexts.HappenedHow,
            [
                .. Enum.GetValues<Mechanism>()
                    .Select(m => new LookAnswer(
                        Sentence(Wire.Word(m)),
                        new Payload.InjuryStated(m),
                        new Payload.StepLooked(LookStep.Background, found)
                    )
                    {
                        Ends = true,
                        AsksWhen = true,
                    }),
                new(NobodyCanSay, new Payload.StepLooked(LookStep.Background, found)) { Ends = true, IsNotLooked = true },
            ]
        );
    }

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private readonly record struct YesNo(bool Yes);
}
