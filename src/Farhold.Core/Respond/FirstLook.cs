using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Respond;

/// <summary>What one step of the first look came to, by its newest answer.</summary>
/// <param name="Found">Met: something was found. NotMet: somebody looked, and there was nothing. Unknown: nobody looked, or could.</param>
/// <param name="When">Of the newest answer; null where the step was never answered.</param>
public sealed record LookedStep(LookStep Step, Truth Found, Happened? When)
{
    /// <summary>Answered, if only by saying that it could not be looked at.</summary>
    public bool IsAnswered => When is not null;
}

/// <summary>
/// How far the first look over the whole casualty has come. It can be left and resumed at any step: all that it knows is in the record.
/// </summary>
public sealed record FirstLook(ImmutableArray<LookedStep> Steps)
{
    /// <summary>The step that a carer goes on with: the first that nobody has answered; null where all are answered.</summary>
    public LookStep? Next => Steps.FirstOrDefault(s => !s.IsAnswered)?.Step;

    public bool IsBegun => Steps.Any(s => s.IsAnswered);

    /// <summary>Steps of which nothing is known, in their order: they count as unknown everywhere.</summary>
    public ImmutableArray<LookStep> Unknown => [.. Steps.Where(s => s.Found == Truth.Unknown).Select(s => s.Step)];

    public LookedStep this[LookStep step] => Steps[(int)step];

    public static FirstLook At(State state, Instant now) => new([.. Enum.GetValues<LookStep>().Select(s => Looked(s, state, now))]);

    private static LookedStep Looked(LookStep step, State state, Instant now)
    {
        var answers = Current.Of<Answer>(
            state.Of(Kind.StepLooked),
            now,
            d => d.As<Payload.StepLooked>() is var p && p.Step == step ? new Answer(p.Found, d.When) : null
        );
        if (answers.IsEmpty)
            return new(step, Truth.Unknown, null);
        // Of answers that may each be the newest, the graver counts.
        var found =
            answers.Any(a => a.Found == StepFound.Something) ? Truth.Met
            : answers.Any(a => a.Found == StepFound.NotLooked) ? Truth.Unknown
            : Truth.NotMet;
        return new(step, found, answers[0].When);
    }

    private readonly record struct Answer(StepFound Found, Happened When);
}
