using CsCheck;

namespace Farhold.Tests.WayOut.Ground;

public class GeodesicTests
{
    private static readonly CheckTable Table = CheckTable.Of("geodesic_checks.csv");

    public static TheoryData<int, string, string> Lines => Table.Rows((t, row) => t.Text(row, "label"));

    [Theory, MemberData(nameof(Lines))]
    public void A_checked_line_has_its_length_and_bearings(int row, string label, string source)
    {
        var (from, to) = Ends(row);
        var path = Geodesic.Between(from, to);
        var why = $"{label}: {path} ({source})";
        // The table prints micrometres and billionths of a degree.
        Assert.True(Math.Abs(path.Metres - Table.Number(row, "distance_m")) <= 1e-6, why);
        Assert.True(AngleBetween(path.StartAzimuth, Table.Number(row, "azimuth1_deg")) <= 2e-9, why);
        Assert.True(AngleBetween(path.EndAzimuth, Table.Number(row, "azimuth2_deg")) <= 2e-9, why);
        if (Table.Text(row, "published_m") is { Length: > 0 } published)
            Assert.True(Math.Abs(path.Metres - Table.Number(row, "published_m")) <= HalfLastDigit(published), why);
    }

    [Theory, MemberData(nameof(Lines))]
    public void Following_a_checked_line_leads_to_its_other_end(int row, string label, string source)
    {
        var (from, to) = Ends(row);
        var path = Geodesic.Between(from, to);
        var end = Geodesic.From(from, path.StartAzimuth, path.Metres);
        Assert.True(Geodesic.Metres(end.Place, to) < 1e-6, $"{label}: ended at {end} ({source})");
    }

    [Fact]
    public void The_way_back_is_as_long_and_runs_against_the_way_out() =>
        Gen.Select(GroundGens.Place, GroundGens.Place)
            .Sample(
                (a, b) =>
                {
                    var there = Geodesic.Between(a, b);
                    var back = Geodesic.Between(b, a);
                    Assert.Equal(there.Metres, back.Metres, 1e-8);
                }
            );

    [Fact]
    public void No_detour_is_shorter() =>
        Gen.Select(GroundGens.Place, GroundGens.Place, GroundGens.Place)
            .Sample((a, b, c) => Assert.True(Geodesic.Metres(a, c) <= Geodesic.Metres(a, b) + Geodesic.Metres(b, c) + 1e-7));

    [Fact]
    public void Going_where_the_path_points_arrives() =>
        Gen.Select(GroundGens.Place, GroundGens.Place)
            .Sample(
                (a, b) =>
                {
                    var path = Geodesic.Between(a, b);
                    Assert.True(path.Metres <= 20_003_931.459, "no path is longer than half a meridian");
                    Assert.Equal(0, Geodesic.Metres(Geodesic.From(a, path.StartAzimuth, path.Metres).Place, b), 1e-7);
                }
            );

    [Fact]
    public void Nearly_opposite_places_are_found_too() =>
        Gen.Select(GroundGens.Place, Gen.Double[-0.7, 0.7], Gen.Double[-0.7, 0.7])
            .Sample(
                (a, north, east) =>
                {
                    var b = new GeoPoint(Math.Clamp(-a.Latitude + north, -90, 90), Math.IEEERemainder(a.Longitude + 180 + east, 360));
                    var path = Geodesic.Between(a, b);
                    Assert.InRange(path.Metres, 19_800_000, 20_003_931.459);
                    Assert.Equal(0, Geodesic.Metres(Geodesic.From(a, path.StartAzimuth, path.Metres).Place, b), 1e-7);
                }
            );

    [Fact]
    public void Going_and_coming_back_ends_where_it_began() =>
        Gen.Select(GroundGens.Place, Gen.Double[0, 360], Gen.Double[0, 20_000_000])
            .Sample(
                (a, azimuth, metres) =>
                {
                    var end = Geodesic.From(a, azimuth, metres);
                    Assert.Equal(0, Geodesic.Metres(a, Geodesic.From(end.Place, end.Azimuth, -metres).Place), 1e-7);
                }
            );

    // The spherical sine formula with the mean radius 6,371,008.8 m (IUGG) errs by at most 0.56 % on this ellipsoid.
    [Fact]
    public void A_sphere_gives_nearly_the_same() =>
        Gen.Select(GroundGens.Place, GroundGens.Place)
            .Sample(
                (a, b) =>
                {
                    var (phi1, phi2) = (a.Latitude * Math.PI / 180, b.Latitude * Math.PI / 180);
                    var half = Math.Sin((phi2 - phi1) / 2);
                    var halfLambda = Math.Sin((b.Longitude - a.Longitude) * Math.PI / 360);
                    var h = (half * half) + (Math.Cos(phi1) * Math.Cos(phi2) * halfLambda * halfLambda);
                    var sphere = 2 * 6_371_008.8 * Math.Asin(Math.Min(1, Math.Sqrt(h)));
                    Assert.True(Math.Abs(Geodesic.Metres(a, b) - sphere) <= (0.0058 * sphere) + 1);
                }
            );

    [Theory]
    [InlineData(double.NaN, 1)]
    [InlineData(0, double.PositiveInfinity)]
    public void A_bearing_or_length_that_is_no_number_is_a_mistake_of_the_caller(double azimuth, double metres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Geodesic.From(default, azimuth, metres));

    private static (GeoPoint From, GeoPoint To) Ends(int row) =>
        (
            new(Table.Number(row, "lat1_deg"), Wrapped(Table.Number(row, "lon1_deg"))),
            new(Table.Number(row, "lat2_deg"), Wrapped(Table.Number(row, "lon2_deg")))
        );

    private static double Wrapped(double longitude) => Math.Abs(longitude) <= 180 ? longitude : Math.IEEERemainder(longitude, 360);

    private static double AngleBetween(double a, double b) => Math.Abs(Math.IEEERemainder(a - b, 360));

    private static double HalfLastDigit(string number) =>
        Math.Max(2e-8, 0.5 * Math.Pow(10, -(number.Length - number.IndexOf('.', StringComparison.Ordinal) - 1)) + 1e-9);
}
