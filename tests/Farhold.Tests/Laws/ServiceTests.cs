using System.Collections.Immutable;
using System.Text.Json.Nodes;
using CsCheck;
using Farhold.Tests.Protocols;

namespace Farhold.Tests.Laws;

/// <summary>What a service says of itself moves no verdict, but for who may allow what, and that only to the stricter side.</summary>
public class ServiceTests
{
    private static readonly string[] Offices = ["duty physician", "medical lead", "team leader"];

    private static readonly string[] Acts = [.. AllowanceWords.Acts(ShippedProtocol.Protocol)];

    private static readonly Gen<ImmutableArray<Allowance>> Lists = Gen.Select(
            Gen.OneOf(Offices),
            Gen.Frequency((1, Gen.Const(AllowedActs.Attempt)), (3, Gen.OneOf(Acts))).Array[0, 3],
            (office, acts) => new Allowance(office, [.. acts], [])
        )
        .Array[0, 3]
        .Select(list => list.ToImmutableArray());

    private static readonly Gen<(Payload.AdviceReceived What, int Ago)[]> Advice = Gen.Select(
        Gen.OneOf<string?>([null, "nurse", .. Offices]),
        Gen.Int[0, 7],
        Gen.Int[-30, 60],
        Gen.Int[0, 240],
        (office, which, until, ago) =>
            (
                new Payload.AdviceReceived(
                    "Dr Vann",
                    "so",
                    which == 0 ? [] : [Payload.AdviceReceived.AllowsAttempt],
                    Until: which == 1 ? Case.Now + Duration.FromMinutes(until) : null,
                    Authority: office
                ),
                ago
            )
    ).Array[1, 4];

    [Fact]
    public void A_list_of_who_may_allow_what_never_makes_a_verdict_milder()
    {
        var stricter = 0;
        Gen.Select(Gens.Record, Advice, Lists)
            .Sample(
                (written, advice, list) =>
                {
                    var record = new Written(
                        [
                            .. written.Entries,
                            .. advice.Select(
                                (a, i) =>
                                    EntryWriting.Write(
                                        new("adv", i + 1),
                                        Happened.At(written.Now - Duration.FromMinutes(a.Ago)),
                                        written.Now,
                                        "Ane",
                                        a.What with
                                        {
                                            Until = a.What.Until is { } until ? written.Now + (until - Case.Now) : null,
                                        }
                                    )
                            ),
                        ],
                        written.Damaged,
                        written.Now
                    );
                    var shipped = ShippedProtocol.Protocol;
                    var without = record.Judged().Limbs.ToDictionary(l => l.Limb);
                    foreach (var limb in record.Judged(shipped with { Advice = shipped.Advice with { Allowances = list } }).Limbs)
                    {
                        // A limb that only waited for another may go first where the other may not be tried.
                        if (without[limb.Limb].Findings.Any(f => f.Criterion.Id == "limbs.one" && f.Against != Truth.NotMet))
                            continue;
                        Assert.True(limb.Verdict >= without[limb.Limb].Verdict, $"{limb.Verdict} after {without[limb.Limb].Verdict}");
                        if (limb.Verdict > without[limb.Limb].Verdict)
                            Interlocked.Increment(ref stricter);
                    }
                },
                iter: Gens.Cases(2_500),
                print: p => $"{string.Join(", ", p.Item3)}\n{string.Join(", ", p.Item2.Select(a => $"{a.What} {a.Ago}"))}\n{p.Item1}"
            );
        Assert.True(stricter >= Gens.Cases(20), $"only {stricter} stricter");
    }

    [Fact]
    public void Contacts_numbers_names_and_words_move_no_verdict() =>
        Gen.Select(Gens.Record, Service)
            .Sample(
                (written, service) =>
                {
                    var laid = LocalFile.Accepted($"{LocalFile.Head}{Json(service)}}}");
                    Assert.Equal(
                        written.Judged().Limbs.Select(l => (l.Limb, l.Verdict)),
                        written.Judged(laid).Limbs.Select(l => (l.Limb, l.Verdict))
                    );
                },
                iter: Gens.Cases(500),
                print: p => $"{Json(p.Item2)}\n{p.Item1}"
            );

    [Fact]
    public void What_is_written_is_read() =>
        Service.Sample(
            service =>
            {
                var read = LocalFile.Accepted($"{LocalFile.Head}{Json(service)}}}").Local!.Service;
                Assert.Equal(Json(service), Json(read));
                Assert.Equal(service.StockNames, read.StockNames);
                Assert.Equal(service.Words, read.Words);
                Assert.Equal(service.Emergency, read.Emergency);
            },
            iter: Gens.Cases(500),
            print: Json
        );

