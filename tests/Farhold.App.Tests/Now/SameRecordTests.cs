using Farhold.App.Tests.Doubles;

namespace Farhold.App.Tests.Now;

/// <summary>Whatever language the buttons speak, what they write into the record is the same.</summary>
public class SameRecordTests : LimbTest
{
    public static TheoryData<string> Others => [.. Language.All.Select(l => l.Tag).Where(t => t != "en")];

    [Theory]
    [MemberData(nameof(Others))]
    public async Task The_same_taps_make_the_same_entries(string language)
    {
        await ReadyAsync();
        await TellAsync(1, new Payload.WoundFound("w2", null, BodyRegion.Chest, WoundNature.Other));
        var (english, other) = (Entries(Texts), Entries(LanguageFile.Texts(language)));
        Assert.True(english.Count > 150, $"{english.Count} choices");
        Assert.Equal(english.Select(e => e.Entry), other.Select(e => e.Entry));
        // And they are buttons of another language: nearly all say something else.
        Assert.InRange(english.Zip(other).Count(e => e.First.Text == e.Second.Text), 0, english.Count / 4);
    }

    [Theory]
    [MemberData(nameof(Others))]
    public async Task What_is_undone_or_withdrawn_says_so_in_the_words_of_the_record(string language)
    {
        await ReadyAsync();
        Assert.True(Texts.Take(language, LanguageFile.Fetched(language)!.Lines));
        await Logbook.LogAsync(new Payload.NoteWritten("calm"));
        await Toasts.UndoAsync();
        Assert.Equal("undone right after logging", Last<Payload.EntryWithdrawn>().Reason);
        Assert.Equal(
            ["Entered twice", "Did not happen", "Wrong casualty", "Slip of the finger"],
            Texts.WithdrawReasons.Select(r => r.Recorded)
        );
        Assert.DoesNotContain(Texts.WithdrawReasons, r => r.Shown == r.Recorded);
    }

    private List<(string Text, string Entry)> Entries(Texts texts)
    {
        var sheets = new QuickSheets(Care.Record!, Care.Picture!, texts);
        IEnumerable<Asked> asked =
        [
            .. Enum.GetValues<Quick>().Select(q => new Asked.Quickly(q)),
            .. Enum.GetValues<Limb>().Select(l => new Asked.OnLimb(l)),
            .. Enum.GetValues<BodyRegion>().Select(r => new Asked.InRegion(r, BodyFace.Front)),
        ];
        return
        [
            .. asked
                .SelectMany(a => sheets.For(a).Groups)
                .SelectMany(g => g.Options)
                .Select(o => (o.Text, EntryWriting.Body(Happened.At(Now), Now, "Ane", false, o.Says(Now)))),
        ];
    }
}
