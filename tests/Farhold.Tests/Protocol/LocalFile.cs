using System.Collections.Immutable;
using System.Text;

namespace Farhold.Tests.Protocols;

/// <summary>Local protocols written by hand, laid over the shipped one.</summary>
internal static class LocalFile
{
    /// <summary>Two lines; what is changed goes on the third.</summary>
    public const string Head = """
        {"local":"hut","version":"1","title":"Of the hut","over":"farhold-base",
        "sources":{"hut":{"title":"The hut's book","known":"local"}}
        """;

    public const string Signed = """
        ,"authority":{"name":"Dr Vigdis Holm","role":"medical lead","date":"2031-01-10"}
        """;

    public static Protocol Accepted(string text) => LocalReader.Read(Encoding.UTF8.GetBytes(text), "hut.json", ShippedProtocol.Protocol) switch
    {
        Read<Protocol>.Usable usable => usable.Value,
        Read<Protocol>.Refused refused => throw new InvalidOperationException(string.Join("; ", refused.Refusals)),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    public static ImmutableArray<Refusal> Refused(string text) =>
        Assert.IsType<Read<Protocol>.Refused>(LocalReader.Read(Encoding.UTF8.GetBytes(text), "hut.json", ShippedProtocol.Protocol)).Refusals;
}
