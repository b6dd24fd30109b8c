using System.Diagnostics;

namespace Farhold;

/// <summary>Files built into this part.</summary>
internal static class Shipped
{
    public static ReadOnlyMemory<byte> File(string name)
    {
        using var stream = typeof(Shipped).Assembly.GetManifestResourceStream(name)
            ?? throw new UnreachableException($"{name} is built in");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
