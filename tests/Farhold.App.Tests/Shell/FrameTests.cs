using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Shell;

public class FrameTests : ScreenTest
{
    [Fact]
    public async Task The_address_of_a_casualty_that_is_not_here_opens_no_other()
    {
        await OpenCasualtyAsync("Tor");
        await Session.StartAsync();
        Session.Close();
        Preferences.OpenCasualty = Session.Casualties[0].Id; // the app ended in the middle of care
        await Session.StartAsync();
        var frame = At("nobody-here");
        Assert.Equal(Texts.ElsewhereTitle, frame.Find("h1").TextContent);
        Assert.Null(Session.Open);
        Assert.DoesNotContain("Tor", frame.Markup, StringComparison.Ordinal);
        Assert.EndsWith("casualty/nobody-here/now", Navigation.Uri, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_was_open_before_is_open_no_longer()
    {
        await OpenCasualtyAsync("Tor");
        var frame = At("nobody-here");
        Assert.DoesNotContain("Tor", frame.Markup, StringComparison.Ordinal);
        Assert.Empty(frame.FindAll("nav.places"));
        Assert.Null(Session.Open);
    }

    [Fact]
    public async Task The_address_of_one_that_is_here_opens_it()
    {
        var id = await OpenCasualtyAsync("Tor");
        Session.Close();
        At(id);
        Assert.Equal(id, Session.Open?.Id);
    }

    private NavigationManager Navigation => Services.GetRequiredService<NavigationManager>();

    private IRenderedComponent<Frame> At(string casualty)
    {
        Navigation.NavigateTo(Places.Now.Of(casualty));
        return Render<Frame>(p =>
            p.Add(
                f => f.Body,
                b =>
                {
                    b.OpenComponent<NowScreen>(0);
                    b.AddAttribute(1, nameof(NowScreen.Casualty), casualty);
                    b.CloseComponent();
                }
            )
        );
    }
}
