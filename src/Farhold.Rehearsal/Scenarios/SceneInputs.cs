using System.Collections.Immutable;

namespace Farhold.Rehearsal.Scenarios;

/// <summary>What conditions of a scenario may ask about: its truth, limb by limb and wound by wound, and what was logged.</summary>
/// <remarks>
/// Names of a limb or wound come after a dot: <c>tight.left-leg</c>, <c>bleeding.w1</c>. What has not happened is unknown, so that no
/// condition on it is met: <c>sinceSlackened.left-leg</c> before anybody slackened.
/// </remarks>
internal static class SceneInputs
{
    public const string Elapsed = "elapsed";
    public const string Arrested = "arrested";
    public const string LostMl = "lostMl";
    public const string MeanPressure = "meanPressure";
    public const string Systolic = "systolic";
    public const string HeartRate = "heartRate";
    public const string TemperatureC = "temperatureC";
    public const string MentalState = "mental";
    public const string Tight = "tight.";
    public const string SinceSlackened = "sinceSlackened.";
    public const string SinceTightened = "sinceTightened.";
    public const string BleedingOf = "bleeding.";
    public const string Packed = "packed.";
    public const string Dressed = "dressed.";
    public const string Logged = "logged.";

    public static ImmutableArray<Input> For(IEnumerable<Limb> limbs, IEnumerable<string> wounds) =>
        [
            Named(Elapsed, InputType.Duration),
            Flag(Arrested),
            Named(LostMl, InputType.Number),
            Named(MeanPressure, InputType.Number),
            Named(Systolic, InputType.Number),
            Named(HeartRate, InputType.Number),
            Named(TemperatureC, InputType.Number),
            Named(MentalState, InputType.Word, [.. Wire.Words<Mental>()]),
            .. limbs
                .Select(Wire.Word)
                .SelectMany(l =>
                    (Input[])[Flag(Tight + l), Named(SinceSlackened + l, InputType.Duration), Named(SinceTightened + l, InputType.Duration)]
                ),
            .. wounds.SelectMany(w =>
                (Input[])[Named(BleedingOf + w, InputType.Word, [.. Wire.Words<Bleeding>()]), Flag(Packed + w), Flag(Dressed + w)]
            ),
            .. Enum.GetValues<Kind>().Where(k => k != Kind.OfNewerVersion).Select(k => Named(Logged + Kinds.Wire(k), InputType.Number)),
        ];

    private static Input Flag(string name) => Named(name, InputType.Flag, ["false", "true"]);

    private static Input Named(string name, InputType type, ImmutableArray<string> words = default) =>
        new(name, () => name, "", type, null, words.IsDefault ? [] : words, Expires: false);
}

/// <summary>What an input comes to; neither is unknown.</summary>
internal readonly record struct SceneValue(double? Number, string? Word = null)
{
    public static SceneValue Of(bool flag) => new(null, flag ? "true" : "false");
}

/// <summary>Whether a condition holds, in strong Kleene logic.</summary>
internal static class SceneCondition
{
    public static Truth Holds(Condition condition, Func<Input, SceneValue> value) =>
        condition switch
        {
            Condition.All all => all.Parts.Aggregate(Truth.Met, (t, p) => t.And(Holds(p, value))),
            Condition.Any any => any.Parts.Aggregate(Truth.NotMet, (t, p) => t.Or(Holds(p, value))),
            Condition.Not not => Holds(not.Part, value).Not(),
            Condition.OneOf one => value(one.Input).Word is { } word ? Kleene.Of(one.Words.Contains(word)) : Truth.Unknown,
            Condition.Compare compare => value(compare.Input).Number is { } number
                ? Kleene.Of(Holds(compare.Comparison, number, compare.Limit))
                : Truth.Unknown,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static bool Holds(Comparison comparison, double value, double limit) =>
        comparison switch
        {
            Comparison.Above => value > limit,
            Comparison.AtLeast => value >= limit,
            Comparison.Below => value < limit,
            Comparison.AtMost => value <= limit,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}
