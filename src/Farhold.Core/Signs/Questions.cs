using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Signs;

/// <summary>What of the record is asked back: values that are implausible, or contradict another of the same look.</summary>
public static class Questions
{
    /// <summary>Signs taken earlier decide nothing any more and are not asked about (design).</summary>
    private static readonly Duration Reach = Duration.FromHours(12);

    extension(ImmutableArray<Question> questions)
    {
        /// <summary>The question about a value, or null where it is believed.</summary>
        public Question? About(EntryId id, string field)
        {
            foreach (var question in questions)
                if (!question.Believed && question.About == id && question.Field == field)
                    return question;
            return null;
        }

        /// <summary>Whether a value is not to be believed as it stands.</summary>
        public bool Questioned(EntryId id, string field) => questions.About(id, field) is not null;
    }

    /// <summary>About age and mass, then about the signs of the last hours, in order of time.</summary>
    public static ImmutableArray<Question> In(State state, Instant now) => state.Kept(static _ => new Asked()).At(now, state);

    private static ImmutableArray<Question> Of(State state, Instant now)
    {
        var person = OfPerson(state, now);
        return [.. person, .. OfSigns(state, BelievedAge(state, person, now), now)];
    }

    /// <summary>About age and mass alone.</summary>
    internal static ImmutableArray<Question> OfPerson(State state, Instant now)
    {
        var raised = new List<Raised>();
        foreach (var entry in state.Of(Kind.CasualtyOpened))
            if (entry.When.Earliest <= now)
                foreach (var objection in Implausible.Of(entry.As<Payload.CasualtyOpened>()))
                    raised.Add(new(entry, objection, entry));
        return Settled(
            raised,
            state,
            now,
            (entry, field) =>
                state
                    .Of(Kind.CasualtyOpened)
                    .Any(later =>
                        later.When.Earliest <= now
                        && entry.When.SurelyBefore(later.When)
                        && later.As<Payload.CasualtyOpened>() is var p
                        && (field == "massKg" ? p.MassKg : p.AgeYears) is not null
                    ),
            _ => false
        );
    }

    private static double? BelievedAge(State state, ImmutableArray<Question> person, Instant now)
    {
        var ages = CasualtyProfile.Ages(state, now, person);
        return ages is [{ Doubtful: false } only] ? only.Low : null;
    }

    private static ImmutableArray<Question> OfSigns(State state, double? ageYears, Instant now)
    {
        var taken = Lately(state, now);
        var raised = new List<Raised>();
        foreach (var entry in taken)
            Raise(SignLook.Of(entry, taken), ageYears, taken, raised);
        return Settled(
            raised,
            state,
            now,
            (entry, field) => Later(entry, field) is not null,
            r => Later(r.Against, r.Objection.Against!) is { } again && Agree(r, again, ageYears)
        );

        Dated? Later(Dated entry, string field) =>
            taken.FindLast(later => entry.When.SurelyBefore(later.When) && SignLook.Gives(later.As<Payload.SignsTaken>(), field));
    }

    /// <summary>Whether a value agrees with what took the place of the one it contradicted.</summary>
    private static bool Agree(Raised r, Dated again, double? ageYears) =>
        !Implausible
            .Of(SignLook.Beside(again.As<Payload.SignsTaken>(), r.Entry.As<Payload.SignsTaken>()), ageYears)
            .Any(o => o.Field == r.Objection.Field && o.Against == r.Objection.Against);

    /// <summary>In order of time.</summary>
    private static List<Dated> Lately(State state, Instant now)
    {
        var all = state.Of(Kind.SignsTaken);
        var taken = new List<Dated>();
        for (var i = all.Length - 1; i >= 0 && all[i].When.Latest >= now - Reach; i--)
            if (all[i].When.Earliest <= now)
                taken.Add(all[i]);
        taken.Reverse();
        return taken;
    }

    /// <summary>
    /// Objections to values of the look's own entry. A value of another entry is held against it only where each is the other's
    /// nearest: what was looked at again for the question is not asked about once more.
    /// </summary>
    private static void Raise(SignLook look, double? ageYears, List<Dated> taken, List<Raised> raised)
    {
        foreach (var objection in Implausible.Of(look.Signs, ageYears))
        {
            if (look.From(objection.Field) != look.Entry)
                continue;
            var against = objection.Against is { } field ? look.From(field) : look.Entry;
            if (against == look.Entry || SignLook.Of(against, taken).From(objection.Field) == look.Entry)
                raised.Add(new(look.Entry, objection, against));
        }
    }

    /// <param name="readAgain">Whether a later entry surely gives the field anew.</param>
    /// <param name="agrees">Whether what a value contradicts was read again, and the new reading agrees with the value.</param>
    private static ImmutableArray<Question> Settled(
        List<Raised> raised,
        State state,
        Instant now,
        Func<Dated, string, bool> readAgain,
        Func<Raised, bool> agrees
    )
    {
        if (raised.Count == 0)
            return [];
        var done = state.Of(Kind.TaskDone).Where(d => d.When.Latest <= now).Select(d => d.As<Payload.TaskDone>().Task).ToHashSet();
        return
        [
            .. from of in raised
            group of by (of.Entry.Id, of.Objection.Field) into about
            let contradicts = about.All(r => r.Objection.Against is not null)
            let bySaying = about.All(r => r.Objection.BySaying)
            let said = bySaying && done.Contains(Question.TaskOf(about.Key.Id, about.Key.Field))
            let believed = said || (contradicts && about.All(agrees))
            select new Question(
                about.Key.Id,
                about.Key.Field,
                about.First().Objection.Text,
                contradicts,
                believed || about.All(Answered),
                believed,
                bySaying
            ),
        ];

        bool Answered(Raised r) =>
            readAgain(r.Entry, r.Objection.Field)
            || (r.Objection.Against is { } other && (done.Contains(Question.TaskOf(r.Against.Id, other)) || readAgain(r.Against, other)));
    }

    /// <summary>Worked out once for an instant.</summary>
    private sealed class Asked
    {
        private Answer? last; // one object, so that two threads never mix two instants

        public ImmutableArray<Question> At(Instant now, State state)
        {
            if (last is { } known && known.Now == now)
                return known.Questions;
            var answer = new Answer(now, Of(state, now));
            last = answer;
            return answer.Questions;
        }

        private sealed record Answer(Instant Now, ImmutableArray<Question> Questions);
    }

    private readonly record struct Raised(Dated Entry, Objection Objection, Dated Against);
}
