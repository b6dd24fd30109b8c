using System.Text;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>A local protocol that nobody has proven, used for one casualty and some hours.</summary>
public sealed class KeptEmergency
{
    /// <summary>Characters that a reason has at least (design).</summary>
    public const int ShortestReason = 10;

    private const string Key = "local-emergency";

    private readonly IPhone phone;
    private (LocalRules File, string Casualty, Instant From)? held;

    public KeptEmergency(IPhone phone, Rulebook shipped)
    {
        this.phone = phone;
        if (
            Json.Kept(
                phone.Get(Key),
                e => new Held(e.Text("text"), e.Text("name"), e.Text("casualty"), WrittenInstant.TryParse(e.Text("from")))
            ) is
            { From: { } from } kept
        )
            held = (new(Encoding.UTF8.GetBytes(kept.Text), null, kept.Name, Proof.Emergency(from), shipped), kept.Casualty, from);
    }

    /// <summary>The casualty it is for, while its hours last; null otherwise.</summary>
    public string? Casualty(Instant now) => held is { } h && h.File.LaidAt(now) is not null ? h.Casualty : null;

    /// <summary>The rules for a casualty, or null where it is for another, or over.</summary>
    public Rulebook? Of(string casualty, Instant now) => held is { } h && h.Casualty == casualty ? h.File.LaidAt(now) : null;

    public void Begin(LocalRules file, string casualty, Instant from)
    {
        held = (file.InEmergency(from), casualty, from);
        phone.Set(
            Key,
            Json.Text(w =>
            {
                w.WriteString("text", Encoding.UTF8.GetString(file.Utf8.Span));
                w.WriteString("name", file.Name);
                w.WriteString("casualty", casualty);
                w.WriteString("from", WrittenInstant.Write(from));
            })
        );
    }

    public void End()
    {
        held = null;
        phone.Set(Key, "");
    }

    private sealed record Held(string Text, string Name, string Casualty, Instant? From);
}
