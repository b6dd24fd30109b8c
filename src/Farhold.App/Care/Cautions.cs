namespace Farhold.App.Care;

/// <summary>What has to be said beside every verdict: limits loosened by a local protocol, and doubts about the record.</summary>
public static class Cautions
{
    public static IEnumerable<string> Of(Judgement picture) =>
        Local(picture.Protocol).Concat(picture.Doubts.Select(d => Plain.Line(Labels.Sentence(d.Text))));

    /// <summary>Whose local protocol is in force and what it loosens; nothing for the shipped protocol alone.</summary>
    public static IEnumerable<string> Local(Protocol protocol) =>
        protocol.Local is null ? [] : RulesWords.Of(protocol).Skip(1);
}
