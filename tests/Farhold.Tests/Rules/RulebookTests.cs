using System.Text;
using Farhold.Exchange.Calendar;
using Farhold.Exchange.Card;
using Farhold.Exchange.HandOver;
using Farhold.Exchange.Message;
using Farhold.Exchange.Spreadsheet;
using Farhold.Tests.Protocols;

namespace Farhold.Tests.Rules;

/// <summary>One value carries the rules: what a local protocol changes shows in every output that is handed it, and in no other.</summary>
/// <remarks>FHIR and the printed card are asked in <c>Farhold.Documents.Tests</c>, the hub's in <c>Farhold.Hub.Tests</c>.</remarks>
public class RulebookTests
{
    private const string Shelter = "Keep out of the wind, by the hut's book";

    private static readonly Rulebook Hut = ShippedRules.Book.By(
        LocalFile.Accepted(
            $$"""
            {{LocalFile.Head}}{{LocalFile.Authorised}}
            ,"clock":{"window":"PT3H","limit":"PT5H"},"orders":["paracetamol"],
            "tasks":[{"id":"hut.shelter","scope":"casualty","text":"{{Shelter}}.","every":"PT2H","unstable":"PT1H",
              "doneBy":["task.done"],"sources":["hut"]},
             {"id":"drink","scope":"casualty","text":"Sips only.","every":"PT30M","unstable":"PT15M","doneBy":["fluid.given"],"sources":["hut"]}]}
            """
        )
    );

    private static readonly Case Casualty = Drugs
        .Ordered.Casualty(34, 70, Sex.Female, "not pregnant, otherwise healthy")
        .And("00:01", new Payload.TaskDone("tetanus"));

    public static TheoryData<string, string> Outputs =>
        new()
        {
            { "tell", Shelter },
            { "tell as JSON", Shelter },
            { "replay", "Of the hut" },
            { "care plan", Shelter },
            { "roster", Shelter },
            { "calendar", "limit in 2 h 20 min" },
            { "limb line", "4 h 20 min left" },
            { "dose", "Dr Vigdis Holm" },
            { "supplies", "every PT30M" },
            { "trip", "Of the hut" },
            { "card", "Of the hut" },
            { "short message", ";DOUBT" },
            { "signs table", "LOOSENED" },
            { nameof(FormKind.Radio), "LOOSENED" },
            { nameof(FormKind.Sbar), "LOOSENED" },
            { nameof(FormKind.Atmist), "LOOSENED" },
        };

    [Theory, MemberData(nameof(Outputs))]
    public void A_local_protocol_reaches_every_output(string output, string mark)
    {
        Assert.Contains(mark, Said(output, Hut), StringComparison.Ordinal);
        Assert.DoesNotContain(mark, Said(output, ShippedRules.Book), StringComparison.Ordinal);
    }

    [Fact]
    public void So_does_another_kit_list()
    {
        var kit = ShippedRules.Book.Kit;
        var lighter = kit with { Items = [.. kit.Items.Select(i => i.Id == "water-ml" ? i with { Name = "melted snow" } : i)] };
        var rules = new Rulebook(
            ShippedRules.Book.Protocol,
            () => ShippedRules.Book.Formulary,
            () => lighter,
            _ => ShippedRules.Book.WarningSigns
        );
        Assert.Contains(Outlook(rules).Items, i => i.Item.Name == "melted snow");
        Assert.Contains(TripCheck.Of(TripPlan.Empty, rules, false), l => l.Text.Contains("elted snow", StringComparison.Ordinal));
        Assert.DoesNotContain(Outlook(ShippedRules.Book).Items, i => i.Item.Name == "melted snow");
    }

    [Fact]
    public void So_does_another_formulary()
    {
        var formulary = ShippedRules.Book.Formulary;
        var fewer = formulary with { Drugs = [.. formulary.Drugs.Where(d => d.Id != "paracetamol")] };
        var rules = new Rulebook(ShippedRules.Book.Protocol, () => fewer, () => ShippedKit.Kit, _ => ShippedRules.Book.WarningSigns);
        var given = Casualty
            .And("00:20", new Payload.DrugGiven("paracetamol", 500, "mg", "mouth"))
            .And("00:10", new Payload.DrugGiven("acetaminophen", 500, "mg", "mouth"))
            .Record;
        Assert.Single(CareFacts.Of(given, ShippedRules.Book, Case.Now).DrugSums);
        Assert.Equal(2, CareFacts.Of(given, rules, Case.Now).DrugSums.Length);
    }

