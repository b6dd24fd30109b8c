namespace Farhold.Physiology.Rehearsal;

/// <summary>What truly happened. No screen of a trainee shows it before the end.</summary>
public abstract record TruthEvent
{
    private TruthEvent(double at) => At = at;

    /// <summary>Seconds since the start.</summary>
    public double At { get; }

    public sealed record Begun(double At, Act Act, double Until) : TruthEvent(At);

    /// <summary>A value of chance, by its name.</summary>
    public sealed record Drawn(double At, string Name, double Value) : TruthEvent(At);

    /// <summary>What was shown, and what it was the truth about.</summary>
    /// <param name="Truth">What the same look would show without error and with nothing hidden.</param>
    public sealed record Looked(double At, Look Look, Shown Shown, Shown Truth) : TruthEvent(At);

    /// <summary>What lay on a wound gave way.</summary>
    public sealed record Failed(double At, string Wound) : TruthEvent(At);

    public sealed record Arrested(double At) : TruthEvent(At);
}
