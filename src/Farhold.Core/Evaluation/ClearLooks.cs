using NodaTime;

namespace Farhold.Evaluation;

/// <summary>The looks at the signs of shock that an attempt needs.</summary>
internal static class ClearLooks
{
    /// <summary>
    /// Two clear looks far enough apart, the newest fresh, and no sign from the first of them on; one where the first window closes
    /// and no sign was ever seen. After an attempt that bled, on whatever limb, they begin afresh.
    /// </summary>
    public static bool Have(Scene scene)
    {
        var casualty = scene.Casualty;
        var rules = casualty.Protocol.Looks;
        var span = casualty.ClearSpan;
        return span.Newest is { } newest
            && newest.When.Until(casualty.Now).Max <= casualty.Looks.Fresh
            && (span.Apart >= rules.Apart || (span.Since && IsClosing(scene)));
    }

    /// <summary>When the second look may be taken; null where the first is still missing, or both are there.</summary>
    public static Instant? SecondDue(CasualtyView casualty)
    {
        var span = casualty.ClearSpan;
        return span.Newest is { } newest && span.Apart < casualty.Protocol.Looks.Apart
            ? span.First!.When.Latest + casualty.Protocol.Looks.Apart
            : null;
    }

    /// <summary>Surely within the last minutes of the window: not knowing when it was tightened must not save a look.</summary>
    private static bool IsClosing(Scene scene)
    {
        if (scene.Clock is not { } clock)
            return false;
        var on = TimeOn.Of(clock, scene.Casualty);
        var window = scene.Casualty.Protocol.Clock.Longest.Window;
        return on.Max < window && window - on.Min <= scene.Casualty.Protocol.Looks.Closing;
    }

    internal static Instant LastBled(CasualtyView casualty) =>
        Enum.GetValues<Limb>()
            .SelectMany(limb => casualty.Attempts(limb))
            .Where(a => a.Result == AttemptResult.Bled)
            .Select(a => (a.Ended ?? a.Started).Latest)
            .DefaultIfEmpty(Instant.MinValue)
            .Max();
}
