using Microsoft.AspNetCore.Components.Rendering;

namespace Farhold.App.Tests.Parts;

public class DeskScreenTests : CareTest
{
    private async Task<Sample> ShownAsync(Duration pace)
    {
        await StartAsync();
        Sample.Every = pace;
        var sample = Show<Sample>().FindComponent<Sample>().Instance;
        Desk.JudgeAgain();
        return sample;
    }

    private void Pass(int seconds) => Time.Advance(TimeSpan.FromSeconds(seconds));

    [Fact]
    public async Task Without_a_pace_every_picture_is_drawn()
    {
        var sample = await ShownAsync(Duration.Zero);
        var before = sample.Drawn;
        Desk.JudgeAgain();
        Desk.JudgeAgain();
        Assert.Equal(before + 2, sample.Drawn);
    }

    [Fact]
    public async Task It_stands_for_its_pace_while_nothing_is_logged()
    {
        var sample = await ShownAsync(Duration.FromMinutes(1));
        var before = sample.Drawn;
        Pass(50);
        Assert.Equal(before, sample.Drawn);
        Pass(20);
        Assert.Equal(before + 1, sample.Drawn);
    }

    [Fact]
    public async Task What_is_logged_is_drawn_at_once()
    {
        var sample = await ShownAsync(Duration.MaxValue);
        var before = sample.Drawn;
        await LogAsync(0, new Payload.NoteWritten("cold"));
        Assert.Equal(before + 1, sample.Drawn);
    }

    [Fact]
    public async Task While_something_is_filled_in_only_touches_draw_it()
    {
        var sample = await ShownAsync(Duration.Zero);
        sample.Held = true;
        var before = sample.Drawn;
        await LogAsync(0, new Payload.NoteWritten("cold"));
        Pass(60);
        Assert.Equal(before, sample.Drawn);
    }

    private sealed class Sample : DeskScreen
    {
        public static Duration Every { get; set; }

        public int Drawn { get; private set; }

        public bool Held { get; set; }

        protected override Duration Pace { get; } = Every;

        protected override bool Holds => Held;

        protected override void BuildRenderTree(RenderTreeBuilder builder) => Drawn++;
    }
}
