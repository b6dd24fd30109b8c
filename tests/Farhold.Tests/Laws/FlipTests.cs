using System.Collections.Immutable;

namespace Farhold.Tests.Laws;

/// <summary>A single bit that turns over in a linked record never turns another verdict into an attempt.</summary>
/// <remarks>
/// But in the last line of a device: no line after it names it. The ordinary run looks at every 89th bit;
/// <c>FARHOLD_FLIPS=all</c> (<c>tools/flips</c>) at each.
/// </remarks>
public class FlipTests
{
    private static readonly int Step = Environment.GetEnvironmentVariable("FARHOLD_FLIPS") == "all" ? 1 : 89;

    /// <summary>Everything known and well, but for one thing that stands against an attempt: a bit could take it away.</summary>
    private static readonly (string What, Case Scene, Verdict Verdict)[] Scenes =
    [
        ("shock", Case.Well.Signs(s => s with { HeartRate = 128 }), Verdict.LeaveOn),
        ("the tourniquet was needed", Case.Well.Tried("00:30", "00:20", AttemptOutcome.Bled), Verdict.LeaveOn),
        ("time has run out", Case.Well.TightFor("06:20"), Verdict.LeaveOn),
        ("help comes soon", Case.Well.HelpIn("01:20"), Verdict.AwaitHelp),
        ("the signs are old", Case.Well.With("signs", Some.GoodSigns, "00:35"), Verdict.CheckFirst),
    ];

    private static int judged,
        dangerous;

    [Fact]
    public void No_bit_that_turns_over_turns_another_verdict_into_an_attempt()
    {
        Parallel.ForEach(
            Scenes,
            scene =>
            {
                var lines = TwoDevices(scene.Scene).Select(e => e.Json.Utf8.ToArray()).ToImmutableArray();
                Assert.Equal(scene.Verdict, VerdictOf(File(lines))?.Verdict);
                foreach (var which in Protected(lines))
                foreach (var bit in Enumerable.Range(0, 8 * (lines[which].Length + 1)).Where(b => (b + which) % Step == 0))
                    Try(lines, which, bit, scene.What);
            }
        );
        Assert.True(judged > 150_000 / (2 * Step), $"{judged} judged");
        Assert.True(dangerous > judged / 2_000, $"only {dangerous} of {judged} would have been an attempt but for a doubt");
    }

    private static void Try(ImmutableArray<byte[]> lines, int which, int bit, string what)
    {
        var file = File(lines);
        file[lines.Take(which).Sum(l => l.Length + 1) + (bit / 8)] ^= (byte)(1 << (bit % 8));
        if (VerdictOf(file) is not { } now)
            return;
        Interlocked.Increment(ref judged);
        Interlocked.Add(ref dangerous, now.ButForDoubts ? 1 : 0);
        Assert.True(now.Verdict != Verdict.Attempt, $"{what}: bit {bit} of line {which + 1}");
    }

    /// <summary>Null where there is no record any more, or no limb to decide about.</summary>
    private static (Verdict Verdict, bool ButForDoubts)? VerdictOf(byte[] file)
    {
        if (RecordReader.Read(file, "flipped") is not Read<RecordFile>.Usable(var read))
            return null;
        var record = CareRecord.Of(read);
        if (Judge.At(record, ShippedRules.Book, Case.Now).Limbs is not [var limb, ..] limbs)
            return null;
        var trusting = record.Readings.SelectMany(r => Judge.Of(r, [], ShippedRules.Book, Case.Now).Limbs);
        return (limbs.Min(l => l.Verdict), limb.Verdict != Verdict.Attempt && trusting.Any(l => l.Verdict == Verdict.Attempt));
    }

    private static byte[] File(ImmutableArray<byte[]> lines) => [.. lines.SelectMany(l => l.Append((byte)'\n'))];

    /// <summary>Lines that another of their device follows.</summary>
    private static IEnumerable<int> Protected(ImmutableArray<byte[]> lines) =>
        Enumerable.Range(0, lines.Length - 1).Where(i => lines[i].AsSpan(0, 8).SequenceEqual(lines[i + 1].AsSpan(0, 8)));

    /// <summary>The scene as two phones wrote it, a note of each at the end.</summary>
    private static IEnumerable<Entry> TwoDevices(Case scene)
    {
        var numbers = new int[2];
        var said = scene
            .Record.Entries.Select(e => (When: e.Happened, What: e.Payload))
            .Concat(Enumerable.Repeat((When: Happened.At(Case.Now), What: (Payload)new Payload.NoteWritten("calm")), 2));
        return Chained.Of(
            said.Select((s, i) => EntryWriting.Write(new(i % 2 == 0 ? "a7k3" : "m2rt", ++numbers[i % 2]), s.When, Case.Now, "Ane", s.What))
        );
    }
}
