using System.Globalization;
using System.Text;
using Farhold.Xml;

namespace Farhold.Tests.WayOut.Reach;

/// <summary>Routes due east along the equator, where nobody walks, so that lengths are plain.</summary>
public static class SomeRoute
{
    public static readonly LimitAfter[] Limits = [.. LimbDeadlines.Of(ShippedProtocol.Protocol.Clock)];

    /// <summary>Ten days without a night.</summary>
    public static Darkness NoNight { get; } = Darkness.Of([], Some.At("00:00") + Duration.FromDays(10));

    /// <param name="height">Metres at a place, given km along.</param>
    public static string Track(double km, Func<double, double?>? height = null, double stepKm = 0.25, double lonAtStart = 10)
    {
        var text = new StringBuilder("<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>\n");
        var steps = (int)Math.Round(km / stepKm);
        for (var i = 0; i <= steps; i++)
        {
            var place = At(km * i / steps, lonAtStart);
            text.Append(CultureInfo.InvariantCulture, $"<trkpt lat=\"{place.Latitude:F9}\" lon=\"{place.Longitude:F9}\">");
            if (height is null)
                text.Append("<ele>100</ele>");
            else if (height(km * i / steps) is { } metres)
                text.Append(CultureInfo.InvariantCulture, $"<ele>{metres:F2}</ele>");
            text.Append("</trkpt>\n");
        }

        return text.Append("</trkseg></trk></gpx>").ToString();
    }

    public static GeoPoint At(double km, double lonAtStart = 10) => Geodesic.From(new(0, lonAtStart), 90, km * 1000).Place;

    /// <summary>A place of the track as it stands in a route file.</summary>
    public static string Place(double km) =>
        string.Create(CultureInfo.InvariantCulture, $$"""{"lat":{{At(km).Latitude:F7}},"lon":{{At(km).Longitude:F7}}}""");

    /// <summary>A time that has no spread.</summary>
    public static string Just(double minutes) =>
        string.Create(CultureInfo.InvariantCulture, $$"""{"low":{{minutes}},"likely":{{minutes}},"high":{{minutes}}}""");

    public static string Walk(string more) => $$"""{"track":"a.gpx","start":"2031-05-04T08:00:00Z","mode":"walk","spread":0,{{more}}}""";

    public static Read<Route> Tried(string json, string? track = null) =>
        RouteReader.Read(
            Encoding.UTF8.GetBytes(json),
            "some.route.json",
            XmlTracks.In(_ => new Read<ReadOnlyMemory<byte>>.Usable(Encoding.UTF8.GetBytes(track ?? Track(10))))
        );

    public static Route Of(string json, string? track = null) =>
        Tried(json, track) switch
        {
            Read<Route>.Usable(var route) => route,
            Read<Route>.Refused(var why) => throw new InvalidOperationException(string.Join("; ", why)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    public static ReachProfile Profile(string json, string? track = null, Darkness? darkness = null, int trials = 200, ulong seed = 1) =>
        ReachProfile.Of(Of(json, track), darkness ?? NoNight, Limits, new Rng(seed), trials);

    public static byte[] Demo(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", name));

    public static Read<ReadOnlyMemory<byte>> DemoFile(string name) => new Read<ReadOnlyMemory<byte>>.Usable(Demo(name));
}
