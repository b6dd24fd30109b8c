using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>A script for a bad radio: short lines, numbers digit by digit, names spelled, times on the clock and in UTC.</summary>
public static class RadioScript
{
    internal static SpokenForm Of(FactWords words)
    {
        var facts = words.Facts;
        return new(
            "To read aloud: one line, pause, the next",
            [VerdictWords.Caution],
            [
                Part("Begin",
                [
                    .. facts.Practice ? ["exercise, exercise, exercise"] : (string[])[],
                    $"report on one casualty, as of {words.Times.At(facts.At)}",
                ]),
                Part("Tourniquet", facts.Limbs.IsEmpty
                    ? ["no tourniquet recorded"]
                    : [.. facts.Limbs.SelectMany(l => (string[])[words.Tourniquet(l), words.Limit(l)])]),
                Part("Wounds", [.. words.Wounds, .. words.Rest]),
                Part("Signs", [words.Shock, .. facts.Signs.Where(s => !s.Latest.IsEmpty).Select(words.Of), NotTaken(facts)]),
                Part("Done", [.. facts.Limbs.SelectMany(l => words.Attempts(l)), .. words.Given]),
                Part("Person", [words.Who, .. facts.Person.Aliases.Select(a => $"I spell the name: {SpokenText.Spelled(a)}"), words.Allergies]),
                Part("Place", [words.Position]),
                Part("Help", [.. words.Help, .. facts.Limbs.Select(FactWords.Verdict)]),
                Part("Cautions", [.. words.Cautions.IsEmpty ? ["none known about the record"] : words.Cautions, "end of report"]),
            ]);
    }

    private static string NotTaken(CareFacts facts)
    {
        var missing = facts.Signs.Where(s => s.Latest.IsEmpty).Select(s => s.Kind.Name).ToArray();
        return missing.Length == 0 ? "every sign was taken" : $"not recorded: {string.Join(", ", missing)}";
    }

    private static FormPart Part(string name, ImmutableArray<string> lines) => new("", name, [.. lines.Select(SpokenText.Of)]);
}
