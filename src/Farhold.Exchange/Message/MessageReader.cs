using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.Exchange.Message;

/// <summary>A short message as it was read.</summary>
/// <param name="AsOf">The minute the sender told it as of.</param>
/// <param name="Part">Null where it is whole in itself.</param>
/// <param name="LeftOut">What the sender says was left out; null where this part does not say (it is not the last).</param>
public sealed record ReceivedMessage(
    string Text,
    Instant AsOf,
    bool Practice,
    (int Number, int Of)? Part,
    ImmutableArray<MessageFact> Facts,
    ImmutableArray<string>? LeftOut
);

/// <summary>Reads short messages, also such as were typed by hand: case and spare spaces do not matter.</summary>
public static class MessageReader
{
    /// <summary>Longest text taken, in characters; a message is far shorter.</summary>
    public const int MaxText = 2_000;

    /// <param name="line">For refusals.</param>
    public static Read<ReceivedMessage> Read(string text, string file, int line = 1)
    {
        if (text.Length > MaxText)
            return Refuse(1, $"the text is longer than {MaxText} characters: this is no short message");
        var pieces = Split(text);
        var (headAt, head) = pieces[0];
        if (Head(head) is not { } begun)
            return Refuse(
                headAt + 1,
                $"a message begins with {Grammar.Real} or {Grammar.Drill}, the date as 20310504 and the time as 0830Z"
            );
        var (asOf, practice, part) = begun;
        var facts = ImmutableArray.CreateBuilder<MessageFact>();
        ImmutableArray<string>? left = null;
        foreach (var (at, statement) in pieces.Skip(1).Where(p => p.Text.Length > 0))
        {
            if (left is not null)
                return Refuse(at + 1, $"nothing can follow {ShortMessage.End} or {ShortMessage.Cut}");
            left = Tail(statement);
            if (left is not null)
                continue;
            if (FactReading.Read(statement, asOf, out var objection) is not { } fact)
                return Refuse(at + 1, $"\"{Plain.Line(statement.Length > 40 ? statement[..40] : statement)}\" can't be read: {objection}");
            facts.Add(fact);
        }

        if (left is null && (part is null || part.Value.Number == part.Value.Of))
            return Refuse(text.Length + 1, $"the end is missing: {ShortMessage.End}, or {ShortMessage.Cut} with what was left out");
        return new Read<ReceivedMessage>.Usable(new(text.Trim(), asOf, practice, part, facts.ToImmutable(), left));

        Read<ReceivedMessage>.Refused Refuse(int column, string reason) => new([new(file, line, column, reason)]);
    }

    private static (Instant AsOf, bool Practice, (int Number, int Of)? Part)? Head(string head)
    {
        var words = head.ToUpperInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words is not [Grammar.Real or Grammar.Drill, var date, var time, .. var rest] || rest.Length > 1)
            return null;
        if (Grammar.Instant.Parse($"{date} {time}") is not { Success: true, Value: var asOf } || asOf.InUtc().Year is < 1901 or > 2499)
            return null;
        (int Number, int Of)? part = rest is [var of] ? Part(of) : null;
        return rest.Length == 1 && part is null ? null : (asOf, words[0] == Grammar.Drill, part);
    }

    private static (int Number, int Of)? Part(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        return
            slash > 0
            && int.TryParse(text.AsSpan(0, slash), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && int.TryParse(text.AsSpan(slash + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var of)
            && number >= 1
            && number <= of
            && of <= 99
            ? (number, of)
            : null;
    }

    private static ImmutableArray<string>? Tail(string statement)
    {
        var words = statement.ToUpperInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words switch
        {
            [ShortMessage.End] => [],
            [ShortMessage.Cut, .. var left] => left.Length == 0 ? [ShortMessage.Log] : [.. left],
            _ => null,
        };
    }

    private static List<(int At, string Text)> Split(string text)
    {
        var pieces = new List<(int, string)>();
        for (var from = 0; from <= text.Length; )
        {
            var end = text.IndexOf(Grammar.Between, from, StringComparison.Ordinal);
            end = end < 0 ? text.Length : end;
            var piece = text[from..end];
            pieces.Add((from + piece.Length - piece.TrimStart().Length, piece.Trim()));
            from = end + 1;
        }

        return pieces;
    }
}
