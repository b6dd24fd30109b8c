using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Rehearse;

/// <summary>A rehearsal that somebody leads, in words of the app as <see cref="IRun"/>: for their eyes alone.</summary>
public interface ILedRun
{
    TruthNow Truth { get; }

    /// <summary>Deeds of a trainee that can be confirmed, limb by limb.</summary>
    ImmutableArray<OfferedDeed> Deeds { get; }

    /// <summary>What is written to happen, and has not.</summary>
    ImmutableArray<ComingEvent> Coming { get; }

    /// <summary>What looks came to, in order: what somebody who looks can make out, and nothing more.</summary>
    ImmutableArray<Answer> Answers { get; }

    /// <summary>Signs that look otherwise than they are, as they were set, such as <c>heartRate 141</c>.</summary>
    ImmutableArray<(string Sign, string Value)> Overrides { get; }

    /// <summary>What the scenario is there to practise.</summary>
    ImmutableArray<string> Objectives { get; }

    /// <summary>What was done, asked and had happen, in order.</summary>
    ImmutableArray<LessonLine> Lines { get; }

    LessonCourse Course { get; }
}

/// <param name="Mind">Word of the record: alert, confused, voice, pain, unresponsive.</param>
/// <param name="CoreC">°C.</param>
/// <param name="LostMl">Since the injury.</param>
public sealed record TruthNow(
    bool IsArrested,
    double HeartRate,
    double Systolic,
    double Diastolic,
    double BreathRate,
    double RefillS,
    string Mind,
    double CoreC,
    double LostMl,
    ImmutableArray<(Limb Limb, bool IsTight)> Limbs,
    ImmutableArray<(string Wound, double MlPerMin)> Wounds
);

/// <param name="Word">Of the act, <see cref="LeadWords.Act"/>.</param>
/// <param name="On">A wound's name; null where it is at none.</param>
/// <param name="Asked">What the run is asked, as a kept deed holds it.</param>
public sealed record OfferedDeed(string Word, Limb? Limb, string? On, string Asked);

/// <param name="At">Null where a condition decides.</param>
/// <param name="What">What is said then; its name where nothing is.</param>
public sealed record ComingEvent(string Id, Instant? At, string What);

/// <param name="Look">Word of the look.</param>
/// <param name="Shown">As a truth file has it, <see cref="LeadWords.Aloud"/>.</param>
public sealed record Answer(Instant At, string Look, string? Wound, string Shown);

public enum LessonKind
{
    Did,
    Looked,
    Happened,
    Set,
    BledAgain,
    Arrested,
}

/// <param name="What">Word of an act, of a look or of a sign that was set, or what happened; empty where the truth shows again.</param>
/// <param name="On">A wound's name, or what a sign was set to.</param>
/// <param name="By">Null where nobody was named.</param>
public sealed record LessonLine(Instant At, LessonKind Kind, string What, Limb? Limb, string? On, string? By);

/// <param name="LostMl">Since the trainee arrived.</param>
/// <param name="LowestPressure">Mean arterial, mmHg.</param>
/// <param name="OccludedMinutes">Of the modelled limb.</param>
/// <param name="LowestCoreC">°C.</param>
public sealed record LessonCourse(double LostMl, double LowestPressure, double OccludedMinutes, double LowestCoreC);
