using Farhold.App.Tests.Doubles;

namespace Farhold.App.Tests.Words;

/// <summary>
/// Against CLDR, from memory: German "d. MMM", "d. MMM y" with abbreviated months "März", "Mai", "Sept." and a decimal comma; Spanish
/// (Spain) "d MMM", "d MMM y" with "may", "sept" and a decimal comma. Both write a day's time with 24 hours, "HH:mm".
/// </summary>
public class FiguresTests
{
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["Europe/Oslo"];

    [Theory]
    [InlineData("en", "36.5", "37.0", "0.25", "1500", "−0.5")]
    [InlineData("de", "36,5", "37,0", "0,25", "1500", "−0,5")]
    [InlineData("es", "36,5", "37,0", "0,25", "1500", "−0,5")]
    public void Numbers_have_the_decimal_mark_of_the_language(
        string language,
        string half,
        string whole,
        string quarter,
        string large,
        string below
    )
    {
        var texts = LanguageFile.Texts(language);
        Assert.Equal(half, texts.Number(36.5));
        Assert.Equal(whole, texts.Fixed(37, 1));
        Assert.Equal(quarter, texts.Number(0.25));
        Assert.Equal(large, texts.Number(1500));
        Assert.Equal(below, texts.Number(-0.5).Replace('-', '−'));
    }

    [Theory]
    [InlineData("en", "4 May 23:05", "4 May 2031 23:05", "30 Sep 00:10")]
    [InlineData("de", "4. Mai 23:05", "4. Mai 2031 23:05", "30. Sept. 00:10")]
    [InlineData("es", "4 may 23:05", "4 may 2031 23:05", "30 sept 00:10")]
    public void Dates_are_as_the_language_writes_them_and_the_clock_has_24_hours(string language, string day, string dated, string other)
    {
        var clock = new PhoneClock(Zone, LanguageFile.Texts(language));
        var now = At(2031, 10, 5, 12, 0);
        Assert.Equal(day, clock.Show(At(2031, 5, 4, 23, 5), now));
        Assert.Equal(dated, clock.Dated(At(2031, 5, 4, 23, 5)));
        Assert.Equal(other, clock.Show(At(2031, 9, 30, 0, 10), now));
        Assert.Equal("12:00", clock.Show(now, now));
    }

    [Fact]
    public void Every_month_has_a_name_of_its_own()
    {
        foreach (var language in Language.All)
        {
            var texts = LanguageFile.Texts(language.Tag);
            Assert.Equal(12, Enumerable.Range(1, 12).Select(m => texts.Day(new LocalDate(2031, m, 1))).Distinct().Count());
        }
    }

    [Theory]
    [InlineData("46,558 N 8,562 E", 46.558, 8.562)]
    [InlineData("46.558 N 8.562 E", 46.558, 8.562)]
    [InlineData("46.558, 8.562", 46.558, 8.562)]
    [InlineData("46,558, 8,562", 46.558, 8.562)]
    [InlineData("46 33,48 N 8 33,72 E", 46.558, 8.562)]
    public void A_place_may_be_typed_with_decimal_commas_or_points(string typed, double lat, double lon)
    {
        var place = Assert.IsType<Read<GeoPoint>.Usable>(CoordinateText.Parse(Figures.Pointed(typed), "place")).Value;
        Assert.Equal((lat, lon), (Math.Round(place.Latitude, 6), Math.Round(place.Longitude, 6)));
    }

    [Theory]
    [InlineData("46,558")]
    [InlineData("46,558.5 8")]
    public void A_comma_that_may_mean_either_is_left_to_be_asked_about(string typed) => Assert.Equal(typed, Figures.Pointed(typed));

    private static Instant At(int year, int month, int day, int hour, int minute) =>
        Zone.AtStrictly(new LocalDateTime(year, month, day, hour, minute)).ToInstant();
}
