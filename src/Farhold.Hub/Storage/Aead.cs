using System.Security.Cryptography;

namespace Farhold.Hub.Storage;

/// <summary>AES-256-GCM with a nonce drawn for each sealing (NIST SP 800-38D): 12 bytes nonce, the ciphertext, 16 bytes tag.</summary>
internal static class Aead
{
    private static readonly int Nonce = AesGcm.NonceByteSizes.MaxSize;
    private static readonly int Tag = AesGcm.TagByteSizes.MaxSize;

    /// <param name="bound">What has to be the same when it is opened.</param>
    public static byte[] Seal(byte[] key, ReadOnlySpan<byte> plain, ReadOnlySpan<byte> bound)
    {
        var box = new byte[Nonce + plain.Length + Tag];
        RandomNumberGenerator.Fill(box.AsSpan(0, Nonce));
        using var aes = new AesGcm(key, Tag);
        aes.Encrypt(box.AsSpan(0, Nonce), plain, box.AsSpan(Nonce, plain.Length), box.AsSpan(Nonce + plain.Length), bound);
        return box;
    }

    /// <returns>Null where it was changed, or sealed with another key or for something else.</returns>
    public static byte[]? Unseal(byte[] key, ReadOnlySpan<byte> box, ReadOnlySpan<byte> bound)
    {
        if (box.Length < Nonce + Tag)
            return null;
        var plain = new byte[box.Length - Nonce - Tag];
        using var aes = new AesGcm(key, Tag);
        try
        {
            aes.Decrypt(box[..Nonce], box.Slice(Nonce, plain.Length), box[(Nonce + plain.Length)..], plain, bound);
            return plain;
        }
        catch (AuthenticationTagMismatchException)
        {
            return null;
        }
    }
}
