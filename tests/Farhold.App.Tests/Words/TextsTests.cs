using System.Text.Json;
using Farhold.Tests.Architecture;

namespace Farhold.App.Tests.Words;

public class TextsTests
{
    private static string English => File.ReadAllText(Path.Combine(Repository.Root, "src", "Farhold.App", "Words", "Texts.en.json"));

    /// <summary>Replacing is another act: a second tourniquet takes over.</summary>
    [Fact]
    public void A_tourniquet_is_converted_and_never_replaced() =>
        Assert.DoesNotContain(
            JsonSerializer.Deserialize<Dictionary<string, string>>(English)!,
            t =>
                t.Value.Contains("replac", StringComparison.OrdinalIgnoreCase)
                && t.Value.Contains("tourniquet", StringComparison.OrdinalIgnoreCase)
        );

    [Fact]
    public void A_language_without_a_file_is_shown_in_English() => Assert.Equal("en", Texts.In("qaa-QM").Language);

    [Fact]
    public void What_is_filled_in_stays_one_line_and_turns_no_writing() =>
        Assert.Equal("Phone clock a b", Texts.In("en").ClockNow("a\nb\u202e"));
}
