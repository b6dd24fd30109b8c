using System.Collections.Immutable;
using System.Globalization;
using Farhold.Exchange.HandOver;
using NodaTime;
using NodaTime.Text;

namespace Farhold.Exchange.Message;

/// <summary>A short message of at most 160 septets, or one part of several.</summary>
/// <param name="Told">What it says, in order.</param>
/// <param name="LeftOut">Words of what it could not say, each once; <c>LOG</c> for what no message carries.</param>
public sealed record ShortMessage(string Text, ImmutableArray<MessageFact> Told, ImmutableArray<string> LeftOut)
{
    /// <summary>Word for what is only in the record: notes, advice, supplies, earlier signs, care of wounds.</summary>
    public const string Log = "LOG";

    /// <summary>The last statement where nothing was left out.</summary>
    public const string End = "END";

    /// <summary>The last statement where something was, with its words as far as there is room, then <c>+2</c> for two more.</summary>
    public const string Cut = "CUT";

    /// <summary>The whole in one message: tourniquet times always, then what still fits, most important first.</summary>
    public static ShortMessage Of(CareFacts facts)
    {
        var tourniquets = MessageFacts.Tourniquets(facts);
        var others = MessageFacts.Others(facts);
        var head = Head(facts, null);
        var always = tourniquets.Select(t => FactCode.Write(t, facts.At)!).ToArray();
        if (!Fits(head, always, Cut))
            always = [.. tourniquets.Select(t => FactCode.Write(t, facts.At, open: true)!)];

        var written = others.Select(o => FactCode.Write(o, facts.At)).ToArray();
        var told = new bool[others.Length];
        for (var i = 0; i < others.Length; i++)
        {
            if (written[i] is null)
                continue;
            told[i] = true;
            if (!Fits(head, Statements(), Tail(LeftOut(), NamedAtLeast)))
                told[i] = false;
        }

        var left = LeftOut();
        var tail = Longest(head, Statements(), left);
        return new(Join(head, Statements(), tail), [.. tourniquets, .. others.Where((_, i) => told[i])], left);

        string[] Statements() => [.. always, .. written.Where((_, i) => told[i]).Select(w => w!)];

        ImmutableArray<string> LeftOut() =>
            [
                .. others.Where((_, i) => !told[i]).Select(FactCode.Word).Distinct(),
                .. MessageFacts.MoreInTheLog(facts) ? [Log] : (string[])[],
            ];
    }

    /// <summary>The whole in as many numbered parts as it takes, each a message by itself.</summary>
    public static ImmutableArray<ShortMessage> Parts(CareFacts facts)
    {
        var all = MessageFacts
            .Tourniquets(facts)
            .Concat(MessageFacts.Others(facts))
            .Select(f => (Fact: f, Text: FactCode.Write(f, facts.At)))
            .ToArray();
        bool Room((MessageFact, string? Text) f) => f.Text is { } text && Fits(Head(facts, (99, 99)), [text], Tail([Log]));
        ImmutableArray<string> left =
        [
            .. all.Where(f => !Room(f)).Select(f => FactCode.Word(f.Fact)).Distinct(),
            .. MessageFacts.MoreInTheLog(facts) ? [Log] : (string[])[],
        ];
        var pages = new List<List<(MessageFact Fact, string Text)>> { new() };
        foreach (var (fact, text) in all.Where(Room))
        {
            if (pages[^1].Count > 0 && !Fits(Head(facts, (99, 99)), pages[^1].Select(p => p.Text).Append(text!), Cut))
                pages.Add([]);
            pages[^1].Add((fact, text!));
        }

        if (!Fits(Head(facts, (99, 99)), pages[^1].Select(p => p.Text), Tail(left)))
            pages.Add([]);
        if (pages.Count > 99)
            pages = pages[..99];
        return
        [
            .. pages.Select(
                (page, i) =>
                    new ShortMessage(
                        Join(Head(facts, (i + 1, pages.Count)), page.Select(p => p.Text), i + 1 < pages.Count ? null : Tail(left)),
                        [.. page.Select(p => p.Fact)],
                        left
                    )
            ),
        ];
    }

    /// <summary>Marks the version of the grammar, then the instant to the minute in UTC. A drill never looks like the real thing.</summary>
    private static string Head(CareFacts facts, (int Part, int Of)? part) =>
        $"{(facts.Practice ? Grammar.Drill : Grammar.Real)} {Grammar.Instant.Format(MessageTime.Floor(facts.At))}"
        + (part is { } p ? string.Create(CultureInfo.InvariantCulture, $" {p.Part}/{p.Of}") : "");

    /// <summary>How much of what is left out is named at the cost of telling more (design).</summary>
    private const int NamedAtLeast = 2;

    private static string Tail(ImmutableArray<string> left, int named = int.MaxValue) =>
        left.IsEmpty ? End
        : left.Length <= named ? $"{Cut} {string.Join(' ', left)}"
        : string.Create(CultureInfo.InvariantCulture, $"{Cut} {string.Join(' ', [.. left.Take(named), $"+{left.Length - named}"])}");

    private static string Longest(string head, string[] statements, ImmutableArray<string> left)
    {
        for (var named = left.Length; named >= 0; named--)
            if (Fits(head, statements, Tail(left, named)))
                return Tail(left, named);
        return Cut;
    }

    private static bool Fits(string head, IEnumerable<string> statements, string tail) =>
        Gsm7.Septets(Join(head, statements, tail)) is <= Gsm7.MessageSeptets;

    private static string Join(string head, IEnumerable<string> statements, string? tail) =>
        string.Join(Grammar.Between, [head, .. statements, .. tail is null ? (string[])[] : [tail]]);
}

/// <summary>The fixed parts of a message.</summary>
internal static class Grammar
{
    public const string Real = "FH1";
    public const string Drill = "DRILL1";
    public const string Between = ";";

    public static readonly InstantPattern Instant = InstantPattern.CreateWithInvariantCulture("uuuuMMdd HHmm'Z'");
}
