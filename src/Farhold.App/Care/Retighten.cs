namespace Farhold.App.Care;

/// <summary>Tightening a tourniquet that is on the limb already: all that was said of it the last time still holds.</summary>
public static class Retighten
{
    public static Payload.TourniquetTightened Of(string tourniquet, Limb limb, State state) =>
        state.Of(Kind.TourniquetTightened).Select(t => t.As<Payload.TourniquetTightened>())
            .LastOrDefault(t => t.Tourniquet == tourniquet && t.Limb == limb)
        ?? new Payload.TourniquetTightened(tourniquet, limb, Wound: NewNames.WoundFor(limb, state));
}
