using System.Collections.Immutable;

namespace Farhold.App.WayOut;

/// <summary>What the trials of one plan say.</summary>
/// <param name="Arrival">For the limb line; null where nine in ten never arrive.</param>
/// <param name="Worked">Time the trials took, pauses left out.</param>
/// <param name="Answers">What would change it; empty while that is still being worked out.</param>
public sealed record Forecast(
    Simulation Simulation,
    Outlook Outlook,
    Arrival? Arrival,
    TimeSpan Worked,
    ImmutableArray<WhatIfAnswer> Answers
)
{
    /// <summary>How long to wait, where the plan waits for something; null while that is still being worked out.</summary>
    public DecisionTime? Decision { get; init; }

    public Plan Plan => Simulation.Plan.Plan;

    public Darkness? Darkness => Simulation.Plan.Darkness;
}
