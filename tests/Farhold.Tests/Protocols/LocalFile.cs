using System.Collections.Immutable;
using System.Text;
using Farhold.Tests.Signatures;

namespace Farhold.Tests.Protocols;

/// <summary>Local protocols written by hand, signed by the invented rescue service, and laid over the shipped one.</summary>
internal static class LocalFile
{
    /// <summary>Two lines; what is changed goes on the third.</summary>
    public const string Head = """
        {"local":"hut","version":"1","title":"Of the hut","over":"farhold-base",
        "sources":{"hut":{"title":"The hut's book","known":"local"}}
        """;

    /// <summary>The same for one that nobody signs: no words.</summary>
    public const string Bare = """
        {"local":"hut","version":"1",
        "over":"farhold-base"
        """;

    public const string Authorised = """
        ,"authority":{"name":"Dr Vigdis Holm","role":"medical lead","date":"2031-01-10"}
        """;

    /// <summary>What every file with <see cref="Head"/> adds.</summary>
    public const string HutsBook = "the source hut is added: The hut's book (local)";

    public static Read<Protocol> Read(ReadOnlyMemory<byte> utf8, Protocol? under = null) =>
        LocalReader.Read(
            utf8,
            "hut.json",
            under ?? ShippedProtocol.Protocol,
            TestIssuer.Rescue.Proof(utf8),
            TestIssuer.Now,
            () => ShippedRules.Book.Formulary,
            () => ShippedRules.Book.Kit
        );

    public static Read<Protocol> Read(string text, Protocol? under = null) => Read(Encoding.UTF8.GetBytes(text), under);

    public static Read<Protocol> ReadUnsigned(ReadOnlyMemory<byte> utf8) =>
        LocalReader.Read(
            utf8,
            "hut.json",
            ShippedProtocol.Protocol,
            Proof.None,
            TestIssuer.Now,
            () => ShippedRules.Book.Formulary,
            () => ShippedRules.Book.Kit
        );

    public static Protocol Accepted(string text) => Usable(Read(text));

    public static ImmutableArray<Refusal> Refused(string text) => Assert.IsType<Read<Protocol>.Refused>(Read(text)).Refusals;

    public static Protocol AcceptedUnsigned(string text) => Usable(ReadUnsigned(Encoding.UTF8.GetBytes(text)));

    public static ImmutableArray<Refusal> RefusedUnsigned(string text) =>
        Assert.IsType<Read<Protocol>.Refused>(ReadUnsigned(Encoding.UTF8.GetBytes(text))).Refusals;

    private static Protocol Usable(Read<Protocol> read) =>
        read switch
        {
            Read<Protocol>.Usable usable => usable.Value,
            Read<Protocol>.Refused refused => throw new InvalidOperationException(string.Join("; ", refused.Refusals)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}
