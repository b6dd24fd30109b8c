namespace Farhold.App.Tests.Enter;

public class OneKeypadTests : CareTest
{
    [Fact]
    public async Task A_second_number_takes_the_keys_from_the_first()
    {
        await TightAsync();
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "signs.taken"));
        Open(form, "Pulse ");
        Assert.Single(form.FindAll(".pad"));
        Open(form, "Breathing ");
        Assert.Equal("Breathing", Assert.Single(form.FindAll(".pad")).GetAttribute("aria-label"));
        Open(form, "Breathing ");
        Assert.Empty(form.FindAll(".pad"));
    }

    [Fact]
    public async Task The_second_of_two_times_takes_the_keys_once_the_first_is_typed()
    {
        await TightAsync();
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "note"));
        Choose(form, "When", "Between … and …");
        Choose(form, "How long ago", "By the clock");
        var first = Assert.Single(form.FindAll(".pad")).GetAttribute("aria-label")!;
        foreach (var key in "0930")
            Tap(form, key.ToString(), first);
        Assert.NotEqual(first, Assert.Single(form.FindAll(".pad")).GetAttribute("aria-label"));
    }

    [Fact]
    public async Task The_button_that_logs_says_what_it_will_log_and_a_drug_is_chosen_not_typed()
    {
        await TightAsync();
        var form = Show<EntryScreen>((nameof(EntryScreen.KindName), "drug.given"));
        Assert.Empty(form.FindAll(".logs-what"));
        Choose(form, "Drug", "paracetamol");
        Open(form, "Amount ");
        foreach (var key in "1000")
            Tap(form, key.ToString(), "Amount");
        Choose(form, "Unit of the amount", "mg");
        Choose(form, "Route", "By mouth");
        Assert.Empty(form.FindAll("input:not([type=radio])"));
        Assert.Equal("Given paracetamol 1000 mg, mouth", Text(form.Find(".logs-what")));
    }

    private static void Open(IRenderedComponent<Frame> form, string name) =>
        form.FindAll("button").First(b => Text(b).StartsWith(name, StringComparison.Ordinal)).Click();
}
