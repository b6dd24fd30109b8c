using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests;

/// <summary>Entries as they might lie on several phones, what can't be read among them, and the instant to judge at.</summary>
public sealed record Written(ImmutableArray<Entry> Entries, ImmutableArray<DamagedLine> Damaged, Instant Now)
{
    public CareRecord Record => new(Entries, Damaged);

    public Judgement Judged(Protocol? protocol = null) => Judge.At(Record, protocol ?? ShippedProtocol.Protocol, Now);

    /// <summary>For a failure's message: the lines.</summary>
    public override string ToString() => string.Join('\n', [$"at {Now}", .. Entries.Select(e => e.Json.ToString()), .. Damaged.Select(d => d.Raw.ToString())]);
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

    /// <summary>The same, and then clocks run back, ids collide, numbers go missing, lines are damaged, entries amended and withdrawn.</summary>
    public static readonly Gen<Written> StrangeRecord = Story(strange: true);

    private static Gen<Written> Story(bool strange) => Gen.Select(
        Gen.Int[8 * 60, 10 * 60],
        Scene(),
        Gen.Select(When, Statement).Array[0, 7],
        Gen.Select(Gen.Int[0, 2].Array[8], Gen.Frequency((3, Gen.Const(0)), (1, Gen.Int[1, 40])).Array[8],
            Gen.Frequency((3, Gen.Const(Array.Empty<int>())), (2, Gen.Int[0, 11].Array[1, 3])), Gen.Int[0, 9999].Array[0, strange ? 5 : 0]),
        (minute, scene, others, c) =>
        {
            var now = Midnight + Duration.FromMinutes(minute);
            var choices = new Choices(c.Item1, c.Item2, c.Item3, c.Item4);
            var said = scene(now).Where((_, i) => !choices.Dropped.Contains(i)).Concat(others).ToArray();
            return Twist(Write(said, choices), choices.Twisted, now);
        });

    /// <summary>Twelve statements of a scene in which everything is known and well.</summary>
    private static Gen<Func<Instant, (Happened, Payload)[]>> Scene() => Gen.Select(
        Gen.Frequency((4, Gen.Int[5, 118]), (2, Gen.Int[119, 400])),
        Gen.Frequency((1, Gen.Const(0)), (1, Gen.Int[1, 60])),
        Gen.Frequency((5, Gen.Int[0, 14]), (1, Gen.Int[15, 30])),
        Gen.Frequency((1, Gen.Int[0, 119]), (5, Gen.Int[121, 600])),
        Gen.Bool,
        Gen.Bool,
        (ago, width, signs, help, cuff, advice) => (Func<Instant, (Happened, Payload)[]>)(now =>
        {
            Instant Ago(int minutes) => now - Duration.FromMinutes(minutes);
            Happened At(int minutes) => Happened.At(Ago(minutes));
            var on = new Happened(Ago(ago), Ago(Math.Max(0, ago - width)));
            return
            [
                (on, new Payload.CasualtyOpened("Runa", AgeYears: 34)),
                (on, new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding)),
                (on, new Payload.TourniquetTightened("t1", Limb.LeftLeg, Wound: "w1")),
                (At(signs), Some.GoodSigns with { Systolic = cuff ? 124 : null, NoPressureCuff = cuff ? null : true }),
                (At(signs + 3), new Payload.BleedingChecked("w1", Bleeding.None)),
                (At(signs + 4), new Payload.WatchStated(true)),
                (At(90), new Payload.SuppliesStated("plain-gauze", 2)),
                (At(90), new Payload.SuppliesStated("pressure-dressing", 2)),
                (At(30), new Payload.HelpExpected(now + Duration.FromMinutes(help), null, now + Duration.FromMinutes(help + 60))),
                (At(20), advice ? new Payload.AdviceReceived("duty doctor", "go ahead", ["attempt"]) : new Payload.NoteWritten("cold")),
                (At(1), new Payload.NoteWritten("all calm")),
                (At(2), new Payload.UrineMeasured(80)),
            ];
        }));

    private static List<Entry> Write((Happened When, Payload What)[] said, Choices c)
    {
        var numbers = new int[3];
        var entries = new List<Entry>();
        var written = said.Select((s, i) => (s.When, s.What, Device: c.Devices[i % 8], At: s.When.Latest + Duration.FromMinutes(c.Delays[i % 8])));
        foreach (var s in written.OrderBy(s => s.At))
            entries.Add(EntryWriting.Write(new(Device(s.Device), ++numbers[s.Device]), s.When, s.At, "Ane", s.What));
        return entries;
    }

    private static string Device(int index) => index switch { 0 => "a7k3", 1 => "m2rt", _ => "q" };

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
                    entries.Add(EntryWriting.Write(new("q", last + 1), which.Happened, which.Recorded - Duration.FromMinutes(45), "Tor", other.Payload));
                    break;
                case 4:
                    entries.Add(EntryWriting.Write(new("q", last + 1), Happened.At(now), now, "Tor", new Payload.EntryWithdrawn(which.Id, "mistaken")));
                    break;
                case 5:
                    var changed = twist % 3 == 0 ? JsonText.Of("""{"heartRate":300,"bleeding":"none","able":true}""") : JsonText.Of("""{"happened":"2031-05-04T07:00:00Z"}""");
                    entries.Add(EntryWriting.Write(new("q", last + 1), Happened.At(now), now, "Tor", new Payload.EntryAmended(which.Id, changed)));
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
