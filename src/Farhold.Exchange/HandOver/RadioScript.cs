using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>A script for a bad radio: short lines, numbers digit by digit, names spelled, times on the clock and in UTC.</summary>
public static class RadioScript
{
    internal static SpokenForm Of(FactWords words)
    {
        var facts = words.Facts;
        return new(
            HandOverTexts.ReadAloud,
            [VerdictWords.Caution],
            [
                Part(
                    HandOverTexts.Begin,
                    [.. facts.Practice ? [HandOverTexts.Exercise] : (string[])[], HandOverTexts.ReportAsOf(words.Times.At(facts.At))]
                ),
                Part(
                    HandOverTexts.RadioTourniquet,
                    facts.Limbs.IsEmpty
                        ? [HandOverTexts.NoTourniquet]
                        : [.. facts.Limbs.SelectMany(l => (string[])[words.Tourniquet(l), words.Limit(l)])]
                ),
                Part(HandOverTexts.RadioWounds, [.. words.Mechanism, words.Injured, .. words.Wounds, .. words.Rest]),
                Part(
                    HandOverTexts.SignsHead,
                    [
                        words.Shock,
                        .. facts.Signs.Where(s => !s.Latest.IsEmpty).Select(words.Of),
                        NotTaken(facts),
                        .. facts.Limbs.Select(words.Beyond),
                    ]
                ),
                Part(HandOverTexts.RadioDone, [.. facts.Limbs.SelectMany(l => words.Attempts(l)), .. words.Given]),
                Part(
                    HandOverTexts.RadioPerson,
                    [words.Who, .. facts.Person.Aliases.Select(a => HandOverTexts.ISpell(SpokenText.Spelled(a))), words.Allergies]
                ),
                Part(HandOverTexts.RadioPlace, [words.Position]),
                Part(HandOverTexts.RadioHelp, [.. words.Help, .. facts.Limbs.Select(FactWords.Verdict)]),
                Part(Forms.NeedsName, words.NeedLines),
                Part(Forms.RecommendationName, words.Recommendations),
                .. NotSaid.In(FormKind.Radio, facts) is { IsEmpty: false } left ? (FormPart[])[Part(Forms.NotSaidName, left)] : [],
                Part(
                    HandOverTexts.RadioCautions,
                    [.. words.Cautions.IsEmpty ? [HandOverTexts.NoneAboutRecord] : words.Cautions, HandOverTexts.EndOfReport]
                ),
            ]
        );
    }

    private static string NotTaken(CareFacts facts)
    {
        var missing = facts.Signs.Where(s => s.Latest.IsEmpty).Select(s => s.Kind.Name).ToArray();
        return missing.Length == 0 ? HandOverTexts.EverySignTaken : HandOverTexts.SignsNotRecorded(string.Join(", ", missing));
    }

    private static FormPart Part(string name, ImmutableArray<string> lines) => new("", name, [.. lines.Select(SpokenText.Of)]);
}
