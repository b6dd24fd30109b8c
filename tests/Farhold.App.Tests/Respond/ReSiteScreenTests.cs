using Farhold.App.Respond;
using Farhold.App.Shell;

namespace Farhold.App.Tests.Respond;

public class ReSiteScreenTests : CareTest
{
    [Fact]
    public async Task From_where_it_sits_to_the_second_one_that_holds_alone()
    {
        await TightAsync();
        await LogAsync(38, new Payload.BleedingChecked("w1", Bleeding.None));
        var screen = Show<ReSiteScreen>((nameof(ReSiteScreen.On), "left-leg"));
        Pick(screen, "Under it", "Clothing");
        Pick(screen, "Where on the limb", "High on the limb");
        Pick(screen, "What it is", "Improvised");
        Answer(screen, "Go on", "Put a second one on the bare skin");
        Assert.Contains("improvised, over clothing, high on the limb", Shown(screen), StringComparison.Ordinal);
        Answer(screen, "Second one is on and tight", "Does it bleed with the second one?");
        Answer(screen, "It still bleeds: tighten the second one further", "Does it bleed with the second one?");
        Answer(screen, "It has stopped", "Slacken the first one slowly");
        Answer(screen, "First one is slack", "The second one holds alone");
        Answer(screen, "It has stopped", "It sits as it should.");

        var last = State.Of(Kind.TourniquetTightened)[^1].As<Payload.TourniquetTightened>();
        Assert.Equal(
            ("t2", TighteningReason.ReSited, TourniquetSite.AboveWound, true),
            (last.Tourniquet, last.Why, last.Site, last.OnSkin)
        );
        Assert.Null(last.Make); // nobody said what it is
        Assert.Equal("t1", Last<Payload.TourniquetSlackened>().Tourniquet);
    }

    [Fact]
    public async Task One_that_sits_as_it_should_leads_to_whether_it_is_needed()
    {
        await TightAsync();
        var screen = Show<ReSiteScreen>((nameof(ReSiteScreen.On), "left-leg"));
        Pick(screen, "Under it", "Bare skin");
        Pick(screen, "Where on the limb", "5 to 7 cm above the wound");
        Pick(screen, "What it is", "Windlass");
        Answer(screen, "Go on", "It sits as it should.");
        Assert.EndsWith(
            "attempt/left-leg",
            screen.FindAll("main a").First(a => Text(a) == "Does this limb need one at all?").GetAttribute("href"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task In_shock_nothing_is_begun()
    {
        await TightAsync();
        await LogAsync(1, Well with { RadialPulse = RadialPulse.Weak });
        var screen = Show<ReSiteScreen>((nameof(ReSiteScreen.On), "left-leg"));
        Pick(screen, "Under it", "Clothing");
        Pick(screen, "Where on the limb", "High on the limb");
        Pick(screen, "What it is", "Windlass");
        Answer(screen, "Go on", "Signs of shock: treat that first");
        Assert.DoesNotContain(screen.FindAll("button"), b => Text(b) == "Second one is on and tight");
    }

    [Fact]
    public async Task If_it_bleeds_with_the_second_one_alone_the_first_is_tight_again()
    {
        await TightAsync();
        await LogAsync(
            30,
            new Payload.TourniquetTightened(
                "t1",
                Limb.LeftLeg,
                null,
                TourniquetMake.Windlass,
                "w1",
                Site: TourniquetSite.High,
                OnSkin: true
            )
        );
        await LogAsync(
            5,
            new Payload.TourniquetTightened(
                "t2",
                Limb.LeftLeg,
                Wound: "w1",
                Why: TighteningReason.ReSited,
                Site: TourniquetSite.AboveWound,
                OnSkin: true
            )
        );
        await LogAsync(4, new Payload.BleedingChecked("w1", Bleeding.None));
        await LogAsync(3, new Payload.TourniquetSlackened("t1"));
        var screen = Show<ReSiteScreen>((nameof(ReSiteScreen.On), "left-leg"));
        Tap(screen, "It bleeds: first one tight again");
        screen.WaitForAssertion(() =>
            Assert.Equal(
                ("t1", TighteningReason.Bleeding),
                (Last<Payload.TourniquetTightened>().Tourniquet, Last<Payload.TourniquetTightened>().Why)
            )
        );
    }

    private static string Shown(Bunit.IRenderedComponent<Frame> screen) => Text(screen.Find("main"));

    private void Answer(Bunit.IRenderedComponent<Frame> screen, string answer, string expected)
    {
        Time.Advance(TimeSpan.FromSeconds(5));
        Tap(screen, answer);
        screen.WaitForAssertion(() => Assert.Contains(expected, Shown(screen), StringComparison.Ordinal));
    }
}
