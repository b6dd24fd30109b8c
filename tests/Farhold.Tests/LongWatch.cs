namespace Farhold.Tests;

/// <summary>The record of a long wait: one leg wound, two phones, everything looked at again and again. The same every time.</summary>
public static class LongWatch
{
    public static readonly Instant Start = Instant.FromUtc(2031, 5, 4, 2, 0);

    /// <summary>Seventy-two hours by default; entries are spread evenly over them.</summary>
    public static IEnumerable<Entry> Entries(int count, int hours = 72)
    {
        var numbers = new int[2];
        for (var i = 0; i < count; i++)
        {
            var at = Start + (Duration.FromHours(hours) * i / count);
            var device = i / 40 % 2;
            yield return EntryWriting.Write(
                new(device == 0 ? "a7k3" : "m2rt", ++numbers[device]),
                Happened.At(at),
                at + Duration.FromSeconds(20),
                device == 0 ? "Ane" : "Tor",
                Of(i)
            );
        }
    }

    public static byte[] File(int count)
    {
        using var stream = new MemoryStream();
        RecordReader.Write(stream, Entries(count), []);
        return stream.ToArray();
    }

    private static Payload Of(int i) =>
        i switch
        {
            0 => new Payload.CasualtyOpened("Runa", Sex.Female, 34, 68),
            1 => new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding),
            2 => new Payload.TourniquetTightened("t1", Limb.LeftLeg, "a hand above the wound", TourniquetMake.Windlass, "w1"),
            3 => new Payload.SuppliesStated("plain-gauze", 6),
            4 => new Payload.SuppliesStated("pressure-dressing", 4),
            _ => (i % 12) switch
            {
                0 or 4 or 8 => new Payload.SignsTaken
                {
                    HeartRate = 88 + (i % 9),
                    RespiratoryRate = 16,
                    Mental = Mental.Alert,
                    Dizzy = false,
                    Pale = false,
                    Cool = false,
                    Clammy = false,
                    RadialPulse = RadialPulse.Strong,
                    NoPressureCuff = true,
                },
                1 or 5 or 9 or 11 => new Payload.BleedingChecked("w1", i % 7 == 0 ? Bleeding.Oozing : Bleeding.None),
                2 => new Payload.FluidGiven(Fluid.OralRehydration, 200, "mouth"),
                3 => new Payload.UrineMeasured(90),
                6 => new Payload.NoteWritten("quiet, dozing, foot warm"),
                7 => new Payload.WatchStated(true),
                _ => i % 120 == 10
                    ? new Payload.HelpExpected(Start + Duration.FromHours(80), null, Start + Duration.FromHours(90))
                    : new Payload.TaskDone("pulse-beyond.left-leg"),
            },
        };
}
