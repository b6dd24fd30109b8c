using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Rehearse;

/// <summary>A rehearsal that runs, in words of the app: what asks for it names nothing of the model, which may not be loaded yet.</summary>
public interface IRun
{
    string Title { get; }

    string Briefing { get; }

    /// <summary>Wounds that can be looked at, by the names that the record gives them.</summary>
    ImmutableArray<string> Wounds { get; }

    /// <summary>In seconds from the scenario's start.</summary>
    double Time { get; }

    Instant Now { get; }

    bool IsOver { get; }

    /// <summary>Looks that have come to something.</summary>
    int LooksDone { get; }

    /// <summary>In order.</summary>
    IReadOnlyList<Noticed> Noticed { get; }

    double SecondsAt(Instant instant);

    /// <param name="stop">Stops at the first step in which something is noticed.</param>
    void AdvanceTo(double seconds, bool stop = false);

    /// <summary>In seconds: what the trainee can know of that comes next.</summary>
    double NextAt(Rulebook rules);

    /// <returns>Why nothing comes of it, or null.</returns>
    string? Do(KeptDeed deed);

    /// <summary>Takes over what the trainee logged; true where it was new.</summary>
    bool Take(string line);

    /// <summary>What there is to learn from it, part by part.</summary>
    /// <param name="width">Of its pictures, px.</param>
    Debriefing Debrief(Rulebook rules, double width);

    /// <summary>Reads what a trainee logged on their own phone while somebody led this run, and debriefs by it.</summary>
    /// <param name="record">The file, as it came.</param>
    /// <param name="name">Of the file, for what is refused.</param>
    /// <returns>A debrief, or why there is none.</returns>
    (Debriefing? Shown, ImmutableArray<Refusal> Refusals) Debrief(ReadOnlyMemory<byte> record, string name, Rulebook rules, double width);

    /// <summary>The run once more with one change and the same luck, then with casualties alike and all luck drawn anew.</summary>
    /// <param name="change">A word of <see cref="Debriefing.Changes"/>.</param>
    /// <param name="count">Of casualties alike.</param>
    /// <param name="show">Called whenever another one is done.</param>
    /// <param name="breathe">Lets touches through; where it throws, the rest is left.</param>
    Task WhatIfAsync(string change, int count, Action<WhatIfShown> show, Func<Task> breathe);

    /// <summary>The run in few words, of which another phone that has the scenario makes the same.</summary>
    string Share();

    /// <summary>Whether somebody led it, so that the record is on a phone of its own.</summary>
    bool IsLed { get; }

    /// <summary>For who leads; a trainee's screens ask nothing of it.</summary>
    ILedRun Led { get; }

    /// <summary>What the record holds when the trainee takes the phone.</summary>
    byte[] Opening();
}
