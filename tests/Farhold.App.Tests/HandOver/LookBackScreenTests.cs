using Farhold.App.Enter;
using Farhold.App.HandOver;

namespace Farhold.App.Tests.HandOver;

public class LookBackScreenTests : CareTest
{
    [Fact]
    public async Task The_hand_over_place_says_what_is_needed_and_recommended()
    {
        await TightAsync(90);
        var frame = Show<HandOverScreen>();
        var needs = Text(frame.Find("section[aria-label='What Tor needs']"));
        Assert.Contains("Needs surgery that can take the left leg: 30 min left to 2 h 00 min", needs, StringComparison.Ordinal);
        Assert.Contains("Perhaps needs blood; it is not known", needs, StringComparison.Ordinal);
        Assert.Contains("Leave the tourniquet on the left leg on for now", needs, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Weeks_later_the_hospitals_letter_is_added_and_the_look_back_has_it()
    {
        await TightAsync();
        await LogAsync(0, new Payload.CareEnded(CareEnd.HandedOver, "the helicopter"));
        Time.Advance(TimeSpan.FromDays(30));
        var place = Show<HandOverScreen>();
        Assert.Equal("casualty/" + Casualty + "/enter/outcome.reported", Link(place, "Add what the hospital says"));
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "outcome.reported"));
        Write(form, "From whom", "ward 3, letter of 1 June");
        Pick(form, "Nerves of the limb", "Harmed, recovered");
        Tap(
            form,
            form.FindAll("button")
                .Select(b => b.GetAttribute("aria-label") ?? Text(b))
                .Single(b => b.StartsWith("Log", StringComparison.Ordinal))
        );
        form.WaitForAssertion(() => Assert.Equal(NerveFate.Recovered, Last<Payload.OutcomeReported>().Nerve));
        Assert.Null(Last<Payload.OutcomeReported>().Survived);

        var back = Show<LookBackScreen>();
        back.WaitForAssertion(() => Assert.Contains("nerve damage, recovered", Text(back.Find("main")), StringComparison.Ordinal));
        Assert.Contains("silence is no proof", Text(back.Find("main")), StringComparison.Ordinal);
        Assert.Contains("Not in the record: ", Text(back.Find("main")), StringComparison.Ordinal);
    }

    private static string? Link(IRenderedComponent<Farhold.App.Shell.Frame> frame, string name) =>
        frame.FindAll("a").Single(a => Text(a) == name).GetAttribute("href");
}
