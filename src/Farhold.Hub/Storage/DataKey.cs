using System.Globalization;
using System.Text;

namespace Farhold.Hub.Storage;

/// <summary>The key that one casualty's lines are sealed with. Once it is gone, so are they, wherever copies lie.</summary>
internal sealed class DataKey(string casualty, byte[] secret)
{
    public const int Length = 32;

    /// <param name="device">'' where no id is legible.</param>
    /// <param name="hash">SHA-256 of the line.</param>
    public byte[] Seal(string device, long number, ReadOnlySpan<byte> hash, ReadOnlySpan<byte> line) =>
        Aead.Seal(secret, line, Bound(device, number, hash));

    /// <returns>Null where it is not what was sealed under these.</returns>
    public byte[]? Unseal(string device, long number, ReadOnlySpan<byte> hash, ReadOnlySpan<byte> box) =>
        Aead.Unseal(secret, box, Bound(device, number, hash));

    /// <summary>A row can't be passed off as another casualty's, or as another entry.</summary>
    private byte[] Bound(string device, long number, ReadOnlySpan<byte> hash) =>
        Encoding.UTF8.GetBytes(
            string.Create(CultureInfo.InvariantCulture, $"farhold line 1\n{casualty}\n{device}\n{number}\n{Convert.ToHexStringLower(hash)}")
        );
}
