using NodaTime;

namespace Farhold.App.Services;

/// <summary>How far a casualty's record is at the hub, as this phone last heard.</summary>
/// <param name="Id">By which the hub knows the casualty; empty before it was asked.</param>
/// <param name="Said">What the hub said it holds.</param>
/// <param name="UpTo">When the last entry of this phone that the hub surely holds was written.</param>
/// <param name="Waiting">Lines here that it has not said it holds.</param>
/// <param name="Heard">When it last answered about this casualty, by the phone's clock.</param>
/// <param name="Lines">How many there were here then.</param>
public sealed record AtHub(string Id, string Said, Instant? UpTo, int Waiting, Instant? Heard, int Lines)
{
    public static readonly AtHub Nothing = new("", "", null, 0, null, 0);

    public static string Key(string casualty) => "hub-" + casualty;

    public string Write() =>
        Json.Text(w =>
        {
            w.WriteString("id", Id);
            w.WriteString("said", Said);
            if (UpTo is { } upTo)
                w.WriteString("upTo", WrittenInstant.Write(upTo));
            w.WriteNumber("waiting", Waiting);
            if (Heard is { } heard)
                w.WriteString("heard", WrittenInstant.Write(heard));
            w.WriteNumber("lines", Lines);
        });

    public static AtHub Read(string text) =>
        Json.Kept(
            text,
            root => new AtHub(
                root.Text("id"),
                root.Text("said"),
                root.TryGetProperty("upTo", out var upTo) ? WrittenInstant.TryParse(upTo.GetString()!) : null,
                root.Number("waiting"),
                root.TryGetProperty("heard", out var heard) ? WrittenInstant.TryParse(heard.GetString()!) : null,
                root.Number("lines")
            )
        ) ?? Nothing;
}
