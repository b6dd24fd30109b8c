using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.App.Board;

/// <summary>A limb of a casualty on the board.</summary>
/// <param name="Verdict">Null where it is watched with its tourniquet loose.</param>
/// <param name="Bleeds">Watched, and it bleeds again.</param>
/// <param name="Since">First tightened.</param>
public sealed record BoardLimb(Limb Limb, Verdict? Verdict, bool Bleeds, Happened Since, bool Attempt);

/// <param name="Taken">Who is on it; null: nobody.</param>
/// <param name="Answered">Who answered; null: nobody.</param>
public sealed record BoardQuestion(
    string Text,
    string By,
    Instant At,
    string? Taken,
    Instant? TakenAt,
    string? Answered,
    Instant? AnsweredAt,
    bool ReadBack
)
{
    public bool IsOpen => Answered is null;
}

/// <summary>A casualty as the hub says it stands.</summary>
/// <param name="Missing">Entries known to exist that the hub lacks; -1: some whose number is not known.</param>
/// <param name="AtOnce">What has to be done before anything else; null for nothing.</param>
/// <param name="Due">What comes next, with when.</param>
public sealed record BoardRow(
    string Id,
    string Alias,
    bool Practice,
    bool Ended,
    Instant? Heard,
    int Missing,
    bool Shock,
    ImmutableArray<BoardLimb> Limbs,
    string? AtOnce,
    ImmutableArray<(string Text, Instant At)> Due,
    BoardQuestion? Question,
    (double Lat, double Lon)? Position
)
{
    /// <summary>The lower, the sooner somebody has to act: as on a phone, with questions that wait before verdicts.</summary>
    public int Rank =>
        Ended ? 9
        : AtOnce is not null ? 0
        : Shock ? 1
        : Question is { IsOpen: true } ? 2
        : Limbs.Any(l => l.Verdict is not null) ? 3
        : Limbs.Length > 0 ? 4
        : 5;

    /// <summary>The limb that has gone longest; null where none was tied.</summary>
    public BoardLimb? Worst => Limbs.OrderBy(l => l.Verdict is null).ThenBy(l => l.Since.Earliest).FirstOrDefault();

    /// <summary>Null where it is no standing that can be read.</summary>
    public static BoardRow? Read(string json) =>
        Json.Kept(
            json,
            root => new BoardRow(
                root.Text("id"),
                Plain.Line(root.Text("alias")),
                root.GetProperty("practice").GetBoolean(),
                root.GetProperty("ended").GetBoolean(),
                Time(root, "heard"),
                root.Number("missing"),
                root.Text("shock") == "met",
                [.. root.GetProperty("limbs").EnumerateArray().Select(LimbOf).OfType<BoardLimb>()],
                root.GetProperty("due").EnumerateArray().Where(IsAtOnce).Select(d => d.Text("text")).FirstOrDefault(),
                [
                    .. root.GetProperty("due")
                        .EnumerateArray()
                        .Where(d => !IsAtOnce(d))
                        .Select(d => (d.Text("text"), Time(d, "at") ?? default)),
                ],
                root.TryGetProperty("question", out var question) ? QuestionOf(question) : null,
                root.TryGetProperty("position", out var at) ? (at.GetProperty("lat").GetDouble(), at.GetProperty("lon").GetDouble()) : null
            )
        );

    private static BoardLimb? LimbOf(JsonElement limb) =>
        Wire.Parse<Limb>(limb.Text("limb")) is { } which
            ? new(
                which,
                Wire.Parse<Verdict>(limb.Text("verdict")),
                limb.Text("verdict") == "bleeding",
                new(Time(limb, "from") ?? default, Time(limb, "to") ?? default),
                limb.TryGetProperty("attempt", out _)
            )
            : null;

    private static BoardQuestion QuestionOf(JsonElement q) =>
        new(
            Plain.Line(q.Text("text")),
            q.Text("by"),
            Time(q, "at") ?? default,
            Optional(q, "taken"),
            Time(q, "takenAt"),
            Optional(q, "answered"),
            Time(q, "answeredAt"),
            q.TryGetProperty("readBack", out var back) && back.GetBoolean()
        );

    private static bool IsAtOnce(JsonElement due) => due.TryGetProperty("atOnce", out _);

    private static string? Optional(JsonElement of, string name) => of.TryGetProperty(name, out var value) ? value.GetString() : null;

    private static Instant? Time(JsonElement of, string name) =>
        of.TryGetProperty(name, out var value) && value.GetString() is { } text ? WrittenInstant.TryParse(text) : null;
}
