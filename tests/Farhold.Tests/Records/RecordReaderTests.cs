using System.Text;

namespace Farhold.Tests.Records;

/// <summary>Broken inputs: each is a file in <c>cases/record</c> with a line beside it that says what it breaks.</summary>
public class RecordReaderTests
{
    private static readonly string Cases = Path.Combine(AppContext.BaseDirectory, "cases", "record");

    /// <param name="loaded">How many entries are read all the same; -1 where the file as a whole is refused.</param>
    [Theory]
    [InlineData("heart-rate-900", 2, 2, 125, "heartRate is 900; a number from 0 to 350 /min is expected")]
    [InlineData("mass-negative", 2, 2, 141, "massKg is -70; a number from 0.3 to 400 kg is expected")]
    [InlineData("number-huge", 2, 2, 125, "heartRate is 1e999")]
    [InlineData("number-as-text", 2, 2, 126, "heartRate has to be a number")]
    [InlineData("flag-as-word", 2, 2, 121, "pale has to be true or false")]
    [InlineData("word-unknown", 2, 2, 143, "bleeding is not one of none, oozing, active")]
    [InlineData("count-broken", 2, 2, 152, "a whole number from 0 to 100000 pieces is expected")]
    [InlineData("limb-and-region", 2, 2, 134, "exactly one of limb and region")]
    [InlineData("pressure-swapped", 2, 2, 139, "diastolic 120 is above systolic 80: swapped?")]
    [InlineData("field-missing", 2, 2, 1, "the field limb is missing")]
    [InlineData("field-twice", 2, 2, 128, "the same field is given twice")]
    [InlineData("field-twice-by-escape", 2, 2, 128, "the same field is given twice")]
    [InlineData("unknown-field-twice", 2, 2, 126, "the same field is given twice")]
    [InlineData("surrogate-alone", 2, 2, 114, "text holds an escape that stands for no character")]
    [InlineData("surrogate-in-amendment", 2, 2, 151, "a text holds an escape that stands for no character")]
    [InlineData("surrogate-in-unknown", 2, 2, 128, "a text holds an escape that stands for no character")]
    [InlineData("surrogate-in-name", 2, 2, 106, "a name holds an escape that stands for no character")]
    [InlineData("text-empty", 2, 2, 87, "by is a text of 1 to 64 characters")]
    [InlineData("instant-local", 2, 2, 25, "happened is no instant")]
    [InlineData("instant-no-such-day", 2, 2, 25, "happened is no instant")]
    [InlineData("instant-far", 2, 2, 25, "happened is no instant of the years 1900 to 2500")]
    [InlineData("interval-reversed", 2, 2, 69, "latest is before earliest")]
    [InlineData("interval-half", 2, 2, 24, "the field latest is missing")]
    [InlineData("help-not-between", 2, 2, 125, "the likely time has to lie between earliest and latest")]
    [InlineData("id-without-number", 2, 2, 8, "id is not a device id, a dash and a number from 1")]
    [InlineData("id-number-zero", 2, 2, 8, "id is not a device id")]
    [InlineData("id-number-huge", 2, 2, 8, "id is not a device id")]
    [InlineData("kind-a-number", 2, 2, 99, "kind has to be a word")]
    [InlineData("kind-missing", 2, 2, 1, "the field kind is missing")]
    [InlineData("gcs-out-of-range", 2, 2, 126, "eye is 5; a whole number from 1 to 4 points is expected")]
    [InlineData("distal-pulse-wrong", 2, 2, 128, "distalPulse names each limb once, as present or absent")]
    [InlineData("distal-pulse-twice", 2, 2, 149, "distalPulse names each limb once")]
    [InlineData("list-of-numbers", 2, 2, 153, "allergies is a list of texts")]
    [InlineData("replace-a-text", 2, 2, 141, "replace has to be an object of fields")]
    [InlineData("nested-17", 2, 2, 139, "this is not JSON: The maximum configured depth of 16 has been exceeded")]
    [InlineData("fields-201", 2, 2, 2031, "an entry has at most 200 fields")]
    [InlineData("array-not-object", 2, 2, 1, "an entry is a JSON object in braces")]
    [InlineData("two-on-a-line", 2, 2, 117, "this is not JSON")]
    [InlineData("single-quotes", 2, 2, 2, "this is not JSON")]
    [InlineData("comma-trailing", 2, 2, 117, "this is not JSON")]
    [InlineData("nan", 2, 2, 121, "this is not JSON")]
    [InlineData("utf8-broken", 2, 2, 115, "the text is not UTF-8 here")]
    [InlineData("utf8-surrogate", 2, 2, 115, "the text is not UTF-8 here")]
    [InlineData("utf8-overlong", 2, 2, 115, "the text is not UTF-8 here")]
    [InlineData("last-line-cut", 2, 3, 121, "the last line is cut off or broken, as when a phone dies while writing")]
    [InlineData("carriage-returns", 2, 2, 125, "heartRate is 900")]
    [InlineData("byte-order-mark", 2, 2, 125, "heartRate is 900")]
    [InlineData("blank-lines", 2, 5, 1, "the field wound is missing")]
    [InlineData("empty", -1, 1, 1, "the file is empty; a record begins with an entry of the kind casualty.opened")]
    [InlineData("only-blank", -1, 1, 1, "there is no entry in the file")]
    [InlineData("utf16-little", -1, 1, 1, "the file is UTF-16; save it as UTF-8")]
    [InlineData("utf16-big", -1, 1, 1, "the file is UTF-16; save it as UTF-8")]
    [InlineData("utf16-unmarked", -1, 1, 1, "the file is not text in UTF-8")]
    [InlineData("nul-bytes", -1, 1, 1, "the file is not text in UTF-8")]
    [InlineData("compressed", -1, 1, 1, "the file is compressed; unpack it first")]
    [InlineData("prose", -1, 1, 1, "this is not JSON")]
    public void A_broken_line_is_refused_where_it_breaks_and_the_others_are_read(
        string name,
        int loaded,
        int line,
        int column,
        string reason
    )
    {
        var read = RecordReader.Read(File.ReadAllBytes(Path.Combine(Cases, name + ".jsonl")), name);
        var refusal = read switch
        {
            Read<RecordFile>.Refused refused when loaded < 0 => refused.Refusals[0],
            Read<RecordFile>.Usable { Value: var file } when file.Entries.Length == loaded => Assert.Single(file.Damaged).Explained[0],
            _ => throw new InvalidOperationException(read.ToString()),
        };
        Assert.Contains(reason, refusal.Reason, StringComparison.Ordinal);
        Assert.Equal((line, column), (refusal.Line, refusal.Column));
    }

