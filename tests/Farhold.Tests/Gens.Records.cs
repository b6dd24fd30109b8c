using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests;

/// <summary>Entries as they might lie on several phones, what can't be read among them, and the instant to judge at.</summary>
public sealed record Written(ImmutableArray<Entry> Entries, ImmutableArray<DamagedLine> Damaged, Instant Now)
{
    public CareRecord Record => new(Entries, Damaged);

    public Judgement Judged(Protocol? protocol = null) => Judge.At(Record, ShippedRules.Book.By(protocol ?? ShippedProtocol.Protocol), Now);

    /// <summary>For a failure's message: the lines.</summary>
    public override string ToString() =>
        string.Join('\n', [$"at {Now}", .. Entries.Select(e => e.Json.ToString()), .. Damaged.Select(d => d.Raw.ToString())]);
}

public static partial class Gens
{
    /// <summary>What the choices below are made from; each list is used from its start, over and over.</summary>
    private sealed record Choices(int[] Devices, int[] Delays, int[] Dropped, int[] Twisted);

    /// <summary>A casualty with one leg wound, all known and well, of whom an attempt could be asked; then things go astray.</summary>
    /// <remarks>
    /// Begins with statements that would mostly come to <c>attempt</c>, leaves some out, adds any others at any time (times
    /// to come too), spreads all over three devices, and writes each down somewhat later. Clocks run forward.
    /// </remarks>
    public static readonly Gen<Written> Record = Story(strange: false);

    /// <summary>
    /// The same, and then clocks run back, ids collide, numbers go missing, lines are damaged, entries amended and withdrawn.
    /// </summary>
    public static readonly Gen<Written> StrangeRecord = Story(strange: true);

    private static Gen<Written> Story(bool strange) =>
        Gen.Select(
            Gen.Int[8 * 60, 10 * 60],
            Scene(),
            Gen.Select(When, Statement).Array[0, 7],
            Gen.Select(
                Gen.Int[0, 2].Array[8],
                Gen.Frequency((3, Gen.Const(0)), (1, Gen.Int[1, 40])).Array[8],
                Gen.Frequency((3, Gen.Const(Array.Empty<int>())), (2, Gen.Int[0, 15].Array[1, 3])),
                Gen.Int[0, 9999].Array[0, strange ? 5 : 0]
            ),
            (minute, scene, others, c) =>
            {
                var now = Midnight + Duration.FromMinutes(minute);
                var choices = new Choices(c.Item1, c.Item2, c.Item3, c.Item4);
                var said = scene(now).Where((_, i) => !choices.Dropped.Contains(i)).Concat(others).ToArray();
                return Twist(Write(said, choices), choices.Twisted, now);
            }
        );

    /// <summary>Minutes before the instant judged: tightened, how vaguely, the newest look, and how long before it the first.</summary>
    private sealed record Times(int Tight, int Width, int Newest, int Apart);

    /// <summary>What is seen at one of the looks, the first (0), one between, the newest (2).</summary>
    private delegate Payload.SignsTaken Look(Payload.SignsTaken signs, int which);

