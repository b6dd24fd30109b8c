using System.Globalization;

namespace Farhold.App.WayOut;

/// <summary>Ids of plans made on this phone.</summary>
public static class PlanNames
{
    /// <summary>The plan under an id of its content: an entry that names it means this plan and no later one.</summary>
    public static Plan Named(this Plan plan)
    {
        // FNV-1a, 64 bits (Fowler, Noll, Vo; from memory): to tell plans apart, not to guard them.
        var hash = 0xcbf29ce484222325UL;
        foreach (var b in PlanWriter.Write(plan with { Id = null }).Utf8.Span)
            hash = unchecked((hash ^ b) * 0x100000001b3UL);
        return plan with { Id = string.Create(CultureInfo.InvariantCulture, $"way-{hash:x16}") };
    }
}
