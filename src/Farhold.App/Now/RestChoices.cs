using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>The rest of the casualty: five questions, each answered by itself, or all of them by one tap.</summary>
internal sealed class RestChoices(State state, Texts texts)
{
    private static readonly Payload.CasualtyLookedOver Nothing = new();

    private static readonly ImmutableArray<Question> Questions =
    [
        new(t => t.RestBleeding, t => t.RestBleedingHint, p => p.BleedingElsewhere, (p, f) => p with { BleedingElsewhere = f }),
        new(t => t.RestTrunk, t => t.RestTrunkHint, p => p.TrunkWound, (p, f) => p with { TrunkWound = f }),
        new(t => t.RestBreathing, t => t.RestBreathingHint, p => p.BreathingHard, (p, f) => p with { BreathingHard = f }),
        new(t => t.RestCold, t => t.RestColdHint, p => p.VeryCold, (p, f) => p with { VeryCold = f }),
        new(t => t.RestThinner, t => t.RestThinnerHint, p => p.BloodThinner, (p, f) => p with { BloodThinner = f }),
    ];

    /// <summary>One tap for all of them comes last, below what it answers.</summary>
    public ImmutableArray<QuickGroup> Groups => [.. Questions.Select(Group), new("", [AllElse])];

    private QuickGroup Group(Question question) =>
        new(
            question.Name(texts),
            [Option(texts.Yes, question.With(Nothing, true)), Option(texts.NoWord, question.With(Nothing, false))],
            Hint: question.Hint(texts)
        );

    /// <summary>What was answered with yes is left as it is: only an answer of its own takes that back.</summary>
    private QuickOption AllElse
    {
        get
        {
            var met = Questions.Where(IsMet).ToArray();
            var answers = Questions.Except(met).Aggregate(Nothing, (p, q) => q.With(p, false));
            return Option(met.Length == 0 ? texts.RestNone : texts.RestNoneBut(string.Join(", ", met.Select(q => q.Name(texts)))), answers);
        }
    }

    private bool IsMet(Question question) =>
        state.Of(Kind.CasualtyLookedOver).Select(d => question.Answer(d.As<Payload.CasualtyLookedOver>())).LastOrDefault(a => a is not null)
        == true;

    private static QuickOption Option(string text, Payload payload) => new(text, _ => payload);

    private sealed record Question(
        Func<Texts, string> Name,
        Func<Texts, string> Hint,
        Func<Payload.CasualtyLookedOver, bool?> Answer,
        Func<Payload.CasualtyLookedOver, bool, Payload.CasualtyLookedOver> With
    );
}