    [Fact]
    public void Every_case_says_what_it_breaks_and_is_tested()
    {
        var files = Directory.GetFiles(Cases, "*.jsonl").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal).ToArray();
        var tested = typeof(RecordReaderTests)
            .GetMethod(nameof(A_broken_line_is_refused_where_it_breaks_and_the_others_are_read))!
            .GetCustomAttributes(typeof(InlineDataAttribute), false)
            .Select(a => (string)((InlineDataAttribute)a).Data[0]!)
            .Order(StringComparer.Ordinal);
        Assert.Equal(files, tested);
        Assert.All(files, f => Assert.NotEmpty(File.ReadAllText(Path.Combine(Cases, f + ".txt")).Trim()));
    }

    [Fact]
    public void A_line_of_more_than_a_mebibyte_is_refused_and_the_others_are_read()
    {
        var text = new string('a', EntryReader.MaxLine);
        var file = Read($"{First}\n{{\"id\":\"a-2\",\"text\":\"{text}\"}}\n");
        Assert.Single(file.Entries);
        Assert.Contains("longer than 1048576 bytes", Assert.Single(file.Damaged).Refusals[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hundred_thousand_brackets_are_refused_without_harm()
    {
        var file = Read($"{First}\n{new string('[', 100_000)}\n{{\"a\":{new string('[', 100_000)}\n");
        Assert.Equal(2, file.Damaged.Length);
    }

    [Fact]
    public void A_file_of_nothing_but_damage_is_no_record() =>
        Assert.IsType<Read<RecordFile>.Refused>(
            RecordReader.Read(Encoding.UTF8.GetBytes(First + string.Concat(Enumerable.Repeat("\nx", 10_001))), "x")
        );

    /// <summary>Kinds and fields of newer versions stay as they are, byte for byte, and so do lines that can't be read.</summary>
    [Fact]
    public void What_is_read_is_written_back_byte_for_byte()
    {
        var text =
            First
            + "\n"
            + """{ "id" : "a-2", "happened":"2031-05-04T02:10:00.5+02:00","recorded":"2031-05-04T02:10:00Z","by":"Ane","kind":"note","text":"\u0061", "mood":{"x":[1.50,null]} }"""
            + "\n"
            + """{"id":"a-3","happened":"2031-05-04T02:10:00Z","recorded":"2031-05-04T02:10:00Z","by":"Ane","kind":"wound.stitched","threads":12}"""
            + "\n"
            + "{broken}\n";
        var file = Read(text);
        using var stream = new MemoryStream();
        RecordReader.Write(stream, file.Entries, file.Damaged);
        Assert.Equal(text, Encoding.UTF8.GetString(stream.ToArray()));
        Assert.Equal(new Payload.OfNewerVersion("wound.stitched"), file.Entries[2].Payload);
    }

    /// <summary>An escape is only another way to write a character: it can hide neither a field nor what an entry is.</summary>
    [Fact]
    public void Escapes_in_names_and_words_mean_what_they_stand_for()
    {
        var entry = Read(
            """{"\u0069d":"a-1","happened":"2031-05-04T02:10:00\u005a","recorded":"2031-05-04T02:10:00Z","by":"Ane","kind":"bleeding\u002echecked","wound":"w1","bl\u0065eding":"\u0061ctive"}"""
        ).Entries[0];
        Assert.Equal(new Payload.BleedingChecked("w1", Bleeding.Active), entry.Payload);
    }

    [Fact]
    public void A_field_that_is_null_is_not_given() =>
        Assert.Equal(
            new Payload.SignsTaken { Pale = true },
            Read(
                """{"id":"a-1","happened":"2031-05-04T02:10:00Z","recorded":"2031-05-04T02:10:00Z","by":"Ane","kind":"signs.taken","heartRate":null,"pale":true,"mental":null}"""
            )
                .Entries[0]
                .Payload
        );

    private const string First =
        """{"id":"a-1","happened":"2031-05-04T02:00:00Z","recorded":"2031-05-04T02:00:00Z","by":"Ane","kind":"casualty.opened","alias":"Runa"}""";

    private static RecordFile Read(string text) => ((Read<RecordFile>.Usable)RecordReader.Read(Encoding.UTF8.GetBytes(text), "x")).Value;
}
