using System.Security.Cryptography;

namespace Farhold.Hub.Verbs;

/// <summary>Files that are on the disk when they have their name.</summary>
internal static class BackupFiles
{
    /// <summary>Writes a file whole, or not at all.</summary>
    public static async Task<BackupFile> WriteAsync(string target, string name, long count, Func<Stream, Task> write)
    {
        var path = Path.Combine(target, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var part = path + ".part";
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.ReadWrite };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        string hash;
        await using (var stream = new FileStream(part, options))
        {
            await write(stream);
            stream.Flush(flushToDisk: true);
            stream.Position = 0;
            hash = Convert.ToHexStringLower(await SHA256.HashDataAsync(stream));
        }

        File.Move(part, path, overwrite: true);
        return new(name, count, hash);
    }

    /// <returns>What is wrong with a file; null: it is as it was written.</returns>
    public static async Task<string?> FaultAsync(string target, BackupFile file)
    {
        var path = Manifest.PathOf(target, file);
        if (!File.Exists(path))
            return $"{file.Name} is missing.";
        await using var stream = File.OpenRead(path);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(stream)) == file.Sha256
            ? null
            : $"{file.Name} is not as it was written: its SHA-256 is another.";
    }
}
