using System.Text.Json;

namespace Farhold.App.Services;

/// <summary>What this phone is to the hub, as it last said.</summary>
/// <param name="Role">carer, coordinator, adviser, instructor or owner.</param>
/// <param name="Digits">Six digits, for a person who compares them with those at the hub.</param>
/// <param name="IsConfirmed">Somebody has.</param>
/// <param name="IsOut">It was let out: the hub takes nothing of it any more.</param>
public sealed record HubMember(string Thumb, string Role, string Team, string Name, string Digits, bool IsConfirmed, bool IsOut = false)
{
    public bool SeesBoard => Role is "coordinator" or "adviser";

    public bool LetsIn => Role is "coordinator" or "owner";

    /// <summary>Answers questions, and asks none.</summary>
    public bool Answers => Role is "coordinator" or "adviser";

    public string Write() =>
        Json.Text(w =>
        {
            w.WriteString("thumb", Thumb);
            w.WriteString("role", Role);
            w.WriteString("team", Team);
            w.WriteString("name", Name);
            w.WriteString("digits", Digits);
            w.WriteBoolean("confirmed", IsConfirmed);
            w.WriteBoolean("out", IsOut);
        });

    /// <param name="text">As kept, or as the hub says it.</param>
    public static HubMember? Read(string text) =>
        Json.Kept(
            text,
            root => new HubMember(
                root.Text("thumb"),
                root.Text("role"),
                root.Text("team"),
                root.Text("name"),
                root.Text("digits"),
                root.GetProperty("confirmed").GetBoolean(),
                root.TryGetProperty("out", out var gone) && gone.ValueKind == JsonValueKind.True
            )
        );
}
