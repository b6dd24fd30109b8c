namespace Farhold.Rehearsal.Runs;

/// <summary>What a trainee notices without asking, and what their looks came to.</summary>
public enum HappeningKind
{
    Said,
    Looked,
    BleedsInView,
    Collapsed,
    Arrested,
    Over,
}

/// <param name="At">In seconds from the scenario's start.</param>
public sealed record Happening(double At, HappeningKind Kind, string Text);

public enum EndReason
{
    Time,
    Condition,
    Arrest,
}

internal static class EndWords
{
    public static string Say(EndReason why) =>
        why switch
        {
            EndReason.Time => RunTexts.OverTime,
            EndReason.Condition => RunTexts.OverCondition,
            EndReason.Arrest => RunTexts.OverArrest,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}

/// <summary>A look that is over. Times in seconds from the scenario's start.</summary>
/// <param name="True">What it would have shown without error, hiding and inject.</param>
public sealed record ShownLook(double At, LookKind Kind, string? Wound, double Asked, Shown Shown, Shown True);

/// <summary>The truth at one instant, in what a debrief asks for.</summary>
/// <param name="At">In seconds from the scenario's start.</param>
/// <param name="LostMl">Since the injury.</param>
/// <param name="DeadMuscle">Share of the modelled limb's muscle.</param>
/// <param name="Occluded">Seconds for which the modelled limb has been without blood.</param>
/// <param name="Flow">Of each wound, mL/min, in the scenario's order.</param>
/// <param name="Tight">Of each limb, in the scenario's order.</param>
public sealed record Frame(
    double At,
    Vitals Vitals,
    double LostMl,
    double DeadMuscle,
    double Potassium,
    double Occluded,
    System.Collections.Immutable.ImmutableArray<double> Flow,
    System.Collections.Immutable.ImmutableArray<bool> Tight
);

/// <summary>A wound that bled fast for a while, in seconds from the scenario's start.</summary>
/// <param name="Visible">When anybody beside the casualty could first see it; null: never.</param>
/// <param name="Until">Null while it goes on.</param>
public sealed record BleedingSpell(string Wound, double From, double? Visible, double? Until);
