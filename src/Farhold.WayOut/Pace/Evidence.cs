namespace Farhold.WayOut.Pace;

/// <summary>How a number or a rule is known; shown wherever it is used.</summary>
public enum Evidence
{
    /// <summary>Read in the named public source.</summary>
    Read,

    /// <summary>Worked out from something read.</summary>
    Computed,

    /// <summary>From memory; nobody checked it against its source.</summary>
    Memory,

    /// <summary>A choice made here, open to the user's better knowledge.</summary>
    Assumption,
}

/// <summary>One thing a forecast rests on.</summary>
/// <param name="What">A plain sentence with its value and unit.</param>
public sealed record Basis(string What, Evidence Mark, string Source);
