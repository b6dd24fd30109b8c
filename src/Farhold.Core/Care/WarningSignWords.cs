using System.Globalization;

namespace Farhold.Care;

/// <summary>Findings of warning signs, in lines.</summary>
public static class WarningSignWords
{
    public static IEnumerable<string> Of(WarningFinding finding, WarningRules rules)
    {
        var where = finding.Limb is { } limb ? $", {Say.Limb(limb)}" : "";
        if (finding.State == Truth.Unknown)
        {
            yield return CareTexts.SignCantBeTold(
                finding.Rule.Id,
                where,
                string.Join("; ", finding.Needs.Select(n => n.Look).Where(l => l.Length > 0).Take(3))
            );
            yield break;
        }

        yield return $"{finding.Rule.Id}{where}: {finding.Rule.Text}";
        yield return $"  {finding.Rule.Do}";
        var used = finding.Trace.Leaves.Where(l => l.State == Truth.Met).SelectMany(l => l.Used).Distinct().Select(u => u.Said).ToArray();
        if (used.Length > 0)
            yield return "  " + CareTexts.SignSeen(string.Join("; ", used));
        yield return "  "
            + CareTexts.SignCalled(
                string.Create(CultureInfo.InvariantCulture, $"{finding.Rule.FalseDays}"),
                string.Join(", ", finding.Rule.Sources.Select(s => $"{rules.Sources[s].Title} ({rules.Sources[s].Known})"))
            );
    }
}
