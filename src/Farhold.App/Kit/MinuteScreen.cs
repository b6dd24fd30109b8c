using Farhold.App.Screens;
using NodaTime;

namespace Farhold.App.Kit;

/// <summary>A place that is drawn again for new entries, and each minute for what is counted in time.</summary>
public abstract class MinuteScreen : DeskScreen
{
    private int counted = -1;
    private Instant drawn;

    protected override bool IsNews()
    {
        if (Desk is not { Record: { } record, Picture: { } picture })
            return true;
        if (record.Count == counted && picture.At - drawn < Duration.FromMinutes(1) && picture.At >= drawn)
            return false;
        (counted, drawn) = (record.Count, picture.At);
        return true;
    }
}
