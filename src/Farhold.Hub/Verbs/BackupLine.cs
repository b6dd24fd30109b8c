using System.Data.Common;
using System.IO.Compression;
using System.Text.Json;

namespace Farhold.Hub.Verbs;

/// <summary>A row of <c>line</c>, sealed as it is.</summary>
internal sealed record BackupLine(long Position, string Device, long Number, byte[] Hash, byte[] Bytes, long Arrived, string Via)
{
    public const string Columns = "position, device, number, hash, bytes, arrived, via";

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    /// <param name="row">Of <see cref="Columns"/>.</param>
    public static BackupLine Of(DbDataReader row) =>
        new(
            row.GetInt64(0),
            row.GetString(1),
            row.GetInt64(2),
            row.GetFieldValue<byte[]>(3),
            row.GetFieldValue<byte[]>(4),
            row.GetInt64(5),
            row.GetString(6)
        );

    /// <summary>One line of JSON for each, packed.</summary>
    public static async Task WriteAsync(Stream to, IAsyncEnumerable<BackupLine> lines)
    {
        await using var packed = new GZipStream(to, CompressionLevel.Fastest, leaveOpen: true); // sealed bytes hardly pack
        await foreach (var line in lines)
        {
            await JsonSerializer.SerializeAsync(packed, line, Json);
            packed.WriteByte((byte)'\n');
        }
    }

    /// <exception cref="RefusedException">One can't be read.</exception>
    public static async IAsyncEnumerable<BackupLine> ReadAsync(string file)
    {
        await using var packed = File.OpenRead(file);
        await using var plain = new GZipStream(packed, CompressionMode.Decompress);
        using var reader = new StreamReader(plain);
        while (await reader.ReadLineAsync() is { } text)
            yield return Read(file, text);
    }

    private static BackupLine Read(string file, string text)
    {
        try
        {
            return
                JsonSerializer.Deserialize<BackupLine>(text, Json)
                    is { Device: not null, Hash: not null, Bytes: not null, Via: not null } line
                ? line
                : throw new RefusedException($"{file} holds something else than lines.");
        }
        catch (JsonException e)
        {
            throw new RefusedException($"{file} holds something else than lines: {e.Message}", e);
        }
    }
}
