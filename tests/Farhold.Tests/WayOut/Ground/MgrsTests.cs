using CsCheck;

namespace Farhold.Tests.WayOut.Ground;

public class MgrsTests
{
    private static readonly CheckTable Table = CheckTable.Of("mgrs_checks.csv");

    public static TheoryData<int, string, string> Points => Table.Rows((t, row) => t.Text(row, "label"));

    [Theory, MemberData(nameof(Points))]
    public void A_checked_place_has_its_grid_position(int row, string label, string source)
    {
        var grid = GridPosition.Of(Place(row));
        var why = $"{label}: {grid} ({source})";
        var zone = Table.Text(row, "zone_hemisphere");
        Assert.True(grid.North == zone.EndsWith('n'), why);
        Assert.True(grid.Zone == (zone.Length == 1 ? 0 : int.Parse(zone[..^1])), why);
        Assert.True(Math.Abs(grid.Easting - Table.Number(row, "easting_m")) <= 0.000501, why);
        Assert.True(Math.Abs(grid.Northing - Table.Number(row, "northing_m")) <= 0.000501, why);
        Assert.True(Geodesic.Metres(grid.ToGeoPoint(), Place(row)) < 1e-6, why);
    }

    [Theory, MemberData(nameof(Points))]
    public void A_checked_place_has_its_references(int row, string label, string source)
    {
        var metre = Mgrs.Format(Place(row));
        Assert.True(metre == Table.Text(row, "mgrs_1m"), $"{label}: {metre} ({source})");
        var hundred = Mgrs.Format(Place(row), 3);
        Assert.True(hundred == Table.Text(row, "mgrs_100m"), $"{label}: {hundred} ({source})");
        if (Table.Text(row, "published_mgrs") is { Length: > 0 } published)
            Assert.True(metre == published, $"{label}: {metre} ({source})");
    }

    [Theory, MemberData(nameof(Points))]
    public void A_reference_means_the_centre_of_its_square(int row, string label, string source)
    {
        var square = Usable(Mgrs.Parse(Table.Text(row, "mgrs_1m")));
        var centre = new GeoPoint(Table.Number(row, "mgrs_centre_lat_deg"), Table.Number(row, "mgrs_centre_lon_deg"));
        Assert.Equal(1, square.SizeMetres);
        // The table prints billionths of a degree, 0.1 mm.
        Assert.True(Geodesic.Metres(square.Centre, centre) < 2e-4, $"{label}: {square} ({source})");
    }

    [Fact]
    public void A_place_is_within_a_metre_of_the_centre_of_its_square() =>
        GroundGens.Place.Sample(place => Assert.True(Geodesic.Metres(place, Usable(Mgrs.Parse(Mgrs.Format(place))).Centre) < 1));

    [Fact]
    public void Fewer_digits_name_the_larger_square_around_the_same_place() =>
        Gen.Select(GroundGens.Place, Gen.Int[1, 4])
            .Sample(
                (place, digits) =>
                {
                    var (full, few) = (Mgrs.Format(place), Mgrs.Format(place, digits));
                    var letters = full.Length - 10;
                    Assert.Equal(full[..(letters + digits)] + full[(letters + 5)..(letters + 5 + digits)], few);
                    var square = Usable(Mgrs.Parse(few));
                    Assert.True(Geodesic.Metres(place, square.Centre) <= 0.72 * square.SizeMetres);
                }
            );

    [Fact]
    public void A_polar_place_keeps_its_hemisphere() =>
        Gen.Select(Gen.Double[80.0001, 90], Gen.Double[-180, 180], Gen.Bool)
            .Sample(
                (size, longitude, north) =>
                {
                    var place = new GeoPoint(north ? size : -size, longitude);
                    Assert.Equal(north, GridPosition.Of(place).North);
                    Assert.Equal(0, Geodesic.Metres(GridPosition.Of(place).ToGeoPoint(), place), 1e-6);
                }
            );

    [Theory]
    [InlineData(" 32v  kn 97353 00648 ")]
    [InlineData("32VKN9735300648")]
    [InlineData("32Vkn 9735300648")]
    public void Spaces_and_case_do_not_matter(string text) => Assert.Equal("32VKN9735300648", Mgrs.Format(Usable(Mgrs.Parse(text)).Centre));

    [Theory]
    [InlineData("61VKN9735300648", 1, "1 to 60")]
    [InlineData("00VKN97", 1, "1 to 60")]
    [InlineData("123VKN97", 1, "1 to 60")]
    [InlineData("32IKN97", 3, "band")]
    [InlineData("32 VZN97", 5, "column letter")]
    [InlineData("32VKW97", 5, "row letter")]
    [InlineData("32VKA97", 4, "No part of this square")]
    [InlineData("32VKN973", 6, "3 digits")]
    [InlineData("32VKN973530006489", 6, "12 digits")]
    [InlineData("32VKN", 5, "100 km")]
    [InlineData("32VK", 5, "too early")]
    [InlineData("32VKN97x53", 8, "only digits")]
    [InlineData("QAH0000", 1, "A, B, Y, Z")]
    [InlineData("ZKH0000", 2, "column letter")]
    [InlineData("ZAZ0000", 3, "row letter")]
    [InlineData("", 1, "too early")]
    public void A_reference_that_names_no_square_is_refused_where_it_fails(string text, int column, string reason)
    {
        var refusal = Assert.Single(Assert.IsType<Read<MgrsSquare>.Refused>(Mgrs.Parse(text)).Refusals);
        Assert.Equal(column, refusal.Column);
        Assert.Contains(reason, refusal.Reason, StringComparison.Ordinal);
    }

    private static GeoPoint Place(int row) => new(Table.Number(row, "lat_deg"), Table.Number(row, "lon_deg"));

    private static MgrsSquare Usable(Read<MgrsSquare> read) => Assert.IsType<Read<MgrsSquare>.Usable>(read).Value;
}