    private static Gen<Times> SceneTimes =>
        Gen.Select(
            Gen.Frequency((4, Gen.Int[20, 118]), (3, Gen.Int[119, 400])),
            Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[1, 60])),
            Gen.Frequency((6, Gen.Int[0, 14]), (1, Gen.Int[15, 30])),
            Gen.Frequency((6, Gen.Int[10, 34]), (1, Gen.Int[1, 9])),
            (tight, width, newest, apart) => new Times(tight, width, newest, apart)
        );

    private static Gen<Payload.CasualtyOpened> Person =>
        Gen.Frequency(
            (9, Gen.Const(new Payload.CasualtyOpened("Runa", AgeYears: 34, Medicines: []))),
            (1, Gen.OneOf(1.5, 8, 14, 70).Select(age => new Payload.CasualtyOpened("Ivar", AgeYears: age))),
            (1, Gen.OneOf("bisoprolol", "apixaban").Select(drug => new Payload.CasualtyOpened("Gro", AgeYears: 61, Medicines: [drug]))),
            (1, Gen.Const(new Payload.CasualtyOpened("Una")))
        );

    /// <summary>The first look, one between where there is one, and the newest: mostly clear, with and without a cuff.</summary>
    private static Gen<Look> Looked =>
        Gen.Frequency<Look>(
            (14, (s, _) => s),
            (2, (s, _) => s with { Systolic = null, NoPressureCuff = true }),
            (1, (s, _) => s with { Systolic = null, NoPressureCuff = true, CapillaryRefillS = 2 }),
            (1, (s, which) => which == 0 ? s : s with { Systolic = null, NoPressureCuff = true }),
            (1, (s, which) => which == 0 ? s : s with { Systolic = null, NoPressureCuff = true, CapillaryRefillS = 2 }),
            (2, (s, _) => s with { Pale = true }),
            (1, (s, which) => which == 2 ? s with { Dizzy = true } : s),
            (1, (s, which) => which == 0 ? s with { HeartRate = 130 } : s),
            (1, (s, which) => which == 1 ? s with { RadialPulse = RadialPulse.Weak } : s),
            (1, (s, _) => s with { HeartRate = 116, Systolic = 130, Spo2 = 88, TemperatureC = 35.1 })
        );

    private static Gen<Payload.CasualtyLookedOver> Over =>
        Gen.Frequency(
            (16, Some.NothingElse),
            (1, Some.NothingElse with { TrunkWound = true }),
            (1, Some.NothingElse with { BloodThinner = true }),
            (1, Some.NothingElse with { BreathingHard = true }),
            (1, Some.NothingElse with { BleedingElsewhere = true })
        );

    private static Payload Calm => new Payload.NoteWritten("calm");

    /// <summary>What came of asking for advice: nobody asked, nobody reached, nobody answered, a yes (for how long), a no.</summary>
    private static Gen<Func<Instant, Payload>> Link =>
        Gen.Select(
            Gen.Int[-20, 120],
            Gen.Int[0, 11],
            (until, which) =>
                (Func<Instant, Payload>)(
                    now =>
                        which switch
                        {
                            < 3 => Calm,
                            < 6 => new Payload.ContactTried(false),
                            < 8 => new Payload.ContactTried(true),
                            < 10 => new Payload.AdviceReceived("duty doctor", "go ahead", ["attempt"]),
                            10 => new Payload.AdviceReceived(
                                "duty doctor",
                                "go ahead",
                                ["attempt"],
                                Until: now + Duration.FromMinutes(until)
                            ),
                            _ => new Payload.AdviceReceived("duty doctor", "leave it on", []),
                        }
                )
        );

    private static Gen<(int Minutes, HelpCare? Care)> Coming =>
        Gen.Select(
            Gen.Frequency((2, Gen.Int[5, 119]), (3, Gen.Int[121, 600])),
            Gen.Frequency<HelpCare?>((5, HelpCare.Surgery), (1, HelpCare.Clinic), (1, HelpCare.Hands), (1, null))
        );

    private static Gen<Payload> Watch =>
        Gen.Frequency<Payload>(
            (10, new Payload.WatchStated(true)),
            (1, new Payload.WatchStated(true, Watcher.Casualty)),
            (1, new Payload.WatchStated(false))
        );

    private static Gen<(int Ago, MovePhase Phase)> Move =>
        Gen.Select(Gen.Int[0, 70], Gen.Frequency((1, MovePhase.AboutTo), (3, MovePhase.Moved)));

    /// <summary>The statements of a scene in which mostly all is known and well.</summary>
    private static Gen<Func<Instant, (Happened, Payload)[]>> Scene() =>
        Gen.Select(
            Gen.Select(SceneTimes, Person, Looked, Over),
            Gen.Select(Link, Gen.Int[0, 70], Coming, Watch),
            Gen.Select(Move, Gen.Bool, Gen.OneOf("plain-gauze", "haemostatic-gauze", "cloth"), Gen.Bool),
            (casualty, world, more) =>
                (Func<Instant, (Happened, Payload)[]>)(
                    now =>
                    {
                        var (times, person, looked, over) = casualty;
                        var (link, asked, (help, care), watch) = world;
                        Happened At(int minutes) => Happened.At(now - Duration.FromMinutes(minutes));
                        var on = new Happened(At(times.Tight).Earliest, At(Math.Max(0, times.Tight - times.Width)).Latest);
                        var between = more.Item4 && times.Apart >= 20;
                        return
                        [
                            (on, person),
                            (on, new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding)),
                            (
                                on,
                                new Payload.TourniquetTightened(
                                    "t1",
                                    Limb.LeftLeg,
                                    Wound: "w1",
                                    Why: more.Item2 ? TighteningReason.Bleeding : null
                                )
                            ),
                            (At(times.Newest + times.Apart), looked(Some.GoodSigns, 0)),
                            (At(times.Newest + (times.Apart / 2)), between ? looked(Some.GoodSigns, 1) : Calm),
                            (At(times.Newest), looked(Some.GoodSigns, 2)),
                            (At(times.Newest + 1), over),
                            (At(times.Newest + 3), new Payload.BleedingChecked("w1", Bleeding.None)),
                            (At(times.Newest + 4), watch),
                            (At(90), new Payload.SuppliesStated(more.Item3, 2)),
                            (At(90), new Payload.SuppliesStated("pressure-dressing", 2)),
                            (
                                At(30),
                                new Payload.HelpExpected(
                                    now + Duration.FromMinutes(help),
                                    null,
                                    now + Duration.FromMinutes(help + (help < 120 ? 15 : 60)),
                                    Care: care
                                )
                            ),
                            (At(asked), link(now)),
                            (At(more.Item1.Ago), more.Item1.Ago < 30 ? Calm : new Payload.CasualtyMoved(Movement.Lifted, more.Item1.Phase)),
                            (At(40), new Payload.PositionNoted(46.1, 8.2, AltitudeM: more.Item4 ? 900 : 3_100)),
                            (At(2), new Payload.UrineMeasured(80)),
                        ];
                    }
                )
        );

    private static List<Entry> Write((Happened When, Payload What)[] said, Choices c)
    {
        var numbers = new int[3];
        var entries = new List<Entry>();
        var written = said.Select(
            (s, i) => (s.When, s.What, Device: c.Devices[i % 8], At: s.When.Latest + Duration.FromMinutes(c.Delays[i % 8]))
        );
        foreach (var s in written.OrderBy(s => s.At))
            entries.Add(EntryWriting.Write(new(Device(s.Device), ++numbers[s.Device]), s.When, s.At, "Ane", s.What));
        return entries;
    }

    private static string Device(int index) =>
        index switch
        {
            0 => "a7k3",
            1 => "m2rt",
            _ => "q",
        };

    private static Written Twist(List<Entry> entries, int[] twists, Instant now)
    {
        var damaged = new List<DamagedLine>();
        foreach (var twist in twists)
        {
            var which = entries[twist % entries.Count];
            var other = entries[twist / 7 % entries.Count];
            var last = entries.Where(e => e.Id.Device == "q").Select(e => e.Id.Number).DefaultIfEmpty(0).Max();
            switch (twist % 8)
            {
                case 0: // written twice
                    entries.Add(which);
                    break;
                case 1: // another phone claimed the same number
                    entries.Add(EntryWriting.Write(which.Id, other.Happened, other.Recorded, "Tor", other.Payload));
                    break;
                case 2: // never came
                    entries.Remove(which);
                    break;
                case 3: // the clock ran back
                    entries.Add(
                        EntryWriting.Write(
                            new("q", last + 1),
                            which.Happened,
                            which.Recorded - Duration.FromMinutes(45),
                            "Tor",
                            other.Payload
                        )
                    );
                    break;
                case 4:
                    entries.Add(
                        EntryWriting.Write(
                            new("q", last + 1),
                            Happened.At(now),
                            now,
                            "Tor",
                            new Payload.EntryWithdrawn(which.Id, "mistaken")
                        )
                    );
                    break;
                case 5:
                    var changed =
                        twist % 3 == 0
                            ? JsonText.Of("""{"heartRate":300,"bleeding":"none","able":true}""")
                            : JsonText.Of("""{"happened":"2031-05-04T07:00:00Z"}""");
                    entries.Add(
                        EntryWriting.Write(new("q", last + 1), Happened.At(now), now, "Tor", new Payload.EntryAmended(which.Id, changed))
                    );
                    break;
                case 6: // clock of the future
                    entries.Add(EntryWriting.Write(new("q", last + 1), Happened.At(now + Duration.FromMinutes(20)), now, "Tor", other.Payload));
                    break;
                default: // cut off; the entry itself may be there as well
                    damaged.Add(Damage(which));
                    break;
            }

            if (entries.Count == 0)
                entries.Add(which);
        }

        return new([.. entries], [.. damaged], now);
    }

    /// <summary>The line of an entry with its end cut off.</summary>
    public static DamagedLine Damage(Entry entry)
    {
        var raw = new JsonText(entry.Json.Utf8[..^2]);
        return new(7, raw, ((Read<Entry>.Refused)new EntryReader().Read(raw.Utf8, "cut", 7)).Refusals);
    }
}
