using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Farhold.Hub.Storage;

/// <summary>The one secret of a hub: it wraps the data keys, and names what was erased.</summary>
/// <remarks>Kept in a file of its own, never in the database: docs/decisions/sealed-at-rest.md.</remarks>
internal sealed class HubKey
{
    /// <summary>Beside the records, where nothing else is said.</summary>
    public const string FileName = "hub.key";

    private const int Length = 32;

    private readonly byte[] wrapping;
    private readonly byte[] naming;

    private HubKey(byte[] secret)
    {
        wrapping = Derived(secret, "farhold 1 wrap");
        naming = Derived(secret, "farhold 1 tombstone");
        Print = Derived(secret, "farhold 1 print");
    }

    /// <summary>By which the key is recognised; says nothing of it. 32 bytes.</summary>
    public byte[] Print { get; }

    /// <exception cref="StoreUnusableException">There is no such file, it can't be read, or no key is in it.</exception>
    public static HubKey Read(string file)
    {
        try
        {
            var secret = Convert.FromBase64String(File.ReadAllText(file).Trim());
            return secret.Length == Length ? new(secret) : throw NoKey(file, null);
        }
        catch (FormatException e)
        {
            throw NoKey(file, e);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new StoreUnusableException($"The hub key is missing: there is no {file}. Without it the records can't be read.", e);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new StoreUnusableException($"The hub key can't be read: {e.Message}", e);
        }
    }

    /// <summary>The key in a file; where there is none, a new one is drawn and kept there, for its owner alone to read.</summary>
    public static HubKey ReadOrMake(string file)
    {
        if (!File.Exists(file))
            Make(file);
        return Read(file);
    }

    /// <summary>A new data key for a casualty, and how it is kept.</summary>
    public (DataKey Key, byte[] Wrapped) NewKey(string casualty)
    {
        var secret = RandomNumberGenerator.GetBytes(DataKey.Length);
        return (new(casualty, secret), Aead.Seal(wrapping, secret, Bound(casualty)));
    }

    /// <summary>The data key of a casualty; null where it was not wrapped by this key, or not for this casualty.</summary>
    public DataKey? Unwrap(string casualty, ReadOnlySpan<byte> wrapped) =>
        Aead.Unseal(wrapping, wrapped, Bound(casualty)) is { } secret ? new(casualty, secret) : null;

    /// <summary>What is left of something that an erased casualty was known by. Without the key nobody can try guesses on it.</summary>
    /// <param name="kind"><c>line</c>, <c>identity</c> or <c>casualty</c>.</param>
    public byte[] Tombstone(string kind, string value) => HMACSHA256.HashData(naming, Encoding.UTF8.GetBytes($"{kind}\n{value}"));

    private static byte[] Bound(string casualty) => Encoding.UTF8.GetBytes($"farhold data key 1\n{casualty}");

    private static byte[] Derived(byte[] secret, string use) =>
        HKDF.DeriveKey(HashAlgorithmName.SHA256, secret, Length, info: Encoding.UTF8.GetBytes(use));

    /// <summary>Under another name first, so that no start ever finds half a key.</summary>
    private static void Make(string file)
    {
        var part = $"{file}.{Path.GetRandomFileName()}";
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            using (var stream = new FileStream(part, options))
            {
                stream.Write(Encoding.ASCII.GetBytes(Convert.ToBase64String(RandomNumberGenerator.GetBytes(Length)) + "\n"));
                stream.Flush(flushToDisk: true);
            }

            File.Move(part, file, overwrite: false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            if (!File.Exists(file)) // else another one was faster
                throw new StoreUnusableException($"A hub key can't be made at {file}: {e.Message}", e);
            File.Delete(part);
        }
    }

    private static StoreUnusableException NoKey(string file, Exception? inner) =>
        new(string.Create(CultureInfo.InvariantCulture, $"There is no hub key in {file}: {Length} bytes in base64."), inner);
}
