using System.Globalization;
using System.Text;
using Farhold.App.Tests.Doubles;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.WayOut;

/// <summary>A track of some thousand points, read while the page has its breath after every piece.</summary>
public class TrackTakingTests : WayTest
{
    private readonly HastyTime hasty;

    public TrackTakingTests()
    {
        hasty = new(Time.GetUtcNow());
        Services.AddSingleton<TimeProvider>(hasty);
    }

    [Fact]
    public async Task A_track_that_is_stopped_leaves_everything_as_it_was()
    {
        await ReadyAsync();
        Way.Use(Waits(30, 60, 120));
        Way.Stop();
        var before = Way.Plan;
        var screen = Shown();
        var taken = Upload(screen, "long.gpx", Long());
        screen.WaitForAssertion(() => Assert.Contains(Texts.TrackReading, screen.Markup, StringComparison.Ordinal));
        Assert.True(screen.Find("input[type=file]").HasAttribute("disabled"));

        screen.FindAll("section.notice").Single(s => s.GetAttribute("aria-label") == Texts.TrackReading).QuerySelector("button")!.Click();
        screen.WaitForAssertion(() => Assert.DoesNotContain(Texts.TrackReading, screen.Markup, StringComparison.Ordinal));
        await taken;
        hasty.Advance(TimeSpan.FromSeconds(1));
        Assert.Same(before, Way.Plan);
        Assert.Empty(screen.FindAll("main [role=alert]"));
        Assert.DoesNotContain(Texts.LegKeep, screen.Markup, StringComparison.Ordinal);
        Assert.False(screen.Find("input[type=file]").HasAttribute("disabled"));
    }

    [Fact]
    public async Task Read_to_its_end_it_becomes_a_leg_and_before_that_nothing()
    {
        await ReadyAsync();
        var screen = Shown();
        var taken = Upload(screen, "long.gpx", Long());
        screen.WaitForAssertion(() => Assert.Contains(Texts.TrackReading, screen.Markup, StringComparison.Ordinal));
        Assert.DoesNotContain(Texts.LegKeep, screen.Markup, StringComparison.Ordinal);
        await hasty.PassAsync(() => taken.IsCompleted);
        await taken;
        Assert.Contains(Texts.LegKeep, screen.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain(Texts.TrackReading, screen.Markup, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cut.gpx")]
    [InlineData("far.gpx")]
    public async Task What_is_refused_and_where_is_the_same_as_at_once(string name)
    {
        var text = name == "cut.gpx" ? Long()[..^20] : Long().Replace("lat=\"46.2000\"", "lat=\"146.2000\"", StringComparison.Ordinal);
        var bytes = Encoding.UTF8.GetBytes(text);
        var taking = new TrackTaking(hasty, Xml, Texts);
        var reading = taking.ReadAsync(new Dictionary<string, ReadOnlyMemory<byte>> { [name] = bytes }, () => { });
        Assert.False(reading.IsCompleted);
        await hasty.PassAsync(() => reading.IsCompleted);
        var inPieces = Assert.IsType<Read<TrackFile>.Refused>((await reading)![name]).Refusals;
        var atOnce = Assert.IsType<Read<Track>.Refused>(Gpx.Parse(bytes, name, Xml.Open)).Refusals;
        Assert.Equal(atOnce.AsEnumerable(), inPieces);
        Assert.Null(taking.Share);
    }

    [Fact]
    public async Task Without_a_reader_on_the_phone_a_track_is_refused_with_what_to_do()
    {
        Xml.IsHere = false;
        await ReadyAsync();
        var screen = Shown();
        var taken = Upload(screen, "long.gpx", Long());
        await hasty.PassAsync(() => taken.IsCompleted);
        await taken;
        Assert.Contains(Texts.TrackNoReader, screen.Find("main [role=alert]").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(Texts.LegKeep, screen.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_reading_takes_the_place_of_the_first()
    {
        var taking = new TrackTaking(hasty, Xml, Texts);
        var first = taking.ReadAsync(
            new Dictionary<string, ReadOnlyMemory<byte>> { ["a.gpx"] = Encoding.UTF8.GetBytes(Long()) },
            () => { }
        );
        var second = taking.ReadAsync(
            new Dictionary<string, ReadOnlyMemory<byte>> { ["b.gpx"] = Encoding.UTF8.GetBytes(Long()) },
            () => { }
        );
        Assert.Null(await first);
        await hasty.PassAsync(() => second.IsCompleted);
        Assert.IsType<Read<TrackFile>.Usable>((await second)!["b.gpx"]);
    }

    private static string Long()
    {
        var text = new StringBuilder("<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>");
        for (var i = 0; i < 3_000; i++)
            text.Append(CultureInfo.InvariantCulture, $"<trkpt lat=\"{46 + (i * 1e-4):F4}\" lon=\"8\"><ele>{900 - (i / 10)}</ele></trkpt>");
        return text.Append("</trkseg></trk></gpx>").ToString();
    }

    /// <summary>Beside the test, since it ends only once the file is taken in.</summary>
    private static Task Upload(IRenderedComponent<Frame> screen, string name, string content) =>
        Task.Run(
            () => screen.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(content, name)),
            Xunit.TestContext.Current.CancellationToken
        );
}
