using NodaTime;

namespace Farhold.Hub.Shares;

/// <summary>A link for a receiving clinician: one casualty, to be read, for a while.</summary>
/// <param name="HasCode">Four digits told by voice are asked for as well.</param>
internal sealed record Share(
    string Id,
    string Casualty,
    Instant Made,
    string MadeBy,
    Instant Until,
    Instant? Ended,
    int Opened,
    Instant? LastOpened,
    bool HasCode
)
{
    public bool IsOpenAt(Instant now) => Ended is null && now < Until;
}

/// <summary>What came of a secret.</summary>
internal enum ShareAnswer
{
    Open,

    /// <summary>There is no such link, it has ended, or the secret is another one: told apart to nobody.</summary>
    NotThere,

    /// <summary>The digits told by voice are missing or wrong.</summary>
    CodeWanted,
}
