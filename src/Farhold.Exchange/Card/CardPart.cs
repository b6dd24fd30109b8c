using System.Collections.Immutable;

namespace Farhold.Exchange.Card;

/// <summary>A part of the card, top to bottom. A closed family.</summary>
public abstract record CardPart
{
    private CardPart() { }

    /// <summary>Everything a person reads on it.</summary>
    public abstract IEnumerable<string> Texts { get; }

    public sealed record Heading(string Text) : CardPart
    {
        public override IEnumerable<string> Texts => [Text];
    }

    /// <summary>What has to be read at arm's length, such as since when a tourniquet is on.</summary>
    public sealed record Large(string Label, string Text) : CardPart
    {
        public override IEnumerable<string> Texts => [Label, Text];
    }

    /// <param name="Label">Empty: the text stands alone.</param>
    public sealed record Said(string Label, string Text, bool Strong = false) : CardPart
    {
        public override IEnumerable<string> Texts => Label.Length == 0 ? [Text] : [Label, Text];
    }

    /// <summary>A limb line, drawn; <see cref="LimbLine.Describe"/> says it in words.</summary>
    public sealed record Picture(LimbPicture Line) : CardPart
    {
        public override IEnumerable<string> Texts => [];
    }

    public sealed record Table(ImmutableArray<string> Heads, ImmutableArray<ImmutableArray<string>> Rows) : CardPart
    {
        public override IEnumerable<string> Texts => [.. Heads, .. Rows.SelectMany(r => r).Where(c => c.Length > 0)];
    }
}
