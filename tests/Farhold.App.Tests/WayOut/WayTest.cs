using AngleSharp.Dom;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.WayOut;

/// <summary>The invented casualty of <see cref="LimbTest"/>, and a way out made by touch or given at once.</summary>
public abstract class WayTest : LimbTest
{
    protected WayDesk Way => Services.GetRequiredService<WayDesk>();

    /// <summary>The place in its frame, as on the phone.</summary>
    protected IRenderedComponent<Frame> Shown()
    {
        RenderFragment body = b =>
        {
            b.OpenComponent<WayOutScreen>(0);
            b.AddAttribute(1, nameof(WayOutScreen.Casualty), Casualty);
            b.CloseComponent();
        };
        return Render<Frame>(p => p.Add(f => f.Body, body));
    }

    /// <summary>Until what is drawn a breath later is drawn.</summary>
    protected void Breathe() => Time.Advance(TimeSpan.FromMilliseconds(1));

    /// <summary>The same for work of several breaths, however long a busy machine takes: only work that never ends fails.</summary>
    protected async Task BreatheUntilAsync(Func<bool> done)
    {
        var begun = System.Diagnostics.Stopwatch.GetTimestamp();
        while (!done())
        {
            Assert.True(System.Diagnostics.Stopwatch.GetElapsedTime(begun) < TimeSpan.FromMinutes(3));
            Breathe();
            await Task.Delay(1, Xunit.TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Another start of the app on the same phone.</summary>
    internal WayDesk Again() => new(Care, Session, Phone, Clock, Time, new Background());

    /// <summary>A wait in minutes, from now.</summary>
    protected Plan Waits(double low, double likely, double high) =>
        new(
            null,
            null,
            Now,
            null,
            null,
            0.5,
            4,
            [
                new Travel(
                    1,
                    null,
                    TravelMode.Wait,
                    new ThreePoint(Minutes(low), Minutes(likely), Minutes(high)),
                    DarkRule.Allowed,
                    FlightWindow.AnyHour,
                    null
                ),
            ]
        );

    protected static Duration Minutes(double n) => Duration.FromMinutes(n);

    protected static void Press(IRenderedComponent<Frame> screen, string name) => Button(screen, name).Click();

    /// <summary>The first of several with one name.</summary>
    protected static void PressFirst(IRenderedComponent<Frame> screen, string name) => Named(screen, name).First().Click();

    protected static IEnumerable<IElement> Named(IRenderedComponent<Frame> screen, string name) =>
        screen.FindAll("button").Where(b => (b.GetAttribute("aria-label") ?? b.TextContent.Trim()) == name);
}
