using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using NodaTime;

namespace Farhold.App.Parts;

/// <summary>The large clock of a limb: whole minutes, both ends where it is known only as a range. <c>1 h 02–1 h 20</c></summary>
/// <remarks>Its units are set smaller than its figures.</remarks>
public sealed class LimbTime : CountingText
{
    [Parameter, EditorRequired]
    public Happened Since { get; set; }

    protected override string Text(Instant now)
    {
        var since = Since.Until(now);
        var (least, most) = (ShortSpan.Text(since.Min), ShortSpan.Text(since.Max));
        return least == most ? most : $"{least}–{most}";
    }

    protected override void Show(RenderTreeBuilder builder, string text)
    {
        for (var from = 0; from < text.Length; )
        {
            var isUnit = IsUnit(text[from]);
            var to = from;
            while (to < text.Length && IsUnit(text[to]) == isUnit)
                to++;
            builder.OpenElement(3, isUnit ? "i" : "span");
            builder.AddContent(4, text[from..to]);
            builder.CloseElement();
            from = to;
        }
    }

    private static bool IsUnit(char sign) => char.IsLetter(sign) || sign == ' ';
}
