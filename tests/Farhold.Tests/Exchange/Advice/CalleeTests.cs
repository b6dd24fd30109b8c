using Farhold.Exchange.Advice;
using Farhold.Exchange.HandOver;
using Farhold.Tests.Protocols;

namespace Farhold.Tests.Exchange.Advice;

/// <summary>Whom to call, as the service says it, for the question that is asked.</summary>
public class CalleeTests
{
    /// <summary>Judged at 12:00 UTC, 14:00 in Oslo.</summary>
    private static readonly Protocol Laid = LocalFile.Accepted(
        LocalFile.Head
            + """
            ,"contacts":[
              {"name":"Ward","role":"nurse","ways":[{"by":"phone","number":"0101"}],
                "zone":"Europe/Oslo","open":[{"from":"08:00","to":"14:00"}]},
              {"name":"Hut","role":"team leader","ways":[{"by":"radio","callSign":"Hut base","channel":"5"}]},
              {"name":"Doctor","role":"duty physician","ways":[{"by":"satellite","number":"+881 22"}],
                "zone":"Europe/Oslo","open":[{"from":"13:00","to":"15:00"}]}],
            "emergency":[{"name":"Centre","number":"0112"}],
            "mayAllow":[{"role":"duty physician","allows":["attempt"],"drugs":["paracetamol"]},
              {"role":"team leader","allows":["shock.pale"]}],
            "names":{"paracetamol":"White strip","plain-gauze":"Flat pack"},"words":{"terms":{"litter":"sledge"} } }
            """
    );

    [Fact]
    public void Those_who_can_be_reached_now_and_whose_yes_counts_come_first()
    {
        var call = Call(Case.Well.TightFor("04:00"), AskFor.Late);
        Assert.Equal(
            [
                "Doctor, duty physician: satellite phone +881 22; open now, until 13:00 UTC, in 1 h 00 min; their yes counts for this",
                "Hut, team leader: radio, channel 5, call Hut base; at any hour; their yes does NOT count for this",
                "Ward, nurse: phone 0101; CLOSED now, opens 5 May 06:00 UTC, in 18 h 00 min; their yes does NOT count for this",
                "Emergency: Centre, 0112",
                "Only a yes from the duty physician counts for an attempt after 2 h 00 min",
                "They say: \"sledge\" is litter",
            ],
            call.Whom
        );
    }

    [Fact]
    public void Whose_yes_counts_hangs_on_the_question()
    {
        var pale = Call(Case.Well.Signs(s => s with { Pale = true }), AskFor.SoftSign);
        Assert.Equal(["Hut", "Doctor", "Ward"], pale.Callees.Select(c => c.Contact.Name));
        Assert.EndsWith("counts for this", pale.Callees[0].Line, StringComparison.Ordinal);
        Assert.DoesNotContain("NOT", pale.Callees[0].Line, StringComparison.Ordinal);
        var drug = Call(Case.Well, AskFor.Drug, "white strip");
        Assert.Contains("Whom to ask about paracetamol: the duty physician", drug.Whom);
        Assert.DoesNotContain(Call(Case.Well, AskFor.Drug, "rum").Whom, line => line.Contains("yes", StringComparison.Ordinal));
        Assert.DoesNotContain(Call(Case.Well, AskFor.Attempt).Callees, c => c.Line.Contains("yes", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_local_protocol_nobody_is_named()
    {
        var facts = CareFacts.Of(Case.Well.Record, ShippedRules.Book, Case.Now);
        Assert.Empty(new AdviceCall(facts, AdviceQuestion.Offered(facts)[0], DateTimeZone.Utc).Whom);
    }

    [Fact]
    public void What_is_on_the_box_is_said_with_what_is_at_hand() =>
        Assert.Contains(
            "Supplies: 3 plain gauze (Ane); on the box: \"Flat pack\"",
            Call(Case.Well, AskFor.Attempt).Form.Text(),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_yes_that_does_not_count_for_all_is_read_back_as_such()
    {
        var yes = new Payload.AdviceReceived("Bo", "go on", [Payload.AdviceReceived.AllowsAttempt], Authority: "team leader");
        Assert.Contains(
            ReadBack.Of(yes, null, Laid, Case.Now, DateTimeZone.Utc),
            line => line.StartsWith("The yes of Bo, team leader, counts by the local protocol for this alone", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            ReadBack.Of(yes with { Authority = "Duty physician" }, null, Laid, Case.Now, DateTimeZone.Utc),
            line => line.Contains("counts", StringComparison.Ordinal)
        );
    }

    private static AdviceCall Call(Case scene, AskFor kind, string? text = null)
    {
        var facts = CareFacts.Of(scene.Record, ShippedRules.Book.By(Laid), Case.Now);
        return new(facts, AdviceQuestion.Named(facts, kind, null, text)!, DateTimeZone.Utc);
    }
}
