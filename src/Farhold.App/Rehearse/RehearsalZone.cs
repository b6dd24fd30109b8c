using NodaTime;

namespace Farhold.App.Rehearse;

/// <summary>A rehearsal shows the time of its scene, wherever the phone is.</summary>
public static class RehearsalZone
{
    /// <summary>Null where this tab does not rehearse, or the scenario names no zone.</summary>
    public static DateTimeZone? Of(IPractice practice) =>
        practice.IsRehearsing && KeptRun.Read(practice.Run)?.Zone is { } id ? DateTimeZoneProviders.Tzdb.GetZoneOrNull(id) : null;
}
