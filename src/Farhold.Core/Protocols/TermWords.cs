namespace Farhold.Protocols;

/// <summary>The shipped words for terms that a service may name otherwise, as docs/glossary.md has them.</summary>
public static class TermWords
{
    public static string Shipped(Term term) =>
        term switch
        {
            Term.ReSiting => ProtocolTexts.TermReSiting,
            Term.Conversion => ProtocolTexts.TermConversion,
            Term.HigherCare => ProtocolTexts.TermHigherCare,
            Term.HandOver => ProtocolTexts.TermHandOver,
            _ => Say.Word(term),
        };

    /// <summary>The service's word beside the shipped one.</summary>
    public static string Beside(Term term, string own) => ProtocolTexts.TermBeside(own, Shipped(term));
}
