namespace Farhold.Cli;

/// <summary>Reads and writes whole files, or standard input.</summary>
internal static class Files
{
    /// <summary>What a dash is called, also in refusals.</summary>
    public const string StandardInput = "standard input";

    public static Read<ReadOnlyMemory<byte>> Read(string path)
    {
        try
        {
            if (path == StandardInput)
                return FromStandardInput();
            if (Directory.Exists(path))
                return Refuse(path, "this is a directory; name a file in it");
            using var file = File.OpenRead(path);
            if (file.CanSeek && file.Length > RecordReader.MaxFile)
                return Refuse(path, $"the file is larger than {RecordReader.MaxFile / (1024 * 1024)} MiB");
            return Usable(path, file, file.CanSeek ? (int)file.Length : 0);
        }
        catch (FileNotFoundException)
        {
            return Refuse(path, "there is no such file");
        }
        catch (DirectoryNotFoundException)
        {
            return Refuse(path, "there is no such file");
        }
        catch (UnauthorizedAccessException)
        {
            return Refuse(path, "the file may not be read: its permissions forbid it");
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException)
        {
            return Refuse(path, $"the file can't be read: {e.Message}");
        }
    }

    /// <summary>Writes beside and then renames, so that a run that is stopped leaves no half picture.</summary>
    /// <returns>Why not, or null.</returns>
    public static string? Write(string path, ReadOnlySpan<byte> bytes)
    {
        var beside = $"{path}.part";
        try
        {
            File.WriteAllBytes(beside, bytes);
            File.Move(beside, path, overwrite: true);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return $"{path} can't be written: {e.Message}";
        }
    }

    /// <summary>Reads files that another file names, from where that one lies.</summary>
    public static Func<string, Read<ReadOnlyMemory<byte>>> Beside(string path)
    {
        var folder = path == StandardInput ? "" : Path.GetDirectoryName(path) ?? "";
        return name => Read(Path.Combine(folder, name));
    }

    private static Read<ReadOnlyMemory<byte>> FromStandardInput()
    {
        using var input = Console.OpenStandardInput();
        return Usable(StandardInput, input, 0);
    }

    private static Read<ReadOnlyMemory<byte>> Usable(string path, Stream from, int expected)
    {
        using var all = new MemoryStream(expected);
        var buffer = new byte[1024 * 1024];
        for (int n; (n = from.Read(buffer)) > 0; )
        {
            if (all.Length + n > RecordReader.MaxFile)
                return Refuse(path, $"the file is larger than {RecordReader.MaxFile / (1024 * 1024)} MiB");
            all.Write(buffer, 0, n);
        }

        return new Read<ReadOnlyMemory<byte>>.Usable(all.GetBuffer().AsMemory(0, (int)all.Length));
    }

    private static Read<ReadOnlyMemory<byte>>.Refused Refuse(string path, string reason) => new([new Refusal(path, 1, 1, reason)]);
}
