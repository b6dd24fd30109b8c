using System.Globalization;
using Microsoft.AspNetCore.Components;
using NodaTime;

namespace Farhold.App.Parts;

/// <summary>Spans to the second, for what counts while one looks.</summary>
public static class SecondsText
{
    /// <summary><c>3 h 12 min 05 s</c>; under an hour <c>12 min 05 s</c>.</summary>
    public static string Text(Duration d)
    {
        var s = (long)Math.Floor(Math.Abs(d.TotalSeconds));
        return s < 3600
            ? string.Create(CultureInfo.InvariantCulture, $"{s / 60} min {s % 60:00} s")
            : string.Create(CultureInfo.InvariantCulture, $"{s / 3600} h {s / 60 % 60:00} min {s % 60:00} s");
    }
}

/// <summary>How long until a time, or since.</summary>
public sealed class Countdown : CountingText
{
    [Parameter, EditorRequired]
    public Instant To { get; set; }

    protected override string Text(Instant now) => Of(To - now);
}

/// <summary>How long since something that may be known only as a range; then to the minute, since the ends differ by more.</summary>
public sealed class CountUp : CountingText
{
    [Parameter, EditorRequired]
    public Happened Since { get; set; }

    [Inject]
    private Texts Texts { get; set; } = null!;

    protected override string Text(Instant now) => Since.IsInstant ? Of(Since.Until(now).Max) : Texts.Elapsed(Since.Until(now));
}
