using System.Collections.Immutable;

namespace Farhold.Respond;

/// <summary>What is asked on one screen of the first look.</summary>
/// <param name="Id">Unique among the questions of a look.</param>
public sealed record LookQuestion(string Id, LookStep Step, string Text, string Hint, ImmutableArray<LookAnswer> Answers);

/// <summary>One answer to a question, and what follows from it.</summary>
/// <param name="Entries">What it writes into the record, in this order.</param>
public sealed record LookAnswer(string Text, params ImmutableArray<Payload> Entries)
{
    /// <summary>Answered by further choices: which limb, which part.</summary>
    public ImmutableArray<LookAnswer> Choices { get; init; } = [];

    /// <summary>What has to be done with the hands before the look goes on.</summary>
    public HandsOn? Act { get; init; }

    /// <summary>What it says about the casualty itself: fields of <see cref="Payload.CasualtyOpened"/>.</summary>
    public PersonFacts? Person { get; init; }

    /// <summary>It answers the question, and the look goes on. Without it the question stands until the rest is answered.</summary>
    public bool Ends { get; init; }

    /// <summary>When they came to harm is asked before it is written; the time is that of <see cref="Payload.InjuryStated"/>.</summary>
    public bool AsksWhen { get; init; }

    /// <summary>Nobody could look, or say: it stays unknown.</summary>
    public bool IsNotLooked { get; init; }
}

/// <summary>A finding that needs hands.</summary>
/// <param name="Text">One line.</param>
/// <param name="Then">What was done, each with its entries; none of them means that it goes on without being done.</param>
public sealed record HandsOn(string Text, ImmutableArray<string> Sources, ImmutableArray<LookAnswer> Then);

/// <summary>Null: not said.</summary>
public sealed record PersonFacts(bool? NothingTaken = null, bool? Pregnant = null);
