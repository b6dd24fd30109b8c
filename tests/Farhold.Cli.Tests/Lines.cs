namespace Farhold.Cli.Tests;

/// <summary>Lines of an invented record.</summary>
public static class Lines
{
    public static string Entry(string id, string happened, string kind, string payload = "", string? recorded = null) =>
        $$"""{"id":"{{id}}","happened":"2031-05-04T{{happened}}:00Z","recorded":"2031-05-04T{{recorded ?? happened}}:00Z","by":"Ane","kind":"{{kind}}"{{(payload.Length > 0 ? "," + payload : "")}}}""";

    public static string Opened { get; } = Entry("k1-1", "02:00", "casualty.opened", "\"alias\":\"Runa\"");

    public static string Tightened(string id, string happened, string tourniquet = "t1", string limb = "left-leg") =>
        Entry(id, happened, "tourniquet.tightened", $"\"tourniquet\":\"{tourniquet}\",\"limb\":\"{limb}\"");
}
