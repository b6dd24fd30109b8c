namespace Farhold.App.Tests.Words;

public class TextGeneratorTests
{
    private const string English = """
        {
          "Plain": "a \"quoted\" <b> \u00e9",
          "At": "{0:limb} at {1:time}",
          "Entries": "1 entry|{0:#count} entries",
          "Codes": "1 entry in 1 code|{0:#entries} entries in {1:#codes} codes",
          "Taken": "{0:alias}: 1 new, {2:#same} here|{0:alias}: {1:#added} new, {2:#same} here"
        }
        """;

    private const string German = """
        {
          "Entries": "1 Eintrag|{0} Einträge",
          "Plain": "ein Text",
          "At": "um {1:time} am {0}",
          "Codes": "1 Eintrag in 1 Code|{0} Einträge in {1} Codes",
          "Taken": "{0}: 1 neu, {2} hier|{0}: {1} neu, {2} hier"
        }
        """;

    [Fact]
    public void A_key_is_a_property_or_a_method_with_what_it_asks_for()
    {
        var made = GeneratedTexts.Of(("/w/Words.en.json", English));
        Assert.Empty(made.Faults);
        Assert.Empty(made.Errors);
        Assert.Equal("a \"quoted\" <b> é", made.Ask("en", "Plain"));
        Assert.Equal("<left arm> at <13:05>", made.Ask("en", "At", "left arm", "13:05"));
    }

    [Fact]
    public void The_form_for_one_stands_where_every_number_that_it_leaves_out_is_one()
    {
        var made = GeneratedTexts.Of(("Words.en.json", English));
        Assert.Equal("1 entry", made.Ask("en", "Entries", 1L));
        Assert.Equal("0 entries", made.Ask("en", "Entries", 0L));
        Assert.Equal("1 entry in 1 code", made.Ask("en", "Codes", 1L, 1L));
        Assert.Equal("1 entries in 2 codes", made.Ask("en", "Codes", 1L, 2L));
        Assert.Equal("<A>: 1 new, 7 here", made.Ask("en", "Taken", "A", 1L, 7L));
        Assert.Equal("<A>: 2 new, 1 here", made.Ask("en", "Taken", "A", 2L, 1L));
    }

    [Fact]
    public void A_language_is_one_more_file_in_any_order()
    {
        var made = GeneratedTexts.Of(("Words.de.json", German), ("Words.en.json", English));
        Assert.Empty(made.Faults);
        Assert.Empty(made.Errors);
        Assert.Equal("ein Text", made.Ask("de-AT", "Plain"));
        Assert.Equal("um <13:05> am <Arm>", made.Ask("DE", "At", "Arm", "13:05"));
        Assert.Equal("3 Einträge", made.Ask("de", "Entries", 3L));
        Assert.Equal("3 entries", made.Ask("qaa-QM", "Entries", 3L));
    }

    [Fact]
    public void A_language_that_is_fetched_is_checked_and_taken_by_the_order_of_its_lines()
    {
        var made = GeneratedTexts.Of(
            ("Words.en.json", """{ "One": "one", "Two": "two" }"""),
            ("fetched/Words.de.json", """{ "One": "eins", "Two": "zwei" }""")
        );
        Assert.Empty(made.Faults);
        Assert.Empty(made.Errors);
        Assert.Equal("two", made.Ask("de", "Two"));
        Assert.Equal((true, "de", "zwei"), made.AskTaken("de", ["eins", "zwei"], "Two"));
        Assert.Equal((false, "en", "two"), made.AskTaken("de", ["eins"], "Two"));
        // FNV-1a of the sixteen-bit units of "One\nTwo\n".
        Assert.Equal("57e04af7", made.KeysMark());
    }

    [Theory]
    [InlineData("TEXT011", """{ "Two": "zwei", "One": "eins" }""")]
    [InlineData("TEXT007", """{ "One": "eins" }""")]
    public void What_is_fetched_has_the_keys_of_English_in_their_order(string fault, string german) =>
        Assert.Equal(
            fault,
            Assert
                .Single(
                    GeneratedTexts.Of(("Words.en.json", """{ "One": "one", "Two": "two" }"""), ("fetched/Words.de.json", german)).Faults
                )
                .Id
        );

    [Fact]
    public void A_file_that_is_given_for_something_else_is_left_alone() =>
        Assert.Empty(GeneratedTexts.Of(("Words.en.json", English), ("other.json", "[")).Faults);

    [Fact]
    public void A_key_that_is_asked_for_and_not_there_is_no_member()
    {
        var made = GeneratedTexts.Of(("Words.en.json", """{ "Plain": "a" }"""));
        Assert.Throws<NullReferenceException>(() => made.Ask("en", "Missing"));
    }

