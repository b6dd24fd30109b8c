using System.Text.RegularExpressions;

namespace Farhold.Tests.Care;

/// <summary>
/// A limb that stays tied is kept cool by its surroundings, never by snow or ice (Shackelford 2015, JSOM Spring 2015 p. 35; crush
/// guideline, JSOM Fall 2016 p. 101-102). Shade, frost and the intervals are design.
/// </summary>
public partial class TiedLimbTests
{
    private const string Cool = "limb-cool.left-leg";

    [Fact]
    public void A_limb_that_stays_tied_is_kept_cool()
    {
        var due = Case.Well.TightFor("00:45").Judgement.Due.Single(d => d.Task == Cool);
        Assert.True(due.At <= Case.Now);
        Assert.Contains("Never snow, ice", due.Text, StringComparison.Ordinal);
        Assert.Contains("Shackelford-cooling", due.Sources);
    }

    [Fact]
    public void One_past_six_hours_is_too() =>
        Assert.Contains(Case.Well.TightFor("07:00").Judgement.Due, d => d.Task == Cool && d.At <= Case.Now);

    [Fact]
    public void A_very_cold_casualty_is_warmed_and_the_limb_is_not()
    {
        var due = Case.Well.TightFor("00:45").LookedOver(o => o with { VeryCold = true }).Judgement.Due;
        Assert.Contains("warm the trunk", due.Single(d => d.Task == "warmth").Text, StringComparison.Ordinal);
        Assert.Contains("the rest warm", due.Single(d => d.Task == Cool).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_frozen_limb_is_kept_dry_and_not_cooled_further() =>
        Assert.Contains(
            "if frozen: dry and loosely covered",
            Case.Well.TightFor("00:45").Judgement.Due.Single(d => d.Task == Cool).Text,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_loosened_limb_is_not_kept_cool() =>
        Assert.DoesNotContain(
            Case.Well.TightFor("01:00").And("00:20", new Payload.TourniquetSlackened("t1")).Judgement.Due,
            d => d.Task == Cool
        );

    [Fact]
    public void No_text_for_a_tied_limb_says_to_warm_it()
    {
        var protocol = ShippedProtocol.Protocol;
        Assert.All(
            [
                .. protocol.Tasks.Where(t => t.Scope == TaskScope.Limb).SelectMany(t => new[] { t.Text, t.AfterMove ?? "" }),
                .. protocol.Criteria.SelectMany(c => c.Acts).Select(a => a.Text),
                .. ShippedRules
                    .Book.WarningSigns.Rules.Where(r => r.Scope == TaskScope.Limb && !r.Condition.Inputs.Contains(LongInput.Loosened))
                    .Select(r => r.Do),
            ],
            text => Assert.DoesNotMatch(WarmsLimb(), text)
        );
    }

    [GeneratedRegex(@"\bwarm (up )?(the|this|that) (tied )?(limb|hand|foot|arm|leg|finger|toe)", RegexOptions.IgnoreCase)]
    private static partial Regex WarmsLimb();
}
