namespace Farhold.Protocols;

/// <summary>Which way something that a local protocol changes goes.</summary>
public enum Bearing
{
    /// <summary>It asks for more, or allows less.</summary>
    Stricter,

    /// <summary>It allows more, or can't be shown not to.</summary>
    Laxer,

    /// <summary>Words, names and numbers, on which no verdict hangs.</summary>
    Neither,
}

/// <summary>One thing in which a local protocol differs from what is underneath, in a sentence.</summary>
public sealed record Difference(string Text, Bearing Bearing);
