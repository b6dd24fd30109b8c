namespace Farhold.App.Respond;

/// <summary>Tightening a tourniquet that is on the limb already: all that was said of it the last time still holds.</summary>
public static class Retighten
{
    /// <param name="why">Of this tightening; why it was tightened before says nothing of now.</param>
    public static Payload.TourniquetTightened Of(string tourniquet, Limb limb, State state, TighteningReason? why = null) =>
        (
            state
                .Of(Kind.TourniquetTightened)
                .Select(t => t.As<Payload.TourniquetTightened>())
                .LastOrDefault(t => t.Tourniquet == tourniquet && t.Limb == limb)
            ?? new Payload.TourniquetTightened(tourniquet, limb, Wound: NewNames.WoundFor(limb, state))
        ) with
        {
            Why = why,
        };
}
