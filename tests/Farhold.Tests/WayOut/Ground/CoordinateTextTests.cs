using System.Text.RegularExpressions;
using CsCheck;

namespace Farhold.Tests.WayOut.Ground;

public partial class CoordinateTextTests
{
    private static readonly CheckTable Table = CheckTable.Of("latlon_checks.csv");

    public static TheoryData<int, string, string> Readable =>
        Table.Rows((t, row) => t.Text(row, "input"), (t, row) => !IsFormat(t, row) && t.Text(row, "expected_text_or_error") != "error");

    public static TheoryData<int, string, string> Unreadable =>
        Table.Rows((t, row) => t.Text(row, "input"), (t, row) => t.Text(row, "expected_text_or_error") == "error");

    public static TheoryData<int, string, string> Written => Table.Rows((t, row) => t.Text(row, "input"), IsFormat);

    [Theory, MemberData(nameof(Readable))]
    public void A_checked_text_means_its_place(int row, string input, string source)
    {
        var place = Usable(CoordinateText.Parse(input));
        Assert.True(Math.Abs(place.Latitude - Table.Number(row, "lat_deg")) <= 6e-10, $"{place.Latitude} ({source})");
        Assert.True(Math.Abs(place.Longitude - Table.Number(row, "lon_deg")) <= 6e-10, $"{place.Longitude} ({source})");
    }

    [Theory, MemberData(nameof(Unreadable))]
    public void A_checked_fault_is_refused(int row, string input, string source) =>
        Assert.True(CoordinateText.Parse(input) is Read<GeoPoint>.Refused, $"row {row} ({source})");

    [Theory, MemberData(nameof(Written))]
    public void A_checked_place_is_written_digit_for_digit(int row, string input, string source)
    {
        var place = new GeoPoint(Table.Number(row, "lat_deg"), Table.Number(row, "lon_deg"));
        var written = CoordinateText.Format(place, CoordinateStyle.DegreesMinutesSeconds);
        var digits = string.Concat(written.Where(c => !"°′″".Contains(c, StringComparison.Ordinal)));
        Assert.True(digits == Table.Text(row, "expected_text_or_error"), $"{input}: {written} ({source})");
    }

    [Theory]
    [InlineData("46.558, 8.5615")]
    [InlineData("46.558,8.5615")]
    [InlineData("E8.5615 N46.558")]
    [InlineData("8.5615 E, 46.558 N")]
    [InlineData("n 46.558 e 8.5615")]
    [InlineData("46 33 28.8 8 33 41.4")]
    [InlineData("46 33.48 8 33.69")]
    [InlineData("46 33.48 N, 008 33.69 E")]
    [InlineData("46° 33′ 28.8″ N 008° 33′ 41.4″ E")]
    [InlineData("46°33'28.8''N 8°33'41.4''E")]
    [InlineData("46° 33.48' 8° 33.69'")]
    [InlineData("46:33:28.8 8:33:41.4")]
    [InlineData("+46.558 +8.5615")]
    [InlineData("  46.558°;8.5615°  ")]
    public void One_place_has_many_spellings(string text)
    {
        var place = Usable(CoordinateText.Parse(text));
        Assert.Equal(46.558, place.Latitude, 1e-9);
        Assert.Equal(8.5615, place.Longitude, 1e-9);
    }

    [Theory]
    [InlineData("-0:10:50.52 -78:28:04.08", -0.1807, -78.4678)]
    [InlineData("−45.0312 168.6626", -45.0312, 168.6626)]
    [InlineData("45 30-170 15", 45.5, -170.25)]
    public void A_sign_counts_even_before_a_zero_and_without_a_space(string text, double latitude, double longitude)
    {
        var place = Usable(CoordinateText.Parse(text));
        Assert.Equal(latitude, place.Latitude, 1e-9);
        Assert.Equal(longitude, place.Longitude, 1e-9);
    }

