namespace Farhold.Rules;

/// <summary>How a local protocol differs from what is underneath, line by line: which way it goes, and on whose authority.</summary>
public static class DifferenceWords
{
    /// <summary><c>differs, stricter: the time limit is 5 h 00 min instead of 6 h 00 min [Dr Vigdis Holm, medical lead]</c>.</summary>
    public static IEnumerable<string> Lines(LocalProtocol local) =>
        local
            .Differences.Select(d => RulesTexts.Differs(Which(d.Bearing), d.Text, Authority(local)))
            .Concat(local.Lapsed.Select(text => RulesTexts.NotInForce(text, Authority(local))))
            .Select(Plain.Line);

    /// <summary>Who answers for it.</summary>
    public static string Authority(LocalProtocol local) =>
        local switch
        {
            { Standing: Standing.Unsigned } => RulesTexts.NobodyAnswers,
            { Standing: Standing.Emergency } => EntryText.NobodyHasProven,
            { Authority: { } by } => $"{by.Name}, {by.Role}",
            { Issuer: { } issuer } => RulesTexts.SignedBy(issuer.Name, issuer.Role),
            _ => RulesTexts.NobodyNamed,
        };

    private static string Which(Bearing bearing) =>
        bearing switch
        {
            Bearing.Stricter => RulesTexts.Stricter,
            Bearing.Laxer => RulesTexts.Laxer,
            _ => RulesTexts.NeitherStricter,
        };
}
