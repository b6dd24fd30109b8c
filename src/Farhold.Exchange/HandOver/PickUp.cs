namespace Farhold.Exchange.HandOver;

/// <summary>
/// What a nine-line request asks that no record holds: the caller says it. Null: not said, and the form leaves it to the voice.
/// </summary>
public sealed record PickUp
{
    /// <summary>Grid with zone letters, or latitude and longitude.</summary>
    public string? Place { get; init; }

    /// <summary>Frequency, call sign and suffix at the pick-up site.</summary>
    public string? Call { get; init; }

    /// <summary>Urgent, urgent surgical, priority, routine or convenience: a person decides it.</summary>
    public string? Precedence { get; init; }

    public string? Equipment { get; init; }

    /// <summary>Lying or walking.</summary>
    public string? Carried { get; init; }

    public string? Marking { get; init; }

    public string? Nationality { get; init; }

    public string? Terrain { get; init; }
}
