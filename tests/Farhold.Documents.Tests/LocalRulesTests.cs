using System.Text;
using Farhold.Documents.Card;
using Farhold.Documents.Fhir;
using Farhold.Documents.Tests.Card;
using Farhold.Exchange.Card;

namespace Farhold.Documents.Tests;

/// <summary>A local protocol reaches the documents: the card by what it says, FHIR by the entry that states the rules.</summary>
public class LocalRulesTests
{
    private static readonly Instant Now = Instant.FromUtc(2031, 5, 4, 3, 0);

    private static readonly Rulebook Hut = new LocalRules(
        """{"local":"hut","version":"1","title":"Of the hut","over":"farhold-base","clock":{"limit":"PT5H"}}"""u8.ToArray(),
        null,
        "hut.json",
        Proof.Emergency(Now),
        ShippedRules.Book
    ).LaidAt(Now)!;

    [Fact]
    public void The_card_names_it()
    {
        Assert.Contains("localprotocolhut1", Printed(Hut), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("localprotocolhut1", Printed(ShippedRules.Book), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Fhir_carries_which_rules_were_in_force()
    {
        Assert.Contains("hut 1", Written(Hut), StringComparison.Ordinal);
        Assert.DoesNotContain("hut 1", Written(ShippedRules.Book), StringComparison.Ordinal);
    }

    private static string Printed(Rulebook rules) =>
        Tool.Text(CardPdf.Write(CardSheet.Of(Record(), rules, Now, DateTimeZone.Utc), Paper.A4, Now));

    private static string Written(Rulebook rules) =>
        Encoding.UTF8.GetString(FhirDocument.Write(Record(RulesWords.Stated(rules.Protocol)), rules, Now));

    private static CareRecord Record(params Payload[] more)
    {
        Payload[] said = [new Payload.CasualtyOpened("Runa"), new Payload.TourniquetTightened("t1", Limb.LeftLeg), .. more];
        return new([.. said.Select((p, i) => EntryWriting.Write(new("a7k3", i + 1), Happened.At(Now), Now, "Ane", p))], []);
    }
}