    [Theory]
    [InlineData("", 1, "Nothing is written")]
    [InlineData("46.558", 7, "two numbers")]
    [InlineData("46.5N 8.5N", 7, "Both are latitudes")]
    [InlineData("8.5E 9.5W", 6, "Both are longitudes")]
    [InlineData("46.5 abc", 6, "“a”")]
    [InlineData("46 60 0 N 8 0 0 E", 4, "minutes run from 0")]
    [InlineData("46 30 61 N 8 0 0 E", 7, "seconds run from 0")]
    [InlineData("91 N 8 E", 1, "at most 90")]
    [InlineData("151.2, -33.9", 1, "perhaps the longitude came first")]
    [InlineData("46.5, 181", 7, "at most 180")]
    [InlineData("-46.5 S 8.5 E", 1, "Both a sign and a letter")]
    [InlineData("46.5, 8.5 E", 1, "Only one of the two")]
    [InlineData("46.5 8.5 E", 11, "There is one letter")]
    [InlineData("46.5 30 N 8 0 E", 1, "Only the last number")]
    [InlineData("46 -30 N 8 0 E", 4, "A sign belongs before the degrees")]
    [InlineData("46 1 2 3 N 8 1 2 E", 8, "a fourth number")]
    [InlineData("46,558 8,5615", 3, "decimal sign")]
    [InlineData("46,8", 3, "decimal sign")]
    [InlineData("46.5 N 8.5 O", 12, "The letter O")]
    [InlineData("46'30 N 8 E", 3, "does not belong here")]
    [InlineData("N E", 1, "number of degrees is missing")]
    [InlineData(",", 2, "two numbers")]
    [InlineData("46.5 , , 8.5", 8, "does not belong here")]
    [InlineData("32VKN", 5, "100 km")]
    public void A_text_that_is_no_place_is_refused_at_its_column(string text, int column, string reason)
    {
        var refusal = Assert.Single(Assert.IsType<Read<GeoPoint>.Refused>(CoordinateText.Parse(text, "typed")).Refusals);
        Assert.Contains(reason, refusal.Reason, StringComparison.Ordinal);
        Assert.Equal(("typed", 1, column), (refusal.File, refusal.Line, refusal.Column));
    }

    [Fact]
    public void A_very_long_text_is_refused_unread() =>
        Assert.IsType<Read<GeoPoint>.Refused>(CoordinateText.Parse(new string('4', 100_000)));

    [Fact]
    public void No_text_whatever_breaks_the_reader() =>
        Gen.String[Gen.Char["0123456789 .,;:+-NSEWdxO°'\"′″C\u0000\uD800é"], 0, 30]
            .Sample(text =>
            {
                switch (CoordinateText.Parse(text))
                {
                    case Read<GeoPoint>.Usable:
                        break;
                    case Read<GeoPoint>.Refused refused:
                        Assert.All(refused.Refusals, r => Assert.InRange(r.Column, 1, text.Length + 1));
                        break;
                }
            });

    [Fact]
    public void What_is_written_reads_back_as_the_same_place() =>
        Gen.Select(GroundGens.Place, Gen.Enum<CoordinateStyle>())
            .Sample(
                (place, style) =>
                {
                    var text = CoordinateText.Format(place, style);
                    var read = Usable(CoordinateText.Parse(text));
                    var metres = style switch
                    {
                        CoordinateStyle.Decimal => 0.1,
                        CoordinateStyle.Mgrs => 0.8,
                        _ => 2.3,
                    };
                    Assert.True(Geodesic.Metres(place, read) <= metres, $"{text}: {read}");
                    // A grid square can lie across the edge of a zone, so its centre may have another name.
                    if (style != CoordinateStyle.Mgrs && Math.Abs(read.Longitude) < 180)
                        Assert.Equal(Unsigned(text), Unsigned(CoordinateText.Format(read, style)));
                }
            );

    [Fact]
    public void Rounding_carries_into_the_next_degree() =>
        Assert.Equal(
            "60° 00′ 00.0″ N 011° 00′ 00.0″ W",
            CoordinateText.Format(new GeoPoint(59.99999999, -10.999999), CoordinateStyle.DegreesMinutesSeconds)
        );

    // What rounds to zero keeps its letter when written, and zero read back has none to keep.
    private static string Unsigned(string text) =>
        ZeroSouth().Replace(ZeroWest().Replace(text, "$1E"), "$1N").Replace("-0.000000", "0.000000", StringComparison.Ordinal);

    [GeneratedRegex("((?<!\\d)00° 00(\\.000|′ 00\\.0)[′″] )S")]
    private static partial Regex ZeroSouth();

    [GeneratedRegex("(000° 00(\\.000|′ 00\\.0)[′″] )W")]
    private static partial Regex ZeroWest();

    private static bool IsFormat(CheckTable table, int row) => table.Text(row, "input").StartsWith("format ", StringComparison.Ordinal);

    private static GeoPoint Usable(Read<GeoPoint> read) => Assert.IsType<Read<GeoPoint>.Usable>(read).Value;
}