    private static readonly Gen<string> Name = Gen.Char["xyzåøé"].Array[2, 12].Select(cs => $"x{new string(cs)}");

    private static readonly Gen<string> Number = Gen.Select(
        Gen.Bool,
        Gen.Char["0123456789"].Array[3, 12],
        (plus, digits) => (plus ? "+" : "") + new string(digits)
    );

    private static readonly Gen<ContactWay> Way = Gen.Select(
        Gen.OneOf(Enum.GetValues<ContactChannel>()),
        Name,
        Number,
        (by, name, number) => by == ContactChannel.Radio ? new ContactWay(by, name, number.TrimStart('+')) : new(by, number, null)
    );

    private static readonly Gen<ContactHours?> Hours = Gen.Select(
        Gen.OneOf("Europe/Oslo", "Pacific/Auckland", "UTC"),
        Gen.Select(Gen.Int[1, 127], Gen.Int[0, 1438], Gen.Int[1, 1439])
            .Where(h => h.Item2 != h.Item3)
            .Select(h => new OpenHours(
                [.. ContactWords.Week.Where((_, i) => (h.Item1 & (1 << i)) != 0)],
                new(h.Item2 / 60, h.Item2 % 60),
                new(h.Item3 / 60, h.Item3 % 60)
            ))
            .Array[0, 3],
        (zone, open) => open.Length == 0 ? null : new ContactHours(DateTimeZoneProviders.Tzdb[zone], [.. open])
    );

    private static readonly Gen<LocalService> Service = Gen.Select(
        Gen.Select(Name, Name, Way.Array[1, 3], Hours, (name, role, ways, hours) => new Contact(name, role, [.. ways], hours)).Array[0, 3],
        Gen.Select(Name, Number, (name, number) => new EmergencyNumber(name, number)).Array[0, 2],
        Gen.Select(Gen.OneOf("cloth", "plain-gauze", "paracetamol", "meloxicam"), Name).Array[0, 3],
        Gen.Select(Gen.OneOf(Enum.GetValues<Term>()), Name).Array[0, 3],
        (contacts, emergency, names, words) =>
            new LocalService(
                [.. contacts],
                [.. emergency],
                names
                    .DistinctBy(n => n.Item1)
                    .DistinctBy(n => n.Item2)
                    .ToImmutableSortedDictionary(n => n.Item1, n => n.Item2, StringComparer.Ordinal),
                words.DistinctBy(w => w.Item1).ToImmutableSortedDictionary(w => w.Item1, w => w.Item2)
            )
    );

    /// <summary>As members of a local protocol, from a comma on.</summary>
    private static string Json(LocalService service)
    {
        var root = new JsonObject
        {
            ["contacts"] = new JsonArray([.. service.Contacts.Select(Json)]),
            ["emergency"] = new JsonArray([.. service.Emergency.Select(e => new JsonObject { ["name"] = e.Name, ["number"] = e.Number })]),
            ["names"] = new JsonObject(service.StockNames.Select(n => KeyValuePair.Create(n.Key, (JsonNode?)n.Value))),
            ["words"] = new JsonObject
            {
                ["terms"] = new JsonObject(service.Words.Select(w => KeyValuePair.Create(Wire.Word(w.Key), (JsonNode?)w.Value))),
            },
        };
        return "," + root.ToJsonString().TrimStart('{')[..^1];
    }

    private static JsonNode Json(Contact contact)
    {
        var json = new JsonObject
        {
            ["name"] = contact.Name,
            ["role"] = contact.Role,
            ["ways"] = new JsonArray([
                .. contact.Ways.Select(w =>
                    w.On is { } channel
                        ? new JsonObject
                        {
                            ["by"] = Wire.Word(w.By),
                            ["callSign"] = w.To,
                            ["channel"] = channel,
                        }
                        : new JsonObject { ["by"] = Wire.Word(w.By), ["number"] = w.To }
                ),
            ]),
        };
        if (contact.Hours is not { } hours)
            return json;
        json["zone"] = hours.Zone.Id;
        json["open"] = new JsonArray([
            .. hours.Open.Select(o => new JsonObject
            {
                ["days"] = new JsonArray([.. o.Days.Select(d => (JsonNode)ContactWords.Day(d))]),
                ["from"] = TimeText.Clock(o.From),
                ["to"] = TimeText.Clock(o.To),
            }),
        ]);
        return json;
    }
}
