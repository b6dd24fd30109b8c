using Farhold.Hub.Tests.Harness;
using Microsoft.Playwright;

namespace Farhold.Hub.Tests;

/// <summary>Where we are, by the phone's own receiver, under the policies that the hub sends.</summary>
public class PositionTests(Browser browser) : PhoneTest(browser)
{
    protected override BrowserNewContextOptions Kind =>
        new(base.Kind)
        {
            Geolocation = new()
            {
                Latitude = 61.2057f,
                Longitude = 8.41224f,
                Accuracy = 12,
            },
            Permissions = ["geolocation"],
        };

    [Fact]
    public async Task From_the_way_out_it_takes_two_taps()
    {
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Runa");
        await Page.GoToAsync("Way out");
        await Page.Link("Where we are, by this phone").TapAsync();
        await Page.Button("Log: casualty is here, within 12 m").TapAsync();
        await Page.Heading("Way out").WaitForAsync();
        await Page.GoToInnerAsync("log");
        await Page.Locator(".entry-text", new() { HasText = "Position 61.2057, 8.41224 (within 12 m)" }).WaitForAsync();
    }

    [Fact]
    public async Task Refused_it_says_so_and_what_to_do()
    {
        await Phone.ClearPermissionsAsync();
        await Page.ReadCautionsAsync();
        await Page.OpenCasualtyAsync("Runa");
        await Page.GoToInnerAsync("position");
        await Page.GetByText("The phone does not let Farhold know where it is.").WaitForAsync();
        await Page.Link("Type it in: map, or another device").TapAsync();
        await Page.Heading("Where the casualty is").WaitForAsync();
    }
}
