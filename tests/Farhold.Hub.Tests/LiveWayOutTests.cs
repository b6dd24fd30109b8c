using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>A way out under way, by touch: a slow message, a decision until when to wait, a helicopter that does not come.</summary>
public class LiveWayOutTests(Browser browser) : PhoneTest(browser)
{
    [Fact]
    public async Task A_delay_a_failed_helicopter_and_a_decision_are_followed_by_touch()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Tor");
        await Page.TightenAsync();
        await Page.GoToAsync("Way out");
        await Page.GetByText("Load a plan or a track").TapAsync();
        await Page.GetByLabel("Plan (JSON) with its tracks, or one GPX track").SetInputFilesAsync(Plan());

        // The decision stands first, then twenty dots with the sentence they add up to, and its day.
        await Assertions.Expect(Page.GetByText("helicopter").First).ToBeVisibleAsync();
        await Assertions.Expect(Page.Locator(".notice").Filter(new() { HasText = "With the best wait" })).ToBeVisibleAsync();
        var sentence = Page.Locator("p.way-range");
        await Assertions.Expect(sentence).ToContainTextAsync("that higher care is reached before");
        await Assertions.Expect(sentence).ToContainTextAsync(new Regex("(today|tomorrow), ")); // by the hour at which this runs
        await Page.Button("Expect only a clinic there").TapAsync();
        await Assertions.Expect(Page.GetByText("The record expects help by this plan.")).ToBeVisibleAsync();
        await Page.Button("Close this message").TapAsync();

        // Twenty minutes were likely for the message; only now, after forty, it is through.
        var before = await Page.Locator("p.way-case").First.TextContentAsync();
        await Page.Button("message out: Done").TapAsync();
        await Assertions.Expect(Page.Button("flight: Given up, or does not come")).ToBeVisibleAsync();
        await Assertions.Expect(Page.Locator("p.way-case").First).Not.ToHaveTextAsync(before!);

        await Page.Button("flight: Given up, or does not come").TapAsync();
        await Assertions.Expect(Page.Locator("p.way-case").First).ToContainTextAsync("In nearly all carry out: between");
        await Assertions.Expect(Page.Button("flight: Done")).ToHaveCountAsync(0);
        await Assertions.Expect(Page.Button("carry down: Begun")).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("The record expects help by this plan.")).ToBeVisibleAsync();
        await Page.NoAxeFaultAsync("a way out under way");

        // Everything is in the log: stages and how the forecast moved.
        await Page.GoToAsync("Log");
        await Assertions.Expect(Page.GetByText("stage 1 (message out): done").First).ToBeVisibleAsync();
        await Assertions.Expect(Page.GetByText("given up, or it does not come").First).ToBeVisibleAsync();
    }

    private static FilePayload Plan()
    {
        var start = DateTimeOffset.UtcNow.AddMinutes(-40).ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
        var plan = $$$"""
            {"title":"Over the pass","start":"{{{start}}}","legs":[
              {"name":"message out","mode":"wait","p10":10,"p50":20,"p90":40},
              {"waitFor":{"name":"helicopter","probability":0.6,"legs":[{"name":"flight","mode":"aircraft","p10":20,"p50":40,"p90":90}]},
               "onward":{"legs":[{"name":"to hospital","mode":"aircraft","low":20,"likely":25,"high":40}]},
               "otherwise":{"name":"carry out","legs":[{"name":"carry down","mode":"carry","distanceKm":3,"descentM":200,"bearers":12}]} }
            ]}
            """;
        return new()
        {
            Name = "pass.plan.json",
            MimeType = "application/json",
            Buffer = Encoding.UTF8.GetBytes(plan),
        };
    }
}
