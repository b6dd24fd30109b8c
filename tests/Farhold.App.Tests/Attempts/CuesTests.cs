using CsCheck;

namespace Farhold.App.Tests.Attempts;

public class CuesTests
{
    private static readonly Instant Start = Instant.FromUtc(2031, 5, 4, 2, 0);

    [Fact]
    public void However_late_the_ticks_come_no_cue_is_given_twice_or_lost()
    {
        var seconds = Gen.Int[1, 9];
        seconds
            .Array[1, 60]
            .Sample(gaps =>
            {
                var (at, crossed) = (Start - Duration.FromSeconds(15), 0);
                foreach (var gap in gaps)
                {
                    var next = at + Duration.FromSeconds(gap);
                    crossed += Cues.Crossed(at, next, Start, Pacing.Beat) ? 1 : 0;
                    at = next;
                }

                return crossed == (at < Start ? 0 : (int)Math.Floor((at - Start) / Pacing.Beat) + 1);
            });
    }

    [Fact]
    public void The_last_beat_ends_with_the_pace()
    {
        var pace = new Pacing(Start, Start + Duration.FromMinutes(1));
        Assert.Equal(6, pace.Beats);
        Assert.Equal(1, pace.At(Start));
        Assert.Equal(6, pace.At(Start + Duration.FromSeconds(59)));
        Assert.Equal(6, pace.At(Start + Duration.FromMinutes(5)));
    }
}
