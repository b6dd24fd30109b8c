using System.Text;

namespace Farhold.Rehearsal.Tests;

/// <summary>The scenarios that ship, each with a scripted carer.</summary>
internal static class Shipped
{
    public static readonly string[] Names =
    [
        "held-at-once",
        "needless",
        "child",
        "two-limbs",
        "bled-at-slackening",
        "bled-after-a-move",
        "cold-and-dark",
        "found-late",
        "warning-on-day-two",
    ];

    public static byte[] File(string name) => System.IO.File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "scenarios", name));

    public static string Text(string name) => Encoding.UTF8.GetString(File(name));

    public static Scenario Scenario(string name) => Usable(ScenarioReader.Read(File($"{name}.scenario.json"), name));

    public static Script Script(string name) => Usable(Runs.Script.Read(File($"{name}.acts.jsonl"), name));

    public static Script Acts(params string[] lines) => Usable(Runs.Script.Read(Encoding.UTF8.GetBytes(string.Join('\n', lines)), "acts"));

    public static RehearsalSession Run(string name, ulong? seed = null)
    {
        var refused = new List<string>();
        var session = Headless.Run(Scenario(name), Script(name), seed, (at, why) => refused.Add($"{at}: {why}"));
        Assert.Empty(refused);
        return session;
    }

    public static T Usable<T>(Read<T> read)
    {
        Assert.True(read is Read<T>.Usable, read is Read<T>.Refused(var why) ? string.Join('\n', why) : "");
        return ((Read<T>.Usable)read).Value;
    }
}
