using System.Globalization;
using System.Security.Cryptography;

namespace Farhold;

/// <summary>Something that may be missing from the record or wrong in it, so that the record can't be relied on as whole.</summary>
/// <param name="Id">
/// Also the id of the task that settles it: a <c>task.done</c> with it says that a person has looked and taken it into account.
/// </param>
/// <param name="CanBeSettled">False where only mending the record helps.</param>
public sealed record Doubt(string Id, string Text, bool CanBeSettled = true)
{
    public static Doubt OfLine(DamagedLine line)
    {
        var print = Convert.ToHexStringLower(SHA256.HashData(line.Raw.Utf8.Span).AsSpan(0, 4));
        return new("damage-" + print, $"line {line.Number} can't be read: {line.Refusals[0].Reason}");
    }

    public static Doubt OfConflict(EntryId id) =>
        new($"conflict-{id}", $"there are two different entries {id}; the more cautious one is used. Withdraw it and enter the right one");

    /// <summary>Not every way of reading the conflicts was judged.</summary>
    public static Doubt OfManyConflicts(int judged) => new(
        "conflicts-many",
        string.Create(CultureInfo.InvariantCulture, $"the entries in conflict combine in more than {judged} ways, too many to judge each. Withdraw the wrong ones"),
        CanBeSettled: false);

    public static Doubt OfAmendment(EntryId id, string reason) =>
        new($"amendment-{id}", $"the amendment {id} can't be used: {reason}");

    public static Doubt OfGap(string device, int from, int to) => new(
        string.Create(CultureInfo.InvariantCulture, $"gap-{device}-{from}"),
        from == to
            ? $"entry {device}-{from} is missing"
            : string.Create(CultureInfo.InvariantCulture, $"entries {device}-{from} to {device}-{to} are missing"));
}

/// <summary>Something odd that does not stop a decision but should be seen. <paramref name="About"/> is null for the whole record.</summary>
public sealed record Remark(EntryId? About, string Text);
