using System.Text.Json;
using Farhold.Tests.Protocols;

namespace Farhold.Tests.Verdicts;

/// <summary>What a machine finds in a judgement: every name that a reader may rely on, and the values that the judgement has.</summary>
public class JudgementJsonTests
{
    private static readonly Case Bled = Case.Well.And(
        "00:30",
        new Payload.AttemptStarted("w1", "t1"),
        new Payload.AttemptEnded("w1", "t1", AttemptOutcome.Bled)
    );

    private static readonly Case Late = Case
        .Well.With("person", new Payload.CasualtyOpened("Runa", AgeYears: 34), "10:00")
        .TightFor("10:00");

    private static readonly Case Unseen = Late.Signs(s => s with { Mental = null });

    [Theory]
    [InlineData("", "at protocol limbs watched shock due withheld damaged doubts remarks")]
    [InlineData("protocol", "id version hash warnings local")]
    [InlineData(
        "limbs",
        "limb tourniquets verdict tight firstTightened sinceFirstTightened occluded currentStretch criteria checkFirst act changes "
            + "lookAgain cautions next"
    )]
    [InlineData("limbs.sinceFirstTightened", "min max")]
    [InlineData("limbs.criteria", "id role state used text source")]
    [InlineData("limbs.criteria.used", "input value age stale")]
    [InlineData("limbs.next", "at what")]
    [InlineData("shock", "state signs")]
    [InlineData("shock.signs", "id role state used text source")]
    public void A_judgement_holds_these_names(string place, string names) =>
        Assert.Equal(names.Split(' ').Order(StringComparer.Ordinal), Names(Root(Bled), place).Order(StringComparer.Ordinal));

    /// <summary>The same, where nobody looked at the mental state, in the late hours.</summary>
    [Theory]
    [InlineData("limbs.criteria", "id role state used needs text source")]
    [InlineData("due", "at task overdue limb text reason lookFirst people source")]
    public void Where_something_is_unknown_what_it_needs_is_named_too(string place, string names) =>
        Assert.Equal(names.Split(' ').Order(StringComparer.Ordinal), Names(Root(Unseen), place).Order(StringComparer.Ordinal));

    [Fact]
    public void What_must_not_be_done_now_is_named() =>
        Assert.Equal(
            ["task", "text"],
            Names(Root(Late.Signs(s => s with { Mental = Mental.Voice })), "withheld").Order(StringComparer.Ordinal)
        );

    [Fact]
    public void A_local_protocol_and_why_another_is_refused_are_named_in_whole_JSON()
    {
        var laid = Assert
            .IsType<Read<Protocol>.Usable>(
                LocalFile.Read(
                    """
                    {"local":"hut","version":"1","title":"Of the hut","over":"farhold-base","clock":{"window":"PT3H"}}
                    """
                )
            )
            .Value;
        var judged = Judge.At(Case.Well.Record, ShippedRules.Book.By(laid), Case.Now);
        var root = JsonDocument.Parse(JudgementJson.Write(judged, [new("hut.json", 2, 3, "too old")])).RootElement;
        var protocol = root.GetProperty("protocol");
        Assert.Equal(["hash", "id", "local", "refused", "version", "warnings"], Names(protocol, "").Order(StringComparer.Ordinal));
        Assert.Equal(
            ["authority", "date", "hash", "id", "issuer", "loosened", "standing", "version"],
            Names(protocol, "local").Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            laid.Local!.Loosened,
            protocol.GetProperty("local").GetProperty("loosened").EnumerateArray().Select(l => l.GetString()!)
        );
        Assert.Equal("hut.json:2:3: too old", protocol.GetProperty("refused")[0].GetString());
        Assert.Equal(judged.Limbs.Length, root.GetProperty("limbs").GetArrayLength());
    }

    [Fact]
    public void Values_are_those_of_the_judgement()
    {
        var (judged, root) = (Bled.Judgement, Root(Bled));
        var (limb, json) = (judged.Limbs.Single(), root.GetProperty("limbs")[0]);
        Assert.Equal(WrittenInstant.Write(judged.At), root.GetProperty("at").GetString());
        Assert.Equal(judged.Protocol.Hash, root.GetProperty("protocol").GetProperty("hash").GetString());
        Assert.Equal(
            (Wire.Word(limb.Verdict), limb.Act.Said(), WrittenInstant.Write(limb.Act.LookAgain)),
            (json.GetProperty("verdict").GetString(), json.GetProperty("act").GetString(), json.GetProperty("lookAgain").GetString())
        );
        Assert.Equal(
            limb.Findings.Select(f => $"{f.Criterion.Id} {Wire.Word(f.State)}"),
            json.GetProperty("criteria")
                .EnumerateArray()
                .Select(c => $"{c.GetProperty("id").GetString()} {c.GetProperty("state").GetString()}")
        );
        Assert.Equal(
            judged.Due.Select(d => d.Task),
            root.GetProperty("due").EnumerateArray().Select(d => d.GetProperty("task").GetString())
        );
        Assert.False(root.GetProperty("damaged").GetBoolean());
    }

    [Fact]
    public void A_limb_whose_tourniquet_was_let_out_is_under_watched_with_its_attempt()
    {
        var root = Root(Case.Well.And("00:20", new Payload.AttemptStarted("w1", "t1")).And("00:05", new Payload.TourniquetSlackened("t1")));
        Assert.Equal(
            [
                "attempt",
                "bleeding",
                "currentStretch",
                "firstTightened",
                "limb",
                "loosened",
                "occluded",
                "sinceFirstTightened",
                "tight",
                "tourniquets",
            ],
            Names(root, "watched").Order(StringComparer.Ordinal)
        );
        Assert.Equal("w1", root.GetProperty("watched")[0].GetProperty("attempt").GetProperty("wound").GetString());
    }

    [Fact]
    public void A_doubt_and_a_remark_are_named()
    {
        var judged = Judge.At(
            new CareRecord(Case.Well.Record.Entries, [new(4, new("{"u8.ToArray()), [new("x", 4, 1, "cut off")])]),
            ShippedRules.Book,
            Case.Now
        );
        var root = JsonDocument.Parse(Some.Json(judged)).RootElement;
        Assert.True(root.GetProperty("damaged").GetBoolean());
        Assert.Equal(
            judged.Doubts.Select(d => (d.Id, d.Text)),
            root.GetProperty("doubts").EnumerateArray().Select(d => (d.GetProperty("id").GetString()!, d.GetProperty("text").GetString()!))
        );
        var odd = Case.Well.And("00:01", new Payload.EntryWithdrawn(new("zzz", 9), "never there")).Judgement;
        Assert.Equal(
            Assert.Single(odd.Remarks).Text,
            JsonDocument.Parse(Some.Json(odd)).RootElement.GetProperty("remarks")[0].GetProperty("text").GetString()
        );
    }

    private static JsonElement Root(Case scene) => JsonDocument.Parse(Some.Json(scene.Judgement)).RootElement;

    /// <summary>All names of the objects at a place, lists walked through.</summary>
    private static string[] Names(JsonElement at, string place)
    {
        var found = Each(at);
        foreach (var step in place.Split('.', StringSplitOptions.RemoveEmptyEntries))
            found = [.. found.SelectMany(e => e.TryGetProperty(step, out var next) ? Each(next) : [])];
        return [.. found.SelectMany(e => e.EnumerateObject().Select(p => p.Name)).Distinct()];
    }

    private static JsonElement[] Each(JsonElement one) => one.ValueKind == JsonValueKind.Array ? [.. one.EnumerateArray()] : [one];
}
