using System.Globalization;
using System.Text;
using Farhold.Tests.Protocols;

namespace Farhold.Tests.Fuzz;

/// <summary>Files changed at random: each is read, or refused with reasons; never a crash, never memory out of proportion.</summary>
/// <remarks>
/// Seeded, so that a run repeats. <c>FARHOLD_FUZZ</c> sets how many inputs each of the three gets (see <c>tools/fuzz</c>),
/// <c>FARHOLD_FUZZ_SEED</c> another beginning. A failure names its seed and number.
/// </remarks>
public class FuzzTests
{
    /// <summary>For reading alone, per input: far above what is ever needed, far below what would hurt.</summary>
    private const long MaxBytes = 64L * 1024 * 1024;

    private static readonly int? Asked = Number("FARHOLD_FUZZ");
    private static readonly int Seed = Number("FARHOLD_FUZZ_SEED") ?? 20310504;

    private static readonly byte[][] Tokens =
    [
        .. new[]
        {
            "null",
            "true",
            "-1",
            "1e999",
            "0.1e-400",
            "\"\"",
            "{}",
            "[]",
            "[[[[[[[[[[[[[[[[[[",
            "\\ud800",
            "\\u0000",
            "\"kind\":",
            "\"id\":\"a7k3-1\",",
            "\"happened\":{\"earliest\":\"2031-05-04T02:10:00Z\",\"latest\":\"2031-05-04T03:10:00Z\"},",
            "9999-12-31T23:59:59Z",
            "1900-01-01T00:00:00Z",
            "entry.amended",
            "entry.withdrawn",
            "task.done",
            "PT9223372036854775807H",
            "P30D",
            "\"drop\":true,",
            "\"not\":",
            "\"byAge\":[",
            "\r\n",
            "\n",
            "\uFEFF",
            "😀",
            "a7k3-2147483647",
            "sinceFirstTightened",
            "\"authority\":{},",
        }.Select(Encoding.UTF8.GetBytes),
        [0],
        [0xFF],
        [0xC0, 0x80],
        [0xED, 0xA0, 0x80],
    ];

    [Fact]
    public void Records()
    {
        var lines = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "demo", "skarvedal.jsonl"))
            .Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Run(
            Asked ?? 14_000,
            1,
            random => Encoding.UTF8.GetBytes(string.Join('\n', random.GetItems(lines, 6))),
            (bytes, number) =>
            {
                if (RecordReader.Read(bytes, "fuzz") is not Read<RecordFile>.Usable { Value: var file })
                    return;
                using var written = new MemoryStream();
                RecordWriterKeeps(file, written);
                if (number % 10 == 0)
                    Assert.NotEmpty(JudgementJson.Write(Judge.At(CareRecord.Of(file), ShippedRules.Book, Some.At("04:30"))));
            }
        );
    }

    [Fact]
    public void Protocols() =>
        Run(Asked ?? 3_000, 2, _ => ShippedProtocol.Json.ToArray(), (bytes, _) => Reasoned(ProtocolReader.Read(bytes, "fuzz")));

    [Fact]
    public void Local_protocols()
    {
        var demo = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", "skarvedal-local.json"));
        Run(Asked ?? 4_000, 3, _ => (byte[])demo.Clone(), (bytes, _) => Reasoned(LocalFile.Read(bytes)));
        Run(Asked ?? 1_000, 3, _ => (byte[])demo.Clone(), (bytes, _) => Reasoned(LocalFile.ReadUnsigned(bytes)));
    }

    private static readonly CareRecord Casualty = Case.Well.Record;

    /// <summary>What was usable once is usable again from what is written, entry for entry.</summary>
    private static void RecordWriterKeeps(RecordFile file, MemoryStream written)
    {
        RecordReader.Write(written, file.Entries, []);
        var again = Assert.IsType<Read<RecordFile>.Usable>(RecordReader.Read(written.ToArray(), "again")).Value;
        Assert.Equal(file.Entries.Select(e => e.Json), again.Entries.Select(e => e.Json));
        Assert.Empty(again.Damaged);
    }

    private static void Reasoned(Read<Protocol> read)
    {
        switch (read)
        {
            case Read<Protocol>.Refused refused:
                Assert.NotEmpty(refused.Refusals);
                Assert.All(refused.Refusals, r => Assert.True(r.Line >= 1 && r.Column >= 1 && r.Reason.Length > 0));
                break;
            case Read<Protocol>.Usable usable: // can be judged by
                Assert.Single(Judge.At(Casualty, ShippedRules.Book.By(usable.Value), Case.Now).Limbs);
                break;
        }
    }

    private static void Run(int inputs, int stream, Func<Random, byte[]> original, Action<byte[], int> read)
    {
        for (var number = 0; number < inputs; number++)
        {
            var random = new Random(unchecked((Seed * 31) + (stream * 1_000_003) + number));
            var bytes = original(random);
            for (var changes = random.Next(1, 6); changes > 0; changes--)
                bytes = Changed(bytes, random);
            var before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                read(bytes, number);
            }
            catch (Exception e)
            {
                throw new InvalidOperationException($"seed {Seed}, stream {stream}, input {number}", e);
            }

            Assert.True(
                GC.GetAllocatedBytesForCurrentThread() - before < MaxBytes,
                $"seed {Seed}, stream {stream}, input {number} takes too much memory"
            );
        }
    }

    private static byte[] Changed(byte[] bytes, Random random)
    {
        var at = random.Next(bytes.Length + 1);
        var end = Math.Min(bytes.Length, at + random.Next(1, 40));
        switch (random.Next(7))
        {
            case 0 when at < bytes.Length:
                bytes[at] = (byte)random.Next(256);
                return bytes;
            case 1:
                return [.. bytes[..at], .. bytes[end..]];
            case 2:
                return [.. bytes[..end], .. bytes[at..]];
            case 3:
                return random.Next(10) == 0 ? bytes[..at] : bytes;
            case 4 when at < bytes.Length && char.IsAsciiDigit((char)bytes[at]):
                bytes[at] = (byte)('0' + random.Next(10));
                return bytes;
            default:
                return [.. bytes[..at], .. Tokens[random.Next(Tokens.Length)], .. bytes[(random.Next(2) == 0 ? at : end)..]];
        }
    }

    private static int? Number(string variable) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;
}
