using NodaTime;

namespace Farhold.App.Services;

/// <summary>The rules that a casualty is judged by: the shipped ones, or a local protocol laid over them.</summary>
public class RulesInForce(IPhone phone, Rulebook shipped)
{
    /// <summary>A local protocol that was checked and accepted; null for none.</summary>
    public LocalRules? Local { get; set; }

    /// <summary>What nobody has proven, for one casualty and some hours.</summary>
    public KeptEmergency Emergency { get; } = new(phone, shipped);

    /// <param name="casualty">Empty where none is open.</param>
    public virtual Rulebook Of(string casualty, Instant now) => Emergency.Of(casualty, now) ?? Local?.LaidAt(now) ?? shipped;
}
