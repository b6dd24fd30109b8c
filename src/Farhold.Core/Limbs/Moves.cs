using NodaTime;

namespace Farhold.Limbs;

/// <summary>Moves of the casualty.</summary>
internal static class Moves
{
    /// <summary>When the last move that has perhaps happened was over at the latest; null where there was none.</summary>
    public static Instant? Last(State state, Instant now) =>
        state
            .Of(Kind.CasualtyMoved)
            .Where(m => m.When.Earliest <= now && m.As<Payload.CasualtyMoved>().Phase == MovePhase.Moved)
            .Select(m => (Instant?)Instant.Min(m.When.Latest, now))
            .Max();
}
