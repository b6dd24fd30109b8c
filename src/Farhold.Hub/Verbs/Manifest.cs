using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;

namespace Farhold.Hub.Verbs;

/// <param name="Name">Under the folder of the backup.</param>
/// <param name="Count">Lines in it, or rows.</param>
/// <param name="Sha256">Of the file as it lies there, in hexadecimal digits.</param>
internal sealed record BackupFile(string Name, long Count, string Sha256);

/// <summary>What is in a backup of one casualty.</summary>
/// <param name="Position">Of its last line.</param>
/// <param name="Head">
/// Hₙ in hexadecimal digits, where H₀ is 32 zero bytes and Hₙ = SHA-256(Hₙ₋₁ ‖ hash of the line at n): two that are equal at n hold the
/// same up to there.
/// </param>
/// <param name="Files">In the order of positions.</param>
internal sealed record BackedUp(long Position, string Head, ImmutableArray<BackupFile> Files)
{
    public static readonly BackedUp Nothing = new(0, Convert.ToHexStringLower(new byte[SHA256.HashSizeInBytes]), []);

    /// <summary>The next head.</summary>
    public static byte[] Next(ReadOnlySpan<byte> head, ReadOnlySpan<byte> hash) => SHA256.HashData([.. head, .. hash]);
}

/// <summary>What a backup holds. It is written last: what it does not name does not count.</summary>
/// <param name="Version">Of this form of backup.</param>
/// <param name="Form">Of the database.</param>
/// <param name="Key">By which the hub key is recognised.</param>
/// <param name="Tables">All tables but those of lines and keys.</param>
internal sealed record Manifest(
    int Version,
    string Made,
    int Form,
    string Key,
    BackupFile Tables,
    ImmutableSortedDictionary<string, BackedUp> Casualties
)
{
    public const int Current = 1;

    public const string FileName = "manifest.json",
        Keys = "keys.json",
        Lines = "lines";

    public static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <returns>Null where there is none.</returns>
    /// <exception cref="RefusedException">It can't be read, or a later version has written it.</exception>
    public static Manifest? In(string target)
    {
        var file = Path.Combine(target, FileName);
        if (!File.Exists(file))
            return null;
        try
        {
            var read = JsonSerializer.Deserialize<Manifest>(File.ReadAllBytes(file), Json);
            return read is { Version: Current, Tables: not null, Casualties: not null, Key: not null }
                ? read
                : throw new RefusedException($"{file} is no manifest that this version of the hub reads.");
        }
        catch (JsonException e)
        {
            throw new RefusedException($"{file} can't be read: {e.Message}", e);
        }
    }

    /// <summary>Where a file lies. A manifest that was tampered with leads nowhere else.</summary>
    /// <exception cref="RefusedException">It would lie outside.</exception>
    public static string PathOf(string target, BackupFile file)
    {
        var root = Path.GetFullPath(target) + Path.DirectorySeparatorChar;
        var path = Path.GetFullPath(Path.Combine(root, file.Name));
        return path.StartsWith(root, StringComparison.Ordinal)
            ? path
            : throw new RefusedException($"The manifest names {Plain.Line(file.Name)}, which is not in the backup.");
    }
}
