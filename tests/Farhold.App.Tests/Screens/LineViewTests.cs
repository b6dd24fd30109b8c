using Farhold.App.Screens;
using NodaTime;

namespace Farhold.App.Tests.Screens;

public class LineViewTests
{
    [Theory]
    [InlineData("2031-05-04T02:10:00Z")]
    [InlineData("2031-05-04T14:10:00+12:00")]
    public void Shows_a_time_however_its_writer_wrote_the_zone(string happened) => Assert.Equal(
        Happened.At(Instant.FromUtc(2031, 5, 4, 2, 10)),
        LineView.Of($"{{\"id\":\"aaaa-1\",\"happened\":\"{happened}\",\"by\":\"Ane\",\"kind\":\"note\",\"text\":\"warm\"}}").Happened);
}
