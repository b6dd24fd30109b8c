using System.Globalization;
using CsCheck;
using NodaTime.Text;

namespace Farhold.Tests.Laws;

/// <summary>Not a test: writes generated records, always the same ones, for <c>tools/same</c> to ask two builds about.</summary>
public class RecordsTool
{
    [Fact(Explicit = true)]
    public void Writes_generated_records()
    {
        var into =
            Environment.GetEnvironmentVariable("FARHOLD_RECORDS")
            ?? throw new InvalidOperationException("FARHOLD_RECORDS names the folder to write into.");
        Directory.CreateDirectory(into);
        for (var n = 0; n < 300; n++)
        {
            var written = (n % 2 == 0 ? Gens.Record : Gens.StrangeRecord).Generate(new PCG((uint)n, 0x5eed), null, out _);
            var path = Path.Combine(into, n.ToString("000", CultureInfo.InvariantCulture) + ".jsonl");
            File.WriteAllLines(path, [.. written.Entries.Select(e => e.Json.ToString()), .. written.Damaged.Select(d => d.Raw.ToString())]);
            File.WriteAllText(path + ".at", InstantPattern.General.Format(written.Now));
        }

        Assert.Equal(300, Directory.GetFiles(into, "*.jsonl").Length);
    }
}
