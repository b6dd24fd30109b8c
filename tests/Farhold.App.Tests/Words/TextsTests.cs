using System.Reflection;
using Farhold.App.Words;

namespace Farhold.App.Tests.Words;

public class TextsTests
{
    public static TheoryData<string> Languages => [.. Texts.Languages];

    private static IEnumerable<string> Asked =>
        typeof(Texts).GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.Name != nameof(Texts.Language)).Select(p => p.Name)
            .Concat(typeof(Texts).GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly).Where(m => !m.IsSpecialName).Select(m => m.Name));

    [Theory, MemberData(nameof(Languages))]
    public void A_language_has_every_text_and_no_other(string language) =>
        Assert.Equal(Asked.Order(StringComparer.Ordinal), Texts.Load(language).Keys.Order(StringComparer.Ordinal));

    [Theory, MemberData(nameof(Languages))]
    public void No_text_is_empty(string language) => Assert.DoesNotContain(Texts.Load(language), t => string.IsNullOrWhiteSpace(t.Value));

    [Theory, MemberData(nameof(Languages))]
    public void A_text_has_a_place_for_everything_it_is_given(string language)
    {
        var words = Texts.Load(language);
        foreach (var method in typeof(Texts).GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly).Where(m => !m.IsSpecialName))
            for (var i = 0; i < method.GetParameters().Length; i++)
                Assert.Contains($"{{{i}}}", words[method.Name], StringComparison.Ordinal);
    }

    /// <summary>Replacing is another act: a second tourniquet takes over.</summary>
    [Fact]
    public void A_tourniquet_is_converted_and_never_replaced() => Assert.DoesNotContain(Texts.Load("en"), t =>
        t.Value.Contains("replac", StringComparison.OrdinalIgnoreCase) && t.Value.Contains("tourniquet", StringComparison.OrdinalIgnoreCase));

    [Fact]
    public void A_language_without_a_file_is_shown_in_English() => Assert.Equal("en", Texts.In("qaa-QM").Language);
}
