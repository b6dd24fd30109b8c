using System.Collections.Immutable;

namespace Farhold.Verdicts;

/// <summary>What is written of the check before a move. It goes into the record, so it is the same in every language.</summary>
public static class MoveNote
{
    /// <summary>What was seen, left open, and stands against the move: the note of <see cref="TaskNames.BeforeMove"/>.</summary>
    /// <param name="seen">Ids of the open items that they ticked.</param>
    public static string Of(ImmutableArray<MoveItem> items, IReadOnlySet<string> seen)
    {
        (string What, IEnumerable<MoveItem> Items)[] parts =
        [
            ("seen", items.Where(i => i.State == Truth.Unknown && seen.Contains(i.Id))),
            ("left open", items.Where(i => i.State == Truth.Unknown && !seen.Contains(i.Id))),
            ("against it", items.Where(i => i.State == Truth.NotMet)),
        ];
        return string.Join(
            "; ",
            parts
                .Where(p => p.Items.Any())
                .Select(p => $"{p.What}: {string.Join(", ", p.Items.Select(i => i.Id.Replace('.', ' ').Replace('-', ' ')))}")
        );
    }
}
