using Farhold.App.Tests.Doubles;

namespace Farhold.App.Tests.Services;

public class LanguageTests
{
    private readonly FakePhone phone = new();
    private readonly Texts texts = Texts.In("en");

    [Theory]
    [InlineData("de-AT en", "de")]
    [InlineData("nb-NO ES-mx en", "es")]
    [InlineData("en-NZ de", "en")]
    [InlineData("nb fr", "en")]
    [InlineData("", "en")]
    public async Task At_first_it_is_the_first_of_the_browsers_that_there_is(string browser, string spoken)
    {
        phone.Languages = browser.Split(' ');
        await Made().StartAsync();
        Assert.Equal(spoken, texts.Language);
        Assert.Equal((spoken, "ltr"), phone.Spoken);
        Assert.Equal(spoken == "de", texts.PlaceNow == "Jetzt");
    }

    [Fact]
    public async Task What_is_chosen_is_kept_over_what_the_browser_says()
    {
        phone.Languages = ["es"];
        var language = Made();
        await language.StartAsync();
        var told = 0;
        language.Changed += () => told++;
        Assert.True(await language.ChooseAsync("de"));
        Assert.Equal((1, "Jetzt", "de"), (told, texts.PlaceNow, phone.Spoken.Language));

        var later = Texts.In("en");
        await new Language(phone, new Preferences(phone), later, new Background()).StartAsync();
        Assert.Equal("de", later.Language);
    }

    [Fact]
    public async Task English_is_always_at_hand()
    {
        phone.Languages = ["de"];
        var language = Made();
        await language.StartAsync();
        phone.Files = _ => null;
        Assert.True(await language.ChooseAsync("en"));
        Assert.Equal("Now", texts.PlaceNow);
        Assert.False(await language.ChooseAsync("es"));
        Assert.Equal(("en", "en"), (texts.Language, new Preferences(phone).Language));
    }

    [Fact]
    public async Task A_file_of_another_build_is_not_taken()
    {
        phone.Languages = ["de"];
        phone.Files = l => LanguageFile.Fetched(l)! with { KeysMark = "00000000" };
        await Made().StartAsync();
        Assert.Equal("en", texts.Language);
        phone.Files = l => LanguageFile.Fetched(l)! with { Lines = ["eins"] };
        await Made().StartAsync();
        Assert.Equal(("en", "Now"), (texts.Language, texts.PlaceNow));
    }

    [Fact]
    public async Task A_language_that_no_native_clinician_has_read_says_so()
    {
        var language = Made();
        await language.StartAsync();
        Assert.False(language.IsUnread);
        await language.ChooseAsync("es");
        Assert.True(language.IsUnread);
    }

    [Fact]
    public async Task What_goes_into_the_record_as_a_sentence_is_in_English()
    {
        await Made().ChooseAsync("de");
        Assert.Equal(("Notiz", "Note"), (texts.NoteLabel, texts.Recorded.NoteLabel));
    }

    private Language Made() => new(phone, new Preferences(phone), texts, new Background());
}
