using CsCheck;
using NodaTime;
using NodaTime.Text;

namespace Farhold.Tests.Text;

/// <summary>Beside NodaTime's own patterns, a reference library: the same text for the same time.</summary>
public class TimeTextTests
{
    private static readonly Gen<LocalDate> Dates = Gen.Int[0, 9998]
        .SelectMany(y => Gen.Int[0, 365], (y, d) => new LocalDate(y + 1, 1, 1).PlusDays(d))
        .Where(d => d.Year <= 9999);

    private static readonly Gen<Instant> Instants = Gen.Long[-2_208_988_800, 16_725_225_600]
        .SelectMany(
            _ => Gen.OneOf(Gen.Const(0L), Gen.Long[0, 999].Select(ms => ms * 1_000_000), Gen.Long[0, 999_999_999]),
            (seconds, nanoseconds) => Instant.FromUnixTimeSeconds(seconds).PlusNanoseconds(nanoseconds)
        );

    private static readonly int[] Steps = [1, 60, 1800, 3600];

    [Fact]
    public void A_clock_time_is_the_library_s() =>
        Gen.Int[0, 86_399]
            .Select(s => LocalTime.FromSecondsSinceMidnight(s))
            .Sample(time => Assert.Equal(LocalTimePattern.CreateWithInvariantCulture("HH:mm").Format(time), TimeText.Clock(time)));

    [Fact]
    public void A_date_is_the_library_s_and_read_back() =>
        Dates.Sample(date =>
        {
            Assert.Equal(LocalDatePattern.CreateWithInvariantCulture("d MMM").Format(date), TimeText.Day(date));
            Assert.Equal(LocalDatePattern.Iso.Format(date), TimeText.Date(date));
            Assert.Equal(date, TimeText.TryDate(TimeText.Date(date)));
        });

    [Fact]
    public void An_instant_is_the_library_s_and_read_back() =>
        Instants.Sample(instant =>
        {
            Assert.Equal(InstantPattern.ExtendedIso.Format(instant), TimeText.Utc(instant));
            Assert.Equal(instant, WrittenInstant.TryParse(TimeText.Utc(instant)));
        });

    [Fact]
    public void An_offset_is_the_library_s() =>
        Gen.Int[-18 * 3600, 18 * 3600]
            .SelectMany(_ => Gen.Int[0, 3], (s, step) => Offset.FromSeconds(s / Steps[step] * Steps[step]))
            .Sample(offset => Assert.Equal(OffsetPattern.CreateWithInvariantCulture("g").Format(offset), TimeText.Ahead(offset)));

    [Theory]
    [InlineData("2031-02-29")]
    [InlineData("2031-13-01")]
    [InlineData("2031-00-10")]
    [InlineData("2031-05-00")]
    [InlineData("0000-05-04")]
    [InlineData("2031-5-04")]
    [InlineData("2031/05/04")]
    [InlineData("2031-05-04 ")]
    [InlineData("+031-05-04")]
    [InlineData("٢٠٣١-05-04")]
    [InlineData("")]
    public void What_is_no_date_is_null(string text)
    {
        Assert.Null(TimeText.TryDate(text));
        Assert.False(LocalDatePattern.Iso.Parse(text).Success && text[0] != '0');
    }

    /// <summary>An offset may carry the first and the last years of all past what an instant holds.</summary>
    [Theory]
    [InlineData("9999-12-31T23:59:59-12:00")]
    [InlineData("0001-01-01T00:00:00+14:00")]
    [InlineData("2500-01-01T00:00:00Z")]
    [InlineData("2499-12-31T23:00:00-02:00")]
    [InlineData("1900-01-01T01:00:00+02:00")]
    public void An_instant_beyond_the_years_of_a_record_is_null(string text) => Assert.Null(WrittenInstant.TryParse(text));

    [Theory]
    [InlineData("2500-01-01T01:00:00+02:00")]
    [InlineData("1899-12-31T23:00:00-02:00")]
    public void The_years_are_counted_in_UTC(string text) => Assert.NotNull(WrittenInstant.TryParse(text));
}
