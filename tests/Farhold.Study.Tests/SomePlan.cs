using System.Text;
using System.Text.Json.Nodes;

namespace Farhold.Study.Tests;

/// <summary>Plans for tests, made from the shipped study by changing some of its members.</summary>
internal static class SomePlan
{
    public static string Folder { get; } = Path.Combine(Repository.Root, "studies");

    public static JsonNode Shipped(string name = "when-to-attempt") =>
        JsonNode.Parse(File.ReadAllText(Path.Combine(Folder, $"{name}.study.json")))!;

    public static StudyPlan Read(JsonNode json) =>
        StudyReader.Read(Encoding.UTF8.GetBytes(json.ToJsonString()), "a.study.json") switch
        {
            Read<StudyPlan>.Usable(var plan) => plan,
            Read<StudyPlan>.Refused(var why) => throw new InvalidOperationException(string.Join('\n', why)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>Without the casualty model: fixed shares decide whether a bleed kills.</summary>
    public static JsonNode Shares(int casualties = 2048, int batch = 256)
    {
        var json = Shipped();
        json["bleeding"] = "shares";
        json["figures"]!["deathPerFailure"] = Value(0.005);
        json["figures"]!["deathPerRebleed"] = Value(0.02);
        json["run"]!["casualties"] = casualties;
        json["run"]!["batch"] = batch;
        json["uncertainty"]!["casualties"] = batch;
        json["uncertainty"]!["draws"] = 32;
        json["uncertainty"]!["base"] = 16;
        json["uncertainty"]!["trajectories"] = 4;
        return json;
    }

    /// <summary>The figures of the closed form in the reference of the study, section 1.8.</summary>
    public static JsonNode Oracle(int casualties)
    {
        var json = Shares(casualties, 2048);
        json["cohorts"] = new JsonArray(
            new JsonObject
            {
                ["cohort"] = "half",
                ["title"] = "Half needed",
                ["needed"] = Value(0.5),
            }
        );
        foreach (
            var (name, value) in new[]
            {
                ("holdHaemostatic", 0.68),
                ("holdNotNeeded", 0.98),
                ("rebleed", 0.10),
                ("rebleedHalvesH", 0),
                ("moveAfterH", 0),
                ("rebleedNotNeeded", 0),
                ("missedLook", 0),
                ("reactionMin", 1),
                ("timeToDeath", 1),
                ("limbShape", 3.8),
                ("limbScaleH", 9),
                ("arteryDecides", 0),
                ("releaseHospital", 0.05),
                ("releaseField", 0.10),
                ("palsyScale", 1),
                ("palsyLasting", 0.1),
            }
        )
            json["figures"]![name] = Value(value);
        json["evacuationH"] = new JsonArray(2, 3, 4, 6, 8, 12);
        json["run"]!["marginDeaths"] = 0.01;
        return json;
    }

    public static JsonObject Value(double value) =>
        new()
        {
            ["value"] = value,
            ["mark"] = "design",
            ["source"] = "a test",
        };
}