    /// <summary>Each planted in the second line.</summary>
    [Theory]
    [InlineData("TEXT001", "\"A\": 1")]
    [InlineData("TEXT001", "\"A\" \"a\"")]
    [InlineData("TEXT001", "\"A\": \"a")]
    [InlineData("TEXT001", "\"A\": \"two\\nlines\"")]
    [InlineData("TEXT001", "\"A\": \"\\u0007\"")]
    [InlineData("TEXT001", "\"A\": { }")]
    [InlineData("TEXT001", "\"A\": \"a\" \"B\": \"b\"")]
    [InlineData("TEXT002", "\"a\": \"a\"")]
    [InlineData("TEXT002", "\"A b\": \"a\"")]
    [InlineData("TEXT002", "\"Language\": \"a\"")]
    [InlineData("TEXT002", "\"Words\": \"a\"")]
    [InlineData("TEXT002", "\"Twice\": \"a\"")]
    [InlineData("TEXT003", "\"A\": \" \"")]
    [InlineData("TEXT004", "\"A\": \"{0}\"")]
    [InlineData("TEXT004", "\"A\": \"{0:time\"")]
    [InlineData("TEXT004", "\"A\": \"0:time}\"")]
    [InlineData("TEXT004", "\"A\": \"{time}\"")]
    [InlineData("TEXT004", "\"A\": \"{0:0.0}\"")]
    [InlineData("TEXT004", "\"A\": \"{{0:time}}\"")]
    [InlineData("TEXT004", "\"A\": \"{0:time} {0:limb}\"")]
    [InlineData("TEXT004", "\"A\": \"{0:time} {0:#time}\"")]
    [InlineData("TEXT004", "\"A\": \"{0:time} {1:time}\"")]
    [InlineData("TEXT004", "\"A\": \"{0:class}\"")]
    [InlineData("TEXT005", "\"A\": \"{1:time}\"")]
    [InlineData("TEXT005", "\"A\": \"{0:time} {2:limb}\"")]
    [InlineData("TEXT006", "\"A\": \"1|{0:#few}|{0:#many}\"")]
    [InlineData("TEXT006", "\"A\": \"1 entry|\"")]
    [InlineData("TEXT006", "\"A\": \"{0:#count} entry|{0:#count} entries\"")]
    [InlineData("TEXT006", "\"A\": \"one|{0:name}\"")]
    [InlineData("TEXT006", "\"A\": \"{0:#count} entry|entries\"")]
    public void What_is_wrong_in_English_fails_the_build_at_its_line(string fault, string line)
    {
        var twice = fault == "TEXT002" && line.Contains("Twice", StringComparison.Ordinal) ? "\"Twice\": \"b\", " : "";
        var made = GeneratedTexts.Of(("/w/Words.en.json", $"{{\n{twice}{line}\n}}"));
        var told = Assert.Single(made.Faults);
        Assert.Equal(fault, told.Id);
        Assert.Equal(Microsoft.CodeAnalysis.DiagnosticSeverity.Error, told.Severity);
        Assert.Equal("/w/Words.en.json", told.Location.GetLineSpan().Path);
        Assert.Equal(1, told.Location.GetLineSpan().StartLinePosition.Line);
        Assert.Empty(made.Errors);
    }

    [Theory]
    [InlineData("TEXT008", "\"Entries\": \"1 Eintrag|{0} Einträge\", \"More\": \"mehr\"", 1)]
    [InlineData("TEXT009", "\"Entries\": \"Einträge\"", 1)]
    [InlineData("TEXT009", "\"Entries\": \"1 Eintrag|{0} Einträge am {1}\"", 1)]
    [InlineData("TEXT009", "\"Entries\": \"1 Eintrag|{1} Einträge\"", 1)]
    [InlineData("TEXT009", "\"Entries\": \"1 Eintrag|{0:count} Einträge\"", 1)]
    [InlineData("TEXT006", "\"Entries\": \"{0} Einträge\"", 1)]
    [InlineData("TEXT006", "\"Entries\": \"{0} Eintrag|{0} Einträge\"", 1)]
    [InlineData("TEXT004", "\"Entries\": \"1 Eintrag|{0 Einträge\"", 1)]
    [InlineData("TEXT003", "\"Entries\": \"\"", 1)]
    [InlineData("TEXT007", "", 0)]
    public void What_a_language_has_otherwise_than_English_fails_the_build_at_its_line(string fault, string line, int at)
    {
        var made = GeneratedTexts.Of(
            ("/w/Words.en.json", """{ "Entries": "1 entry|{0:#count} entries" }"""),
            ("/w/Words.de.json", $"{{\n{line}\n}}")
        );
        var told = Assert.Single(made.Faults);
        Assert.Equal(fault, told.Id);
        Assert.Equal("/w/Words.de.json", told.Location.GetLineSpan().Path);
        Assert.Equal(at, told.Location.GetLineSpan().StartLinePosition.Line);
        Assert.Empty(made.Errors);
    }

    [Theory]
    [InlineData("Words.json")]
    [InlineData("Words.en-NZ.json")]
    [InlineData("Words.de.json")]
    public void A_file_is_named_with_its_language_and_one_is_English(string name) =>
        Assert.Equal("TEXT010", Assert.Single(GeneratedTexts.Of((name, "{}")).Faults).Id);

    [Fact]
    public void Two_files_of_one_language_are_one_too_many() =>
        Assert.Equal("TEXT010", Assert.Single(GeneratedTexts.Of(("a/Words.en.json", "{}"), ("b/Words.en.json", "{}")).Faults).Id);
}
