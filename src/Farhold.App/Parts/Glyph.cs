namespace Farhold.App.Parts;

/// <summary>Line icons on a grid of 24, 2 wide; each stands beside its word, never alone.</summary>
/// <param name="Paths">What is within the svg element.</param>
/// <remarks>Lucide 1.62.0 (licence in wwwroot/lib/lucide), but for the last ones, which are our own.</remarks>
public sealed record Glyph(string Paths)
{
    /// <summary>Lucide <c>circle-dot</c>.</summary>
    public static readonly Glyph Now = new("<circle cx='12' cy='12' r='1'/><circle cx='12' cy='12' r='10'/>");

    /// <summary>Lucide <c>person-standing</c>.</summary>
    public static readonly Glyph Casualty = new(
        "<circle cx='12' cy='5' r='1'/><path d='m9 20 3-6 3 6'/><path d='m6 8 6 2 6-2'/><path d='M12 10v4'/>"
    );

    /// <summary>Lucide <c>list-checks</c>.</summary>
    public static readonly Glyph Care = new(
        "<path d='M13 5h8'/><path d='M13 12h8'/><path d='M13 19h8'/><path d='m3 17 2 2 4-4'/><path d='m3 7 2 2 4-4'/>"
    );

    /// <summary>Lucide <c>route</c>.</summary>
    public static readonly Glyph WayOut = new(
        "<circle cx='6' cy='19' r='3'/><path d='M9 19h8.5a3.5 3.5 0 0 0 0-7h-11a3.5 3.5 0 0 1 0-7H15'/><circle cx='18' cy='5' r='3'/>"
    );

    /// <summary>Lucide <c>file-output</c>.</summary>
    public static readonly Glyph HandOver = new(
        "<path d='M4.226 20.925A2 2 0 0 0 6 22h12a2 2 0 0 0 2-2V8a2.4 2.4 0 0 0-.706-1.706l-3.588-3.588A2.4 2.4 0 0 0 14 2H6a2 2 0 0 0-2 2v3.127'/><path d='M14 2v5a1 1 0 0 0 1 1h5'/><path d='m5 11-3 3'/><path d='m5 17-3-3h10'/>"
    );

    /// <summary>Lucide <c>chevron-left</c>.</summary>
    public static readonly Glyph Back = new("<path d='m15 18-6-6 6-6'/>");

    /// <summary>Lucide <c>chevron-right</c>.</summary>
    public static readonly Glyph Onward = new("<path d='m9 18 6-6-6-6'/>");

    /// <summary>Lucide <c>smartphone</c>.</summary>
    public static readonly Glyph Phone = new("<rect width='14' height='20' x='5' y='2' rx='2' ry='2'/><path d='M12 18h.01'/>");

    /// <summary>Lucide <c>octagon-alert</c>.</summary>
    public static readonly Glyph Alarm = new(
        "<path d='M12 16h.01'/><path d='M12 8v4'/><path d='M15.312 2a2 2 0 0 1 1.414.586l4.688 4.688A2 2 0 0 1 22 8.688v6.624a2 2 0 0 1-.586 1.414l-4.688 4.688a2 2 0 0 1-1.414.586H8.688a2 2 0 0 1-1.414-.586l-4.688-4.688A2 2 0 0 1 2 15.312V8.688a2 2 0 0 1 .586-1.414l4.688-4.688A2 2 0 0 1 8.688 2z'/>"
    );

    /// <summary>Lucide <c>circle-question-mark</c>.</summary>
    public static readonly Glyph Ask = new(
        "<circle cx='12' cy='12' r='10'/><path d='M9.09 9a3 3 0 0 1 5.83 1c0 2-3 3-3 3'/><path d='M12 17h.01'/>"
    );

    /// <summary>Lucide <c>hourglass</c>.</summary>
    public static readonly Glyph Wait = new(
        "<path d='M5 22h14'/><path d='M5 2h14'/><path d='M17 22v-4.172a2 2 0 0 0-.586-1.414L12 12l-4.414 4.414A2 2 0 0 0 7 17.828V22'/><path d='M7 2v4.172a2 2 0 0 0 .586 1.414L12 12l4.414-4.414A2 2 0 0 0 17 6.172V2'/>"
    );

    /// <summary>Lucide <c>circle-check</c>.</summary>
    public static readonly Glyph Go = new("<circle cx='12' cy='12' r='10'/><path d='m16 9-5.5 5.5L8 12'/>");

    public static readonly Glyph Tourniquet = new(
        "<path d='M7 2.5v5M17 2.5v5M7.6 16.5l.4 5M16.4 16.5l-.4 5'/><rect x='4' y='7.5' width='16' height='9' rx='2'/><path d='M8.5 14l7-4'/>"
    );

    public static readonly Glyph Wound = new(
        "<path d='M3 9.5c4.2-5.3 13.8-5.3 18 0-4.2 5.3-13.8 5.3-18 0z'/><path d='M7.5 9.5h9'/><path d='M12 17c-1.3 1.7-1.8 2.5-1.8 3.3a1.8 1.8 0 0 0 3.6 0c0-.8-.5-1.6-1.8-3.3z'/>"
    );

    public static readonly Glyph Dressing = new(
        "<rect x='4' y='4' width='16' height='16' rx='2.5'/><path d='M4 11l7-7M4 18.5 18.5 4M8.5 20 20 8.5M15.5 20l4.5-4.5'/>"
    );
}
