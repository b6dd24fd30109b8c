using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.WayOut.Plans;

/// <summary>A track as a way to be travelled: nothing in it may be guessed at that a time would hang on.</summary>
/// <param name="Climb">Null where the track has no heights.</param>
/// <param name="Oddities">What a person should know of it, with file, line and column.</param>
public sealed record TrackFile(string Name, Track Track, Climb? Climb, ImmutableArray<Refusal> Oddities)
{
    /// <summary>What of it may bear on a forecast: when it was recorded does not.</summary>
    public IEnumerable<string> Cautions =>
        Track
            .Warnings.Where(w =>
                w.Kind
                    is not (
                        TrackWarningKind.NoTime
                        or TrackWarningKind.SomeTimeMissing
                        or TrackWarningKind.TimeWithoutZone
                        or TrackWarningKind.TimeNotReadable
                        or TrackWarningKind.TimeRunsBack
                    )
            )
            .Select(w => $"{Name}: {w.Text}");

    /// <summary>Where the way begins.</summary>
    public GeoPoint Start => Track.Segments[0].Points[0].Place;

    /// <summary>Length on the ellipsoid, metres.</summary>
    public double Metres { get; private init; }

    /// <summary>Reads and measures a GPX file in pieces, for a screen that has to stay awake.</summary>
    /// <param name="open">What reads the XML.</param>
    /// <returns>The last one has the track, or why it is refused.</returns>
    public static IEnumerable<ReadingPiece<TrackFile>> Pieces(string name, ReadOnlyMemory<byte> content, XmlOpener open)
    {
        const double reading = 0.75; // the rest is its length
        Read<Track>? parsed = null;
        foreach (var (share, read) in Gpx.Pieces(content, name, open))
        {
            parsed = read;
            yield return new(share * reading, null);
        }

        if (parsed is not Read<Track>.Usable(var track))
        {
            yield return new(1, new Read<TrackFile>.Refused(((Read<Track>.Refused)parsed!).Refusals));
            yield break;
        }

        var metres = 0.0;
        foreach (var segment in track.Segments)
        {
            var length = 0.0;
            foreach (var soFar in segment.Measure())
            {
                length = soFar;
                yield return new(reading, null);
            }

            metres += length;
        }

        yield return new(
            1,
            new Read<TrackFile>.Usable(
                new(
                    name,
                    track,
                    Farhold.WayOut.Ground.Climb.Of(track),
                    [.. track.Warnings.Select(w => new Refusal(name, w.Line, w.Column, w.Text))]
                )
                {
                    Metres = metres,
                }
            )
        );
    }

    /// <summary>Why it can't be timed on foot; nothing where it can.</summary>
    public IEnumerable<Refusal> AgainstWalking()
    {
        foreach (var jump in Track.Warnings.Where(w => w.Kind == TrackWarningKind.Jump))
            yield return new(Name, jump.Line, jump.Column, PlanTexts.JumpOnFoot(jump.Text));
        if (Climb is not null)
            yield break;
        var (line, column) = Track.Warnings.FirstOrDefault(w => w.Kind == TrackWarningKind.NoElevation) is { } at
            ? (at.Line, at.Column)
            : (1, 1);
        yield return new(Name, line, column, PlanTexts.NoHeightsOnFoot((Metres / 1000).ToString("0.0", CultureInfo.InvariantCulture)));
    }

    /// <summary>Without heights as if level: for means that climbs don't slow.</summary>
    public Stretch Stretch() => new(Metres / 1000, Climb?.AscentM ?? 0, Climb?.DescentM ?? 0);
}
