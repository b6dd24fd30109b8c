using BenchmarkDotNet.Attributes;
using Farhold.Tests;

namespace Farhold.Benchmarks;

/// <summary>What a phone does at every tap, and when it opens a long record.</summary>
[MemoryDiagnoser]
public class RecordBenchmarks
{
    private const int Many = 100_000;
    private const int Taps = 100;

    private readonly Entry[] watch = [.. LongWatch.Entries(2_000)];
    private readonly byte[] file = LongWatch.File(Many);
    private readonly Instant now = LongWatch.Start + Duration.FromHours(72);
    private CareRecord loaded = new([], []);

    [GlobalSetup]
    public void Load()
    {
        loaded = new(watch, []);
        _ = loaded.Readings;
    }

    [IterationSetup(Target = nameof(One_more_entry_on_a_loaded_record))]
    public void LoadAnew() => Load();

    [Benchmark]
    public Judgement Judge_from_cold_after_72_hours_of_2000_entries() => Judge.At(new(watch, []), ShippedRules.Book, now);

    [Benchmark]
    public Judgement Judge_again_after_72_hours_of_2000_entries() => Judge.At(loaded, ShippedRules.Book, now);

    /// <summary>Written, added and judged; a hundred times from 2,000 entries on.</summary>
    [Benchmark(OperationsPerInvoke = Taps)]
    public Judgement One_more_entry_on_a_loaded_record()
    {
        for (var tap = 1; tap < Taps; tap++)
            OneMore(tap);
        return OneMore(Taps);
    }

    private Judgement OneMore(int number)
    {
        loaded.Add(EntryWriting.Write(new("tap", number), Happened.At(now), now, "Ane", new Payload.NoteWritten("calm")));
        return Judge.At(loaded, ShippedRules.Book, now);
    }

    /// <summary>Per entry.</summary>
    [Benchmark(OperationsPerInvoke = Many)]
    public int Load_100000_entries() => ((Read<RecordFile>.Usable)RecordReader.Read(file, "long")).Value.Entries.Length;
}
