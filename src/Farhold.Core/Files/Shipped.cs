using System.Diagnostics;

namespace Farhold.Files;

/// <summary>Files built into this part.</summary>
internal static class Shipped
{
    public static ReadOnlyMemory<byte> File(string name)
    {
        using var stream =
            typeof(Shipped).Assembly.GetManifestResourceStream(name) ?? throw new UnreachableException($"{name} is built in");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }

    /// <summary>What a reader makes of a file that ships: it has to be whole.</summary>
    public static T Load<T>(string name, Func<ReadOnlyMemory<byte>, string, Read<T>> read) =>
        read(File(name), name) switch
        {
            Read<T>.Usable usable => usable.Value,
            Read<T>.Refused refused => throw new InvalidOperationException(string.Join("; ", refused.Refusals)),
            _ => throw new UnreachableException(),
        };
}
