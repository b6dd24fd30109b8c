using System.Collections.Immutable;
using Farhold.Exchange.HandOver;

namespace Farhold.Exchange.Card;

/// <summary>Signs as a table: last value, when, and how it went.</summary>
internal static class CardSigns
{
    /// <summary>Earlier values that are shown beside the last; the log has all (design).</summary>
    private const int NumbersEarlier = 5;
    private const int WordsEarlier = 3;

    public static IEnumerable<CardPart> Of(CareFacts facts, CardTimes times)
    {
        yield return new CardPart.Heading(CardTexts.SignsHead);
        var taken = facts.Signs.Where(s => !s.Latest.IsEmpty).ToArray();
        if (taken.Length > 0)
            yield return new CardPart.Table(
                [CardTexts.ColumnSign, CardTexts.ColumnLast, CardTexts.ColumnWhen, CardTexts.ColumnCourse],
                [.. taken.Select(s => Row(s, times))]
            );
        var last = taken.SelectMany(s => s.Latest).ToArray();
        if (last.Any(v => v.Stale))
            yield return new CardPart.Said(CardTexts.MarkOld, CardTexts.TooOld);
        if (last.Any(v => v.Of.Corrected))
            yield return new CardPart.Said("*", CardTexts.CorrectedSeeLog);
        if (last.Any(v => v.Of.Disputed))
            yield return new CardPart.Said("(?)", CardTexts.EntriesDisagree);
        var never = facts.Signs.Where(s => s.Latest.IsEmpty).Select(s => s.Kind.Name).ToArray();
        if (never.Length > 0)
            yield return new CardPart.Said(CardTexts.NeverTaken, string.Join(", ", never));
    }

    private static ImmutableArray<string> Row(SignFact sign, CardTimes times)
    {
        var last = CardSheet.Either(sign.Latest.Select(v => $"{v.Text}{(v.Of.Corrected ? " *" : "")}{(v.Of.Disputed ? " (?)" : "")}"));
        var when = string.Join(CardTexts.Or, sign.Latest.Select(v => times.Of(v.When) + (v.Stale ? CardTexts.OldValue : "")).Distinct());
        return [sign.Kind.Name, last, when, Course(sign)];
    }

    private static string Course(SignFact sign)
    {
        var before = sign.All.Where(v => !sign.Latest.Contains(v)).ToArray();
        var most = before.Any(v => v.Number is null) ? WordsEarlier : NumbersEarlier;
        var shown = before.TakeLast(most).Select(v => v.Number is { } n ? Say.Number(n) : v.Text);
        var word = sign.Course switch
        {
            SignCourse.Rising => CardTexts.Rising,
            SignCourse.Falling => CardTexts.Falling,
            SignCourse.NoneShown => CardTexts.NoChange,
            _ => "",
        };
        var values = before.Length == 0 ? "" : CardTexts.Before(before.Length > most ? "… " : "", string.Join(", ", shown));
        return Plain.Line(string.Join("; ", new[] { word, values }.Where(t => t.Length > 0)));
    }
}
