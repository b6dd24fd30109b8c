namespace Farhold.WayOut.Ground;

public enum TrackWarningKind
{
    SeveralTracks,
    RouteOnly,
    RouteLeftOut,
    OtherVersion,
    DecimalComma,
    NoElevation,
    SomeElevationMissing,
    ElevationNotUsable,
    NoTime,
    SomeTimeMissing,
    TimeNotReadable,
    TimeWithoutZone,
    TimeRunsBack,
    RepeatedPoints,
    Jump,
    Gaps,
    Thinned,
}

/// <summary>Something odd in a track that was read nevertheless.</summary>
/// <param name="Line">Where it first shows, from 1.</param>
/// <param name="Column">From 1.</param>
public sealed record TrackWarning(TrackWarningKind Kind, int Line, int Column, string Text);
