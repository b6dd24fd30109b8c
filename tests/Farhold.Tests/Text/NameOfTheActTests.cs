using System.Text.RegularExpressions;
using Farhold.Exchange.HandOver;

namespace Farhold.Tests.Text;

/// <summary>
/// A tourniquet is converted to a packed wound and a pressure dressing. Replacing it is another act: a second one, better placed,
/// takes over (docs/decisions/two-looks.md stands on the published word).
/// </summary>
public partial class NameOfTheActTests
{
    [Fact]
    public void No_text_of_the_protocol_or_of_the_warnings_calls_it_replacing() => Assert.All(Protocol.Concat(Warnings), NotReplacing);

    [Fact]
    public void No_verdict_or_report_calls_it_replacing()
    {
        Assert.All(
            Enum.GetValues<Verdict>(),
            v =>
            {
                NotReplacing(VerdictWords.Of(v));
                NotReplacing(VerdictWords.Head(v));
            }
        );
        Assert.Contains("convert the tourniquet", VerdictWords.Of(Verdict.Attempt), StringComparison.Ordinal);
        foreach (var at in (string[])["02:30", "03:23", "03:30", "03:42", "04:12", "06:10", "08:30"])
            NotReplacing(JudgementText.Of(Judge.At(Demo.Record(), ShippedRules.Book, Some.At(at))));
    }

    [Fact]
    public void No_hand_over_or_log_calls_it_replacing()
    {
        var facts = CareFacts.Of(Demo.Record(), ShippedRules.Book, Some.At("08:30"));
        Assert.All(
            Enum.GetValues<FormKind>(),
            kind => NotReplacing(string.Join('\n', Forms.Of(kind, facts, DateTimeZone.Utc).Parts.SelectMany(p => p.Lines)))
        );
        Assert.All(Demo.Record().Entries, e => NotReplacing(EntryText.Of(e.Payload)));
    }

    private static IEnumerable<string> Protocol =>
        ShippedProtocol.Protocol is var p
            ?
            [
                p.Title,
                p.Watch.Text,
                p.Effect.Text,
                .. p.Criteria.SelectMany(c => (string?[])[c.Text, c.Look, c.Change, .. c.Acts.Select(a => a.Text)]).OfType<string>(),
                .. p.Steps.SelectMany(s => (string[])[s.Text, .. s.Before.Select(b => b.Text)]),
                .. p.AttemptActs.Concat(p.Cautions).Select(a => a.Text),
                .. p.Tasks.SelectMany(t => (string?[])[t.Text, t.Reason, t.Instead, t.Child?.Text, t.Child?.Reason]).OfType<string>(),
            ]
            : [];

    private static IEnumerable<string> Warnings => ShippedWarningSigns.Rules.Rules.SelectMany(r => (string[])[r.Text, r.Do]);

    /// <summary>Titles of publications keep their words.</summary>
    private static void NotReplacing(string text) =>
        Assert.DoesNotMatch(AmendmentWords(), text.Replace("tourniquet conversion and replacement", "", StringComparison.Ordinal));

    [GeneratedRegex(@"\breplac", RegexOptions.IgnoreCase)]
    private static partial Regex AmendmentWords();
}
