using System.Diagnostics;
using System.Text;

namespace Farhold.Drawing;

/// <summary>Colours of the limb line. Shapes and patterns carry the meaning, colours only help.</summary>
/// <param name="Ground">Behind everything.</param>
/// <param name="Ink">Text, axis, marks.</param>
/// <param name="Faint">Hour ticks and the empty track.</param>
/// <param name="Stopped">Time without flow.</param>
/// <param name="Now">The now mark.</param>
/// <param name="Help">The arrival of help.</param>
/// <param name="Night">Dark hours; day is the ground.</param>
public sealed record LimbLineLook(
    string Name,
    string Ground,
    string Ink,
    string Faint,
    string Stopped,
    string Now,
    string Help,
    string Night
)
{
    public static readonly LimbLineLook Dark = new("dark", "#12161a", "#f4f1e8", "#75818b", "#d98e4a", "#ffffff", "#8fc7e8", "#3c4854");

    /// <summary>Also for print, in black and white too.</summary>
    public static readonly LimbLineLook Pale = new("pale", "#ffffff", "#101315", "#7d868d", "#b5622a", "#000000", "#1d5f85", "#c9d0d6");

    /// <summary>
    /// Rules that put this look's colours onto a drawing made in another, for a style sheet: classes win over the colours
    /// written into the drawing. Under a selector such as <c>@media print</c>, wrapped by the caller.
    /// </summary>
    public string Css()
    {
        var css = new StringBuilder();
        foreach (var (name, colour) in Colours())
            css.Append($".limb-line .f-{name}{{fill:{colour}}}.limb-line .s-{name}{{stroke:{colour}}}\n");
        return css.ToString();
    }

    public string Colour(Tone tone) =>
        tone switch
        {
            Tone.Ground => Ground,
            Tone.Ink => Ink,
            Tone.Faint => Faint,
            Tone.Stopped => Stopped,
            Tone.Now => Now,
            Tone.Help => Help,
            Tone.Night => Night,
            _ => throw new UnreachableException(),
        };

    internal IEnumerable<(string Name, string Colour)> Colours() => Enum.GetValues<Tone>().Select(t => (Wire.Word(t), Colour(t)));
}
