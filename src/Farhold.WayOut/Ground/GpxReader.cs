using System.Text;

namespace Farhold.WayOut.Ground;

/// <summary>Walks through the XML once.</summary>
internal sealed class GpxReader(ReadOnlyMemory<byte> content, string file, XmlOpener open)
{
    private const int MaxText = 200;

    private readonly List<GpxPlace> path = [];
    private readonly StringBuilder text = new();
    private GpxPointDraft draft;
    private int points;
    private string? waypointName;

    public List<Refusal> Refusals { get; } = [];

    /// <summary>Whole once all pieces have been read and nothing was refused.</summary>
    public GpxContent Found { get; } = new();

    /// <returns>How much of the file has been read, after each piece.</returns>
    public IEnumerable<double> Pieces()
    {
        using var xml = open(content);
        while (Go(xml, ReadingPiece<Track>.Length))
            yield return xml.Share;
        if (path.Count == 0 && Refusals.Count == 0)
            Refuse(1, 1, "The file is empty.");
    }

    /// <returns>False once there is nothing more to read.</returns>
    private bool Go(IXmlNodes xml, int nodes)
    {
        for (var i = 0; i < nodes && Refusals.Count < Gpx.MaxRefusals; i++)
        {
            if (!xml.Next())
            {
                if (xml.Broken is { } broken)
                    RefuseBroken(broken.Line, broken.Column);
                return false;
            }

            if (!Take(xml))
                return false;
        }

        return Refusals.Count < Gpx.MaxRefusals;
    }

    /// <returns>False if nothing after this can be of use.</returns>
    private bool Take(IXmlNodes xml)
    {
        switch (xml.Kind)
        {
            case XmlKind.Start when xml.Depth >= Gpx.MaxDepth:
                Refuse(xml.Line, xml.Column, $"Elements are nested more than {Gpx.MaxDepth} deep; this is no ordinary track.");
                return false;
            case XmlKind.Start:
                return Enter(xml);
            case XmlKind.End:
                Leave(path[xml.Depth]);
                break;
            case XmlKind.Text when path.Count > 0 && path[^1] is GpxPlace.Name or GpxPlace.Elevation or GpxPlace.Time:
                text.Append(xml.Text.AsSpan(0, Math.Min(xml.Text.Length, MaxText - text.Length)));
                break;
        }

        return true;
    }

    private bool Enter(IXmlNodes xml)
    {
        var (line, column) = (xml.Line, xml.Column);
        path.RemoveRange(xml.Depth, path.Count - xml.Depth);
        path.Add(xml.Depth == 0 ? GpxPlace.File : GpxPlaces.Child(path[^1], xml.LocalName));
        text.Clear();
        switch (path[^1])
        {
            case GpxPlace.File when xml.LocalName != "gpx":
                Refuse(line, column, $"This file begins with <{xml.LocalName}>, so it is not GPX; export the track as GPX.");
                return false;
            case GpxPlace.File when xml.Namespace != "http://www.topografix.com/GPX/1/1":
                Found.Warnings.Add(TrackWarningKind.OtherVersion, line, column, _ => GroundTexts.OtherVersion);
                break;
            case GpxPlace.Track:
                Found.TrackCount++;
                break;
            case GpxPlace.Segment:
                Found.TrackSegments.Add([]);
                break;
            case GpxPlace.Route:
                Found.Routes.Add([]);
                break;
            case GpxPlace.TrackPoint or GpxPlace.RoutePoint or GpxPlace.Waypoint when ++points > Gpx.MaxPoints:
                Refuse(line, column, $"The file has more than {Gpx.MaxPoints} points; save a shorter or simplified track.");
                return false;
            case GpxPlace.TrackPoint or GpxPlace.RoutePoint or GpxPlace.Waypoint:
                draft = GpxPointDraft.At(xml.Attribute("lat"), xml.Attribute("lon"), line, column, Found.Warnings);
                waypointName = null;
                break;
        }

        if (xml.IsEmpty)
            Leave(path[^1]);
        return true;
    }

    private void Leave(GpxPlace place)
    {
        switch (place)
        {
            case GpxPlace.Elevation:
                draft = draft.WithElevation(text.ToString(), Found.Warnings);
                break;
            case GpxPlace.Time:
                draft = draft.WithTime(text.ToString(), Found.Warnings);
                break;
            case GpxPlace.Name when path.Contains(GpxPlace.Waypoint):
                waypointName = Named();
                break;
            case GpxPlace.Name:
                Found.Name ??= Named();
                break;
            case GpxPlace.TrackPoint or GpxPlace.RoutePoint or GpxPlace.Waypoint when draft.Fault is { } fault:
                Refuse(draft.Line, draft.Column, fault);
                break;
            case GpxPlace.TrackPoint:
                Found.TrackSegments[^1].Add(draft.ToPoint());
                break;
            case GpxPlace.RoutePoint:
                Found.Routes[^1].Add(draft.ToPoint());
                break;
            case GpxPlace.Waypoint:
                Found.Waypoints.Add((waypointName, draft.ToPoint()));
                break;
        }
    }

    private string? Named() => text.ToString().Trim() is { Length: > 0 } name ? name : null;

    private void RefuseBroken(int line, int column)
    {
        var doctype = content.Span.IndexOf("<!DOCTYPE"u8);
        if (doctype >= 0)
        {
            // For this fault not every reader names a place.
            var before = content.Span[..doctype];
            Refuse(
                before.Count((byte)'\n') + 1,
                doctype - before.LastIndexOf((byte)'\n'),
                "The file declares a document type (DOCTYPE), which can hide harmful text; it is not read. Export the track again as "
                    + "plain GPX."
            );
            return;
        }

        Refuse(
            line,
            column,
            path.Count == 0
                ? "The file is not XML, so it is not GPX."
                : "From here on the file is not readable XML; it may have been cut off or damaged. Copy or export it again."
        );
    }

    private void Refuse(int line, int column, string reason) => Refusals.Add(new Refusal(file, line, column, reason));
}
