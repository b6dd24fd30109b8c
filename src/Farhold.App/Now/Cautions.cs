namespace Farhold.App.Now;

/// <summary>What has to be said beside every verdict: limits loosened by a local protocol, and doubts about the record.</summary>
public static class Cautions
{
    public static IEnumerable<string> Of(Judgement picture) =>
        Local(picture.Rules).Concat(picture.Doubts.Select(d => Plain.Line(Labels.Sentence(d.Text))));

    /// <summary>Whose local protocol is in force and what it loosens; nothing for the shipped protocol alone.</summary>
    public static IEnumerable<string> Local(Rulebook rules) => rules.Protocol.Local is null ? [] : RulesWords.Of(rules).Skip(1);
}
