using System.Collections.Immutable;

namespace Farhold.Rehearsal.Runs;

/// <summary>What an entry of a lone trainee does to the casualty: the tap is the act.</summary>
/// <remarks>Warming, posture and how hard somebody presses have no entries; those are acts of the rehearsal alone.</remarks>
internal static class EntryActs
{
    /// <summary>Design: a drip that is opened fully.</summary>
    private const double MillilitresPerMinute = 30;

    private const double LongestPress = 60;

    /// <param name="tourniquets">The limb of each tourniquet that the record names.</param>
    /// <param name="pressed">Whether a hand is on a wound (met), or has been since it was packed (unknown), or not.</param>
    public static ImmutableArray<AskedAct> For(
        Payload payload,
        IReadOnlyDictionary<string, Limb> tourniquets,
        Func<string, Truth> pressed
    ) =>
        payload is Payload.PressureHeld held
            ? pressed(held.Wound) switch
            {
                Truth.Met => [new(new Act.Release(held.Wound))],
                Truth.Unknown => [],
                _ => [new(new Act.Press(held.Wound), Math.Clamp(held.Minutes, 0.1, LongestPress))],
            }
            : [.. Acts(payload, tourniquets).Select(act => new AskedAct(act))];

    private static ImmutableArray<Act> Acts(Payload payload, IReadOnlyDictionary<string, Limb> tourniquets) =>
        payload switch
        {
            Payload.TourniquetTightened tight => [new Act.Tighten(Limb: Wire.Word(tight.Limb))],
            Payload.TourniquetSlackened slack => Slackened(slack.Tourniquet, tourniquets),
            Payload.TourniquetRemoved removed => Slackened(removed.Tourniquet, tourniquets),
            Payload.WoundPacked packed => [new Act.Pack(packed.Wound, ActFields.Gauze(packed.Material))],
            Payload.DressingApplied { Dressing: DressingKind.Pressure } dressed => [new Act.Dress(dressed.Wound)],
            Payload.FluidGiven { Fluid: Fluid.OralWater or Fluid.OralRehydration, Millilitres: > 0 } drink =>
            [
                new Act.Drink(drink.Millilitres, drink.Fluid == Fluid.OralRehydration),
            ],
            Payload.FluidGiven { Millilitres: > 0 } drip when ActFields.Content(drip.Fluid) is { } content =>
            [
                new Act.Infuse(content, drip.Millilitres, Math.Max(1, drip.Millilitres / MillilitresPerMinute)),
            ],
            Payload.CasualtyMoved { Phase: MovePhase.Moved } => [new Act.Move()],
            _ => [],
        };

    private static ImmutableArray<Act> Slackened(string tourniquet, IReadOnlyDictionary<string, Limb> tourniquets) =>
        tourniquets.TryGetValue(tourniquet, out var limb) ? [new Act.Slacken(Wire.Word(limb))] : [];
}
