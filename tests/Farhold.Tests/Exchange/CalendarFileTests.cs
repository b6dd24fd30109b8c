using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Farhold.Exchange.Calendar;
using IcalCalendar = Ical.Net.Calendar;

namespace Farhold.Tests.Exchange;

public class CalendarFileTests
{
    private static readonly Instant Now = Instant.FromUtc(2031, 5, 4, 2, 0);

    private static readonly Gen<CalendarItem> Items =
        from n in Gen.Int[0, 100_000]
        from minutes in Gen.Int[1, 10_000]
        from summary in Gen.String[Gen.OneOf(Gen.Char['a', 'z'], Gen.OneOf(',', ';', '\\', '\n', '"', ':', 'ø', '血', ' ')), 1, 200]
        select new CalendarItem(
            $"c{n}.task@farhold.invalid",
            n,
            Now + Duration.FromMinutes(minutes),
            "s" + summary + "e",
            "d",
            [Duration.Zero, Duration.FromMinutes(5)]
        );

    [Fact]
    public void Another_reader_finds_the_same_times_texts_and_alarms() =>
        Items.Sample(item =>
        {
            var read = Assert.Single(IcalCalendar.Load(CalendarFile.Write([item], Now))!.Events);
            Assert.Equal(item.Uid, read.Uid);
            Assert.Equal(item.Sequence, read.Sequence);
            Assert.True(read.Start!.IsUtc);
            Assert.Equal(item.At.ToDateTimeUtc(), read.Start.Value);
            Assert.Equal(item.Summary, read.Summary);
            Assert.Equal(2, read.Alarms.Count);
            Assert.All(read.Alarms, a => Assert.Equal("DISPLAY", a.Action));
            Assert.Equal(TimeSpan.FromMinutes(-5), read.Alarms[1]!.Trigger!.Duration!.Value.ToTimeSpanUnspecified());
        });

    [Fact]
    public void The_file_names_the_program_and_its_version() =>
        Assert.Contains(
            Product.Named,
            IcalCalendar.Load(CalendarFile.Write([new("a", 0, Now, "s", "d", [])], Now))!.ProductId,
            StringComparison.Ordinal
        );

    /// <summary>RFC 5545, section 3.1: lines end in CRLF and are not longer than 75 octets without it.</summary>
    [Fact]
    public void No_line_is_longer_than_75_octets_and_each_ends_in_CRLF() =>
        Items.Sample(item =>
        {
            var file = CalendarFile.Write([item], Now);
            Assert.EndsWith("END:VCALENDAR\r\n", file, StringComparison.Ordinal);
            Assert.All(
                file.Split("\r\n"),
                line =>
                {
                    Assert.DoesNotContain('\n', line);
                    Assert.DoesNotContain('\r', line);
                    Assert.InRange(Encoding.UTF8.GetByteCount(line), 0, 75);
                }
            );
        });

    /// <summary>RFC 5545, section 3.3.11.</summary>
    [Fact]
    public void Comma_semicolon_backslash_and_line_end_are_escaped() =>
        Assert.Equal(@"a\, b\; c\\ d\ne", ContentLine.Text("a, b; c\\ d\r\ne"));

    [Fact]
    public void Times_are_written_in_UTC() =>
        Assert.Contains(
            "DTSTART:20310504T021500Z\r\n",
            CalendarFile.Write([new("u", 1, Now + Duration.FromMinutes(15), "s", "d", [])], Now),
            StringComparison.Ordinal
        );

    [Fact]
    public void Two_items_with_one_uid_are_a_mistake() =>
        Assert.Throws<ArgumentException>(() => CalendarFile.Write([new("u", 1, Now, "s", "d", []), new("u", 2, Now, "s", "d", [])], Now));
}
