namespace Farhold.Tests;

/// <summary>The record that ships as an example.</summary>
public static class Demo
{
    public static CareRecord Record() =>
        CareRecord.Of(
            (
                (Read<RecordFile>.Usable)
                    RecordReader.Read(
                        File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", "skarvedal.jsonl")),
                        "skarvedal.jsonl"
                    )
            ).Value
        );
}
