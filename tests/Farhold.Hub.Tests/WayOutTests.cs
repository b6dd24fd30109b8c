using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

public class WayOutTests(Browser browser) : PhoneTest(browser)
{
    [Fact]
    public async Task A_plan_built_by_touch_is_seen_on_the_limb_line_and_is_there_again_after_a_start()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.TightenAsync();
        await Page.GoToAsync("Way out");
        await Page.WaitLegAsync("15 min", "30 min", "45 min");
        await Page.CarryLegAsync("3");
        await Assertions.Expect(Page.Heading("Reaching higher care")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("in eight of ten trials").First).ToBeVisibleAsync();
        await Page.Button("Expect surgery at the end of this way").TapAsync();
        await Assertions.Expect(Page.GetByText("The record expects help by this plan.")).ToBeVisibleAsync();
        await Page.Button("Close this message").TapAsync();

        await Page.GoToAsync("Limbs");
        await Assertions.Expect(Page.Locator("svg desc")).ToContainTextAsync("Help, way out,");
        await Page.ReloadAsync();
        await Assertions.Expect(Page.Locator("svg desc")).ToContainTextAsync("Help, way out,");
        await Page.GoToAsync("Way out");
        await Assertions.Expect(Page.GetByText("Carry", new() { Exact = true }).First).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("The record expects help by this plan.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_broken_track_is_refused_with_its_line_and_nothing_of_it_is_taken()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.GoToAsync("Way out");
        await Page.GetByText("Load a plan or a track").TapAsync();
        await Page.GetByLabel("Plan (JSON) with its tracks, or one GPX track")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "spur.gpx",
                    MimeType = "application/gpx+xml",
                    Buffer = "<gpx version=\"1.1\">\n<trk><trkseg>\n<trkpt lat=\"146\" lon=\"8\"/>\n"u8.ToArray(),
                }
            );
        await Assertions.Expect(Page.GetByText("Refused. Nothing of it was taken.")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("spur.gpx: Line 3").First).ToBeVisibleAsync();
        await Assertions.Expect(Page.Button("Expect surgery at the end of this way")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task With_everything_open_it_has_no_fault_that_axe_can_find_by_night_or_day()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.TightenAsync();
        await Page.GoToAsync("Way out");
        await Page.Button("Wait").Last.TapAsync();
        await Page.Button("Keep this stage").WaitForAsync();
        await OpenAllAsync();
        await NoFaultAsync("the form of a leg");
        await Page.Button("Leave it").TapAsync();
        await Page.WaitLegAsync("15 min", "30 min", "45 min");
        await Page.Heading("Reaching higher care").WaitForAsync();
        await OpenAllAsync();
        await NoFaultAsync("the answer and the plan");
    }

    private async Task OpenAllAsync() =>
        await Page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(d => d.open = true)");

    private async Task NoFaultAsync(string where)
    {
        await Page.NoAxeFaultAsync(where);
        await Page.InLookAsync("day", () => Page.NoAxeFaultAsync(where + " by day"));
    }
}
