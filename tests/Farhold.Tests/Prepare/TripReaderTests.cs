using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using CsCheck;
using Json.Schema;

namespace Farhold.Tests.Prepare;

/// <summary>A trip in a file: read wholly or refused, and of the form that its schema says.</summary>
public class TripReaderTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Beside("plans", "trip.schema.json")));
    private static readonly string Shown = File.ReadAllText(Beside("demo", "skarvedal.trip.json"));

    [Fact]
    public void The_trip_of_the_demo_says_what_it_says()
    {
        var trip = Usable(Shown);
        Assert.Equal((3, 9.0, 3, 4500), (trip.Days, trip.HoursToHelp, trip.Party.Length, trip.Packed["water-ml"]));
        Assert.Equal(new PartyMember("Runa", "", false), trip.Party[2]);
        Assert.True(Fits(Shown));
    }

    [Fact]
    public void What_a_trip_leaves_out_nobody_said()
    {
        var trip = Usable("""{"route":" ","alarm":null}""");
        Assert.Equal((null, null, null, null), (trip.Route, trip.Alarm, trip.Days, trip.HoursToHelp));
        Assert.Equal((0, 0, 0), (trip.Party.Length, trip.Contacts.Length, trip.Packed.Count));
    }

    [Fact]
    public void What_is_written_is_read_back() =>
        Gen.Select(
                Gen.OneOf(null, "up \"there\"", "två\nrader"),
                Gen.Int[0, 60],
                Gen.Double[0, 240],
                Gen.Int[0, 4],
                Gen.Int[0, 20_000].Array[0, 6]
            )
            .Sample(
                (route, days, hours, people, packed) =>
                {
                    var trip = new TripPlan(
                        route,
                        days == 0 ? null : days,
                        hours < 20 ? null : hours,
                        route,
                        [.. Enumerable.Range(0, people).Select(i => new PartyMember($"P{i}", i == 0 ? "" : "cook", i > 1))],
                        route is null ? [] : [route],
                        ShippedKit.Kit.Items.Zip(packed).ToImmutableSortedDictionary(p => p.First.Id, p => p.Second, StringComparer.Ordinal)
                    );
                    var text = Encoding.UTF8.GetString(TripJson.Write(trip));
                    Assert.Equal(text, Encoding.UTF8.GetString(TripJson.Write(Usable(text))));
                    Assert.True(Fits(text));
                },
                iter: Gens.Cases(200)
            );

    [Fact]
    public void An_item_of_another_list_is_refused_only_where_a_list_is_given()
    {
        const string text = """{"packed":{"balloon":1}}""";
        Assert.Equal(1, Assert.IsType<Read<TripPlan>.Usable>(Read(text, null)).Value.Packed["balloon"]);
        Assert.IsType<Read<TripPlan>.Refused>(Read(text, ShippedKit.Kit));
    }

    [Fact]
    public void The_schema_never_refuses_a_trip_that_the_reader_accepts()
    {
        var (accepted, both) = (0, 0);
        JsonMutations
            .Of(Shown)
            .Sample(
                text =>
                {
                    var usable = Read(text, ShippedKit.Kit) is Read<TripPlan>.Usable;
                    Interlocked.Add(ref accepted, usable ? 1 : 0);
                    if (!usable && !Fits(text))
                        Interlocked.Increment(ref both);
                    return !usable || Fits(text);
                },
                iter: Gens.Cases(600),
                print: t => t
            );
        Assert.True(accepted >= Gens.Cases(100) && both >= Gens.Cases(100), $"{accepted} accepted, {both} refused by both");
    }

    [Theory]
    [InlineData("""{"days":1.5}""")]
    [InlineData("""{"days":61}""")]
    [InlineData("""{"hours":241}""")]
    [InlineData("""{"hours":"9"}""")]
    [InlineData("""{"route":7}""")]
    [InlineData("""{"party":{}}""")]
    [InlineData("""{"party":["Ane"]}""")]
    [InlineData("""{"party":[{"name":" "}]}""")]
    [InlineData("""{"party":[{"name":"Ane","practised":"yes"}]}""")]
    [InlineData("""{"contacts":[""]}""")]
    [InlineData("""{"packed":[]}""")]
    [InlineData("""{"packed":{"gloves":-1}}""")]
    [InlineData("""{"people":3}""")]
    public void An_error_of_form_is_refused_by_both(string text)
    {
        Assert.False(Fits(text));
        Assert.IsType<Read<TripPlan>.Refused>(Read(text, ShippedKit.Kit));
    }

    [Fact]
    public void Nobody_is_in_the_party_twice()
    {
        var refused = Assert.IsType<Read<TripPlan>.Refused>(Read("""{"party":[{"name":"Ane"},{"name":"Ane"}]}""", null));
        Assert.Contains(refused.Refusals, r => r.Reason == "Ane is in the party twice");
    }

    private static Read<TripPlan> Read(string text, KitList? kit) => TripReader.Read(Encoding.UTF8.GetBytes(text), "t.json", kit);

    private static TripPlan Usable(string text) => Assert.IsType<Read<TripPlan>.Usable>(Read(text, ShippedKit.Kit)).Value;

    private static bool Fits(string text)
    {
        using var document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    private static string Beside(string folder, string file) => Path.Combine(AppContext.BaseDirectory, folder, file);
}
