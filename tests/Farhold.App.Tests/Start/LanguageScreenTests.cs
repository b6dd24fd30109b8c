using Farhold.App.Tests.Doubles;

namespace Farhold.App.Tests.Start;

public class LanguageScreenTests : CareTest
{
    private Language Language =>
        Microsoft.Extensions.DependencyInjection.ServiceProviderServiceExtensions.GetRequiredService<Language>(Services);

    [Fact]
    public async Task The_language_can_be_changed_from_the_list_before_there_is_any_record()
    {
        Preferences.CautionsRead = true;
        Preferences.Carer = "Ane";
        var list = Render<StartScreen>();
        Assert.DoesNotContain(Texts.LanguageUnread, list.Markup, StringComparison.Ordinal);
        await list.FindAll("label.choice")
            .Single(l => l.TextContent.Trim() == "Deutsch")
            .QuerySelector("input")!
            .ChangeAsync(new() { Value = "on" });
        Assert.Equal(("de", "de"), (Texts.Language, Preferences.Language));
        Assert.Equal(("de", "ltr"), Phone.Spoken);
    }

    [Fact]
    public async Task Where_it_is_chosen_it_says_that_no_native_clinician_has_read_it_and_once_at_the_first_start()
    {
        Preferences.CautionsRead = true;
        Preferences.Carer = "Ane";
        Phone.Languages = ["es-ES"];
        await Language.StartAsync();
        var list = Render<StartScreen>();
        Assert.Contains(Texts.LanguageUnreadTitle, list.Find(".notice h2").TextContent, StringComparison.Ordinal);
        Button(list, Texts.LossAccept).Click();
        Assert.Empty(list.FindAll(".notice h2"));
        Assert.Contains(Texts.LanguageUnread, list.Markup, StringComparison.Ordinal);
        var again = Render<StartScreen>();
        Assert.Empty(again.FindAll(".notice h2"));
    }

    [Fact]
    public void A_language_that_can_not_be_had_says_so_and_nothing_changes()
    {
        Phone.Files = _ => null;
        var choice = Render<LanguageChoice>();
        choice.FindAll("label.choice input")[1].Change("on");
        Assert.Contains(Texts.LanguageMissing, choice.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal(("en", ""), (Texts.Language, Preferences.Language));
    }

    [Fact]
    public async Task On_the_pad_the_point_is_the_mark_of_the_language_and_the_number_the_same()
    {
        await Language.ChooseAsync("de");
        double? taken = null;
        var pad = Render<NumberPad>(p => p.Add(x => x.Decimals, 1).Add(x => x.Max, 45).Add(x => x.ValueChanged, v => taken = v));
        foreach (var key in (string[])["3", "6", ",", "5"])
            pad.FindAll("button").Single(b => b.TextContent.Trim() == key).Click();
        Assert.Equal(36.5, taken);
        Assert.Equal("36,5", pad.Find("output").TextContent);
    }
}
