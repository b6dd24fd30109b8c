namespace Farhold.Cli.Tests;

/// <summary>Lines of an invented record.</summary>
public static class Lines
{
    public static string Entry(string id, string happened, string kind, string payload = "", string? recorded = null) =>
        $$"""{"id":"{{id}}","happened":"2031-05-04T{{happened}}:00Z","recorded":"2031-05-04T{{recorded ?? happened}}:00Z","by":"Ane","kind":"{{kind}}"{{(payload.Length > 0 ? "," + payload : "")}}}""";

    public static string Opened { get; } = Entry("k1-1", "02:00", "casualty.opened", "\"alias\":\"Runa\"");

    /// <summary>Someone in pain and else well, of whom everything was asked and looked at: a drug may be weighed.</summary>
    public static string[] Weighed(double ageYears, double massKg) =>
        [
            Entry(
                "k1-1",
                "02:40",
                "casualty.opened",
                $"\"alias\":\"Eir\",\"sex\":\"male\",\"ageYears\":{ageYears},\"massKg\":{massKg},\"allergies\":[],"
                    + "\"medicines\":[],\"history\":\"healthy\""
            ),
            Entry(
                "k1-2",
                "02:55",
                "signs.taken",
                "\"heartRate\":84,\"breathRate\":16,\"systolic\":112,\"mental\":\"alert\",\"dizzy\":false,\"pale\":false,\"cool\":false,"
                    + "\"clammy\":false,\"radialPulse\":\"strong\",\"pain\":6"
            ),
            Entry(
                "k1-3",
                "02:56",
                "casualty.looked-over",
                "\"bleedingElsewhere\":false,\"trunkWound\":false,\"breathingHard\":false,\"veryCold\":false,\"bloodThinner\":false"
            ),
        ];

    public static string Tightened(string id, string happened, string tourniquet = "t1", string limb = "left-leg") =>
        Entry(id, happened, "tourniquet.tightened", $"\"tourniquet\":\"{tourniquet}\",\"limb\":\"{limb}\"");
}
