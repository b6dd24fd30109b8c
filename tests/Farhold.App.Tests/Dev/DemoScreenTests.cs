using Farhold.App.Dev;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Dev;

public class DemoScreenTests : ScreenTest
{
    [Fact]
    public void The_demo_is_taken_in_once_and_opened_on_its_day()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        var clock = new DemoClock(Phone);
        Services.AddSingleton(clock);
        Render<DemoScreen>();
        Render<DemoScreen>();
        var casualty = Assert.Single(Session.Casualties);
        Assert.EndsWith(Places.Now.Of(casualty.Id), Services.GetRequiredService<NavigationManager>().Uri, StringComparison.Ordinal);
        Assert.Equal(new DateOnly(2031, 5, 4), DateOnly.FromDateTime(new DemoClock(Phone).GetUtcNow().UtcDateTime)); // as after a reload
        Assert.True(casualty.Entries > 10);
    }
}
