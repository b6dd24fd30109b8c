using NodaTime;

namespace Farhold.Care;

/// <summary>Questions put to an adviser and what came back: what is open, who is on it, what nobody here has confirmed yet.</summary>
public static class Correspondence
{
    /// <summary>The last question that nothing answers yet; null where there is none.</summary>
    public static Dated? OpenQuestion(State state, Instant now) =>
        state.Of(Kind.QuestionAsked).LastOrDefault(q => q.When.Latest <= now) is { } asked && Answer(state, asked.Id) is null
            ? asked
            : null;

    /// <summary>The last advice that names a question as what it answers.</summary>
    public static Dated? Answer(State state, EntryId question) =>
        state.Of(Kind.AdviceReceived).LastOrDefault(a => a.As<Payload.AdviceReceived>().Answers == question);

    /// <summary>Who said last that they are on a question.</summary>
    public static Dated? TakenBy(State state, EntryId question) =>
        state.Of(Kind.QuestionTaken).LastOrDefault(t => t.As<Payload.QuestionTaken>().Answers == question);

    /// <summary>
    /// The last advice that another device wrote and of which nobody has said that it was read back, neither in it nor later.
    /// </summary>
    public static Dated? Unconfirmed(State state, string here, Instant now) =>
        state.Of(Kind.AdviceReceived).LastOrDefault(a => a.When.Earliest <= now) is { } last
        && last.Id.Device != here
        && last.As<Payload.AdviceReceived>().ReadBack is null
        && !IsConfirmed(state, last.Id)
            ? last
            : null;

    /// <summary>Somebody beside the casualty has said that they have read an advice back.</summary>
    public static bool IsConfirmed(State state, EntryId advice) =>
        state.Of(Kind.TaskDone).Any(t => t.As<Payload.TaskDone>().Task == TaskNames.ReadBackOf(advice));
}
