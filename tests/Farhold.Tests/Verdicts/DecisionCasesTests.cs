namespace Farhold.Tests.Verdicts;

/// <summary>The worked cases that go with the rules of the decision, each with its source in the table.</summary>
public class DecisionCasesTests
{
    public static TheoryData<string> Ids => [.. DecisionCase.All.Select(c => c.Id)];

    /// <summary>What the first thing due has to say, in the order of the words.</summary>
    private static readonly Dictionary<string, string> FirstDue = new()
    {
        ["DC01"] = "has it stopped",
        ["DC02"] = "expose the wound*second tourniquet loosely above*pack",
        ["DC04"] = "second tourniquet*improvised*loosely above*pack",
        ["DC05"] = "begin now*window closes",
        ["DC07"] = "ask for advice",
        ["DC08"] = "cautions of a late release*before release*pack",
        ["DC10"] = "before release*second tourniquet loosely above",
        ["DC11"] = "grave caution*fluids and watch ready*expose*second tourniquet*pack",
        ["DC13"] = "leave it tight*no time left*tell the adviser",
        ["DC14"] = "limb cool*time*tell the receiving",
        ["DC16"] = "pain*ordered*expose*pack",
        ["DC17"] = "treat for shock*flat*warm*hidden bleeding",
        ["DC19"] = "treat for shock*bare the chest",
        ["DC20"] = "head injury*airway*Glasgow*pupils",
        ["DC22"] = "treat for shock",
        ["DC23"] = "to pack with*clean cloth*strips of clothing",
        ["DC25"] = "treat for shock",
        ["DC26"] = "lie flat*warm*pain*look again in ten minutes",
        ["DC28"] = "treat for shock",
        ["DC29"] = "ask for advice*warm*next look in ten minutes",
        ["DC31"] = "keep warm*limb in sight*pack",
        ["DC32"] = "expose*pack",
        ["DC34"] = "second look",
        ["DC35"] = "expose the wound*second tourniquet loosely above",
        ["DC37"] = "rate hides blood loss*pack",
        ["DC38"] = "refill on a warm finger*pressure",
        ["DC40"] = "expose the wound*second tourniquet loosely above",
        ["DC41"] = "treat for shock",
        ["DC43"] = "expose the wound*pack",
        ["DC44"] = "pain*ordered*look again in ten minutes",
        ["DC46"] = "left side*treat for shock*ask for advice",
        ["DC47"] = "groin*pack*press with your body weight",
        ["DC49"] = "ask for advice",
        ["DC50"] = "expose the wound*nothing by mouth",
        ["DC52"] = "bare the chest*sit up*ask for advice",
        ["DC53"] = "warm first*in sight",
        ["DC55"] = "ask for advice",
        ["DC56"] = "look over the whole casualty once",
        ["DC58"] = "pain*splint*high*re-site it",
        ["DC59"] = "expose*pack",
        ["DC61"] = "expose*pack",
        ["DC62"] = "tighten*second tourniquet beside",
        ["DC64"] = "second tourniquet loosely above",
        ["DC65"] = "has it stopped",
        ["DC67"] = "expose the wound*pack",
        ["DC68"] = "expose the wound*pack",
        ["DC70"] = "ask what comes*hands*clinic*surgery",
        ["DC71"] = "before release*pack",
        ["DC73"] = "the no stands*try again",
        ["DC74"] = "cautions of a late release*before release",
    };

    [Theory, MemberData(nameof(Ids))]
    public void The_verdict_is_that_of_the_table(string id)
    {
        var limb = Judged(id).Limbs.Single(l => l.Limb == Case(id).Limb);
        Assert.True(
            Case(id).Expected == limb.Verdict,
            $"{Case(id)}: {limb.Verdict}, because {string.Join("; ", limb.Reasons.Select(r => r.Criterion.Id))}"
        );
    }

    [Theory, MemberData(nameof(Ids))]
    public void The_first_thing_due_is_that_of_the_table(string id)
    {
        var first = Judged(id).Due[0];
        var pattern = ".*" + string.Join(".*", FirstDue[id].Split('*').Select(System.Text.RegularExpressions.Regex.Escape)) + ".*";
        Assert.Matches(
            new System.Text.RegularExpressions.Regex(pattern, System.Text.RegularExpressions.RegexOptions.IgnoreCase),
            first.Said()
        );
        Assert.Equal(id is "DC47" or "DC62", first.AtOnce);
    }

    [Theory, MemberData(nameof(Ids))]
    public void Every_answer_says_when_to_look_next_and_what_would_change_it(string id)
    {
        foreach (var limb in Judged(id).Limbs)
        {
            Assert.InRange(limb.Act.LookAgain, DecisionCase.Now, DecisionCase.Now + Duration.FromMinutes(15));
            Assert.NotEqual("", limb.Act.Text);
            if (limb.Verdict == Verdict.CheckFirst)
                Assert.True(!limb.CheckFirst.IsEmpty || !limb.Act.Changes.IsEmpty, id);
            var unchanging = limb.Reasons.All(r => r.Criterion.Id is "limit.time" or "wound.amputation" or "limit.start");
            if (limb.Verdict == Verdict.LeaveOn && !unchanging)
                Assert.NotEmpty(limb.Act.Changes);
        }
    }

    private static DecisionCase Case(string id) => DecisionCase.All.Single(c => c.Id == id);

    private static Judgement Judged(string id) => Judge.At(Case(id).Record, ShippedRules.Book, DecisionCase.Now);
}
