using Farhold.App.Rehearse;

namespace Farhold.App.Tests.Rehearse;

public class KeptRunTests
{
    private static readonly KeptRun Run = new(
        "ravine",
        null,
        71,
        "Europe/Oslo",
        1234.5,
        RunsOn: true,
        PackedFor.PressedOnly,
        [new(3.5, "pulse", null), new(60, "bleeding", "w1")]
    );

    [Fact]
    public void What_is_kept_is_read_again()
    {
        var read = KeptRun.Read(Run.Write());
        Assert.NotNull(read);
        Assert.Equal(Run.Deeds, read.Deeds);
        Assert.Equal(Run with { Deeds = [] }, read with { Deeds = [] });
    }

    [Fact]
    public void A_lesson_is_read_again_with_who_did_what_and_what_was_seen()
    {
        var lesson = Lesson.New(" Ola Dahl, Bo ,, Bo").With(2, true).With(9, false);
        Assert.Equal(["Ola Dahl", "Bo"], lesson.People);
        var run = Run with { Lesson = lesson, Deeds = [new(9, "{\"act\":\"move\"}", null, "Bo"), new(10, "pulse", null)] };
        var read = KeptRun.Read(run.Write())!;
        Assert.Equal(run.Deeds, read.Deeds);
        Assert.Equal(lesson.People, read.Lesson!.People);
        Assert.Equal(
            [null, null, true, null, null, null, null, null, null, false],
            Enumerable.Range(0, Lesson.Items.Length).Select(read.Lesson.Saw)
        );
        Assert.Null(read.Lesson.With(2, null).Saw(2));
        Assert.Null((lesson with { Marks = "" }).Saw(3));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("[1]")]
    [InlineData("{\"v\":1")]
    [InlineData("{\"v\":2,\"scenario\":\"ravine\"}")]
    [InlineData(
        "{\"v\":1,\"scenario\":\"ravine\",\"file\":null,\"seed\":-1,\"zone\":null,\"at\":0,\"runsOn\":false,\"packed\":0,\"deeds\":[]}"
    )]
    public void What_is_spoilt_is_no_run(string kept) => Assert.Null(KeptRun.Read(kept));

    [Fact]
    public void Past_rehearsals_are_kept_and_spoilt_ones_forgotten()
    {
        var phone = new Doubles.FakePractice();
        var past = new PastRehearsals(phone);
        Assert.Empty(past.All);
        var one = new PastRehearsal("ravine", Instant.FromUtc(2031, 5, 4, 2, 0), PackedFor.Real, Mastered: true);
        past.Add(one);
        past.Add(one with { Scenario = "bridge", Mastered = false });
        Assert.Equal([one, one with { Scenario = "bridge", Mastered = false }], past.All);
        phone.Past = "{\"past\":[{\"scenario\":1}]}";
        Assert.Empty(past.All);
    }
}