    [Fact]
    public void Warning_signs_go_by_the_clock_of_the_local_protocol()
    {
        var asked = new List<ClockLimits>();
        var shipped = ShippedRules.Book;
        var rules = new Rulebook(shipped.Protocol, () => shipped.Formulary, () => shipped.Kit, By);
        _ = rules.WarningSigns;
        _ = rules.By(Hut.Protocol).WarningSigns;
        _ = rules.By(rules.Protocol with { Title = "The same clock" }).WarningSigns;
        Assert.Equal([shipped.Protocol.Clock, Hut.Protocol.Clock], asked);

        WarningRules By(ClockLimits clock)
        {
            asked.Add(clock);
            return ShippedWarningSigns.By(clock);
        }
    }

    [Fact]
    public void A_protocol_in_the_place_of_the_shipped_one_is_told_as_such()
    {
        Assert.True(ShippedRules.Book.IsShipped);
        Assert.True(Hut.IsShipped);
        Assert.False(ShippedRules.Book.By(ShippedRules.Book.Protocol with { Hash = "other" }).IsShipped);
    }

    private static SupplyOutlook Outlook(Rulebook rules) =>
        SupplyOutlook.Of(
            Casualty.And("00:30", new Payload.SuppliesStated("rehydration-sachet", 6)).Record,
            rules,
            new Surroundings(2, null, Work.Rest),
            Case.Now
        );

    private static string Said(string output, Rulebook rules)
    {
        var (record, now) = (Casualty.Record, Case.Now);
        var judged = Judge.At(record, rules, now);
        var facts = CareFacts.Of(record, rules, now);
        switch (output)
        {
            case "tell":
                return JudgementText.Of(judged);
            case "tell as JSON":
                return Encoding.UTF8.GetString(JudgementJson.Write(judged)).Replace("\\u0027", "'", StringComparison.Ordinal);
            case "replay":
                using (var text = new StringWriter())
                {
                    ReplayText.Write(record, rules, now, [], text);
                    return text.ToString();
                }

            case "care plan":
                return string.Join('\n', judged.Plan.Select(p => p.Task.Text));
            case "roster":
                var watches = Roster.Of(["Ane", "Jon"], now, now + Duration.FromHours(8));
                var roster = TaskRoster.Of(judged, ["Ane", "Jon"], watches, Rhythm.None, now + Duration.FromHours(8));
                return string.Join('\n', roster.Tasks.Select(t => t.Due.Text));
            case "calendar":
                return string.Join(
                    '\n',
                    DueCalendar.Of(judged, "c1", null).Select(i => $"{i.Uid.Split('.')[0]} limit in {Say.Duration(i.At - now)}")
                );
            case "limb line":
                return LimbLineText.Describe(LimbPicture.Of(Limb.LeftLeg, record.Readings[0], judged.Protocol, now)!);
            case "dose":
                var drug = rules.Formulary.Named("paracetamol")!;
                return string.Join('\n', DoseWords.Of(drug, Dosing.Of(drug, record, judged), rules.Formulary));
            case "supplies":
                var rate = Outlook(rules).Items.Single(i => i.Item.Id == "rehydration-sachet").Rate;
                return $"every {(rate.Planned!.Value.High > 0.45 ? "PT30M" : "longer")}";
            case "trip":
                return string.Join('\n', TripCheck.Of(TripPlan.Empty, rules, false).Select(l => l.Text));
            case "card":
                return string.Join('\n', CardSheet.Of(record, rules, now, DateTimeZone.Utc).Parts.SelectMany(p => p.Texts));
            case "short message":
                return ShortMessage.Of(facts).Text;
            case "signs table":
                return SignsTable.Write(facts) + string.Join('\n', facts.Cautions);
            default:
                return Forms.Of(Enum.Parse<FormKind>(output), facts, DateTimeZone.Utc).Text();
        }
    }
}
