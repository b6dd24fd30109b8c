using System.Globalization;
using System.Text;
using Farhold.Text;

namespace Farhold.App.Tests.Words;

/// <summary>A static class of texts, which asks the culture what is spoken.</summary>
public class AmbientTextsTests
{
    private const string English = """
        { "Name": "A \"name\"", "Since": "tight since {0:time} on the {1:limb}", "Entries": "1 entry of {1:who}|{0:#count} entries of {1:who}" }
        """;

    [Fact]
    public void English_is_compiled_in()
    {
        var made = GeneratedTexts.Ambient(("Words.en.json", English));
        Assert.Empty(made.Faults);
        Assert.Empty(made.Errors);
        Assert.Equal("A \"name\"", made.Said("Name"));
        Assert.Equal("tight since 02:10 on the left leg", made.Said("Since", "02:10", "left leg"));
        Assert.Equal("1 entry of Bo", made.Said("Entries", 1L, "Bo"));
        Assert.Equal("2 entries of {0}", made.Said("Entries", 2L, "{0}"));
    }

    [Fact]
    public void Another_language_is_said_once_it_was_handed_over()
    {
        var made = GeneratedTexts.Ambient(("Words.en.json", English));
        Translation.Add(
            "ya",
            Encoding.UTF8.GetBytes("""{ "Words": { "Since": "{1} fest seit {0}", "Entries": "ein Eintrag ({1})|{0} Einträge ({1})" } }""")
        );
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = new CultureInfo("ya-YA");
            Assert.Equal("Bein fest seit 02:10", made.Said("Since", "02:10", "Bein"));
            Assert.Equal("ein Eintrag (Bo)", made.Said("Entries", 1L, "Bo"));
            Assert.Equal("3 Einträge (Bo)", made.Said("Entries", 3L, "Bo"));
            Assert.Equal("A \"name\"", made.Said("Name"));
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void A_translation_beside_it_is_checked_but_not_compiled_in()
    {
        var made = GeneratedTexts.Ambient(("Words.en.json", English), ("Words.yb.json", """{ "Name": "Name" }"""));
        Assert.Equal(["TEXT007", "TEXT007"], made.Faults.Select(f => f.Id));
        Assert.Equal("A \"name\"", made.Said("Name"));
    }
}
