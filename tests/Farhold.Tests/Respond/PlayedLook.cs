using System.Collections.Immutable;

namespace Farhold.Tests.Respond;

/// <summary>A first look being taken: answers as they are tapped, each writing what it writes into a record.</summary>
public sealed class PlayedLook
{
    private readonly List<Entry> entries = [];
    private readonly HashSet<string> passed = [];

    public PlayedLook(Instant begin, Payload.CasualtyOpened? person = null)
    {
        Now = begin;
        Write([person ?? new("Runa", AgeYears: 34)]);
    }

    public Instant Now { get; private set; }

    public int Taps { get; private set; }

    /// <summary>What each step wrote.</summary>
    public List<(LookStep Step, Payload What)> Written { get; } = [];

    public CareRecord Record => new(entries, []);

    public FirstLook Look => FirstLook.At(Record.Readings[0], Now);

    public LookQuestion? Question =>
        Look.Next is { } step
            ? new LookQuestions(Record.Readings[0], Now, NewNames.Wound(Record), NewNames.Tourniquet(Record), passed).Of(step)
            : null;

    public PlayedLook Tap(params string[] texts)
    {
        var (question, offered) = (Question!, Question!.Answers);
        foreach (var text in texts)
        {
            Taps++;
            var answer = offered.Single(a => a.Text == text);
            Give(question, answer);
            offered = [.. answer.Choices, .. answer.Act?.Then ?? []];
        }

        return this;
    }

    public void Give(LookQuestion question, LookAnswer answer)
    {
        Now += Duration.FromSeconds(5);
        if (answer.IsNotLooked && !answer.Ends)
            passed.Add(question.Id);
        Written.AddRange(answer.Entries.Select(e => (question.Step, e)));
        Write(answer.Entries);
    }

    private void Write(ImmutableArray<Payload> said)
    {
        foreach (var what in said)
            entries.Add(EntryWriting.Write(new("a", entries.Count + 1), Happened.At(Now), Now, "Ane", what));
    }
}
