using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>The current readings of the signs read off the casualty.</summary>
internal static class SignReadings
{
    /// <summary>A confused mind within this time after a sedating drug says nothing of shock (design).</summary>
    internal static readonly Duration Sedated = Duration.FromHours(1);

    /// <summary>Drugs that sedate, by any part of the name they go by in a record.</summary>
    private static readonly string[] Sedating =
    [
        "ketamine",
        "morphine",
        "fentanyl",
        "oxycodone",
        "hydromorphone",
        "tramadol",
        "methadone",
        "buprenorphine",
        "nalbuphine",
        "midazolam",
        "diazepam",
        "lorazepam",
        "propofol",
        "methoxyflurane",
        "haloperidol",
        "promethazine",
        "diphenhydramine",
    ];

    /// <summary>What the newest look says; of several readings at one look all that are still fresh.</summary>
    public static ImmutableArray<Reading> For(Input input, Scene scene, Duration fresh) =>
        input.Name switch
        {
            "systolic" => Pressure(scene, fresh),
            "shockIndex" => Index(scene, fresh),
            "radialPulse" when scene.Casualty.BothArmsTied => [Reading.Of("both-arms-tied", Happened.At(scene.Now), lasting: true)],
            "mental" => Mind(scene, fresh),
            _ => AtOneLook(scene, input, fresh),
        };

    private static ImmutableArray<Reading> Mind(Scene scene, Duration fresh) =>
        [.. AtOneLook(scene, Input.Mental, fresh).Select(r => Undrugged(r, scene))];

    /// <summary>The readings that may be the newest, and those of the same look that are still fresh.</summary>
    private static ImmutableArray<Reading> AtOneLook(Scene scene, Input input, Duration fresh)
    {
        var sign = InputSigns.Of(input)!;
        var entries = scene.State.WithSign(sign);
        var newest = Current.Of(entries, scene.Now, d => Believed(d, input, scene));
        if (newest.IsEmpty)
            return newest;
        var from = newest.Min(r => r.When.Earliest) - scene.Casualty.Protocol.Looks.Within;
        for (var i = entries.Length - 1; i >= 0 && entries[i].When.Latest >= from; i--)
            if (
                entries[i].When.Earliest <= scene.Now
                && Believed(entries[i], input, scene) is var reading
                && !newest.Contains(reading)
                && reading.When.Until(scene.Now).Max <= fresh
            )
                newest = newest.Add(reading);
        return newest;
    }

    /// <summary>What an entry says, and whether that can be believed as it stands.</summary>
    private static Reading Believed(Dated entry, Input input, Scene scene)
    {
        var reading = InputSigns.Of(input)!.Of(entry);
        return scene.Casualty.Questions.About(entry.Id, input.Name) is { } question
            ? reading with
            {
                Doubtful = !question.Contradicts,
                Contradicted = question.Contradicts,
            }
            : reading;
    }

    /// <summary>
    /// A measured pressure counts until it is stale, whatever was said of a cuff since; one that was no sign of shock only as long as
    /// it is of the look that is asked for. Where there never was one, "no cuff" is an answer. Where one was measured and there is no
    /// cuff any more, only a refill timed since takes its place.
    /// </summary>
    private static ImmutableArray<Reading> Pressure(Scene scene, Duration fresh)
    {
        var usual = scene.Casualty.Protocol.Freshness.GetValueOrDefault("systolic", fresh);
        var measured = AtOneLook(scene, Input.Systolic, fresh);
        bool IsWithin(Reading pressure, Duration age) => pressure.When.Until(scene.Now).Max <= age;
        if (measured.Any(r => IsWithin(r, fresh)))
            return measured;
        var none = Current.Of(scene.State.WithSign(SignRead.NoPressureCuff), scene.Now, d => SignRead.NoPressureCuff.Of(d));
        if (none.IsEmpty || none.Any(r => r.Word != "true") || measured.Any(r => IsWithin(r, usual) && ShowedSign(r, scene)))
            return measured;
        var said = none.MaxBy(r => r.When.Earliest).When;
        if (measured.IsEmpty)
            return [Reading.Of(Input.NoCuff, said, lasting: true)];
        var refill = AtOneLook(scene, Input.CapillaryRefillS, fresh);
        var instead =
            !refill.IsEmpty
            && measured.All(m => m.When.SurelyBefore(said))
            && refill.All(r => measured.All(m => m.When.SurelyBefore(r.When)));
        return instead ? [.. refill.Select(r => Reading.Of(Input.NoCuff, r.When))] : measured;
    }

    /// <summary>Whether the pressure, when it was measured, was a sign of shock or may have been one.</summary>
    private static bool ShowedSign(Reading pressure, Scene scene)
    {
        var then = new Scene(scene.Casualty.At(pressure.When.Latest), null, []);
        var ageless = new CriterionEvaluator(ImmutableSortedDictionary<string, Duration>.Empty, then);
        return scene.Casualty.Protocol.Shock.Seen.Any(c =>
            c.Condition.Inputs.Contains(Input.Systolic) && ageless.Of(c).State != Truth.NotMet
        );
    }

    /// <summary>Heart rate over systolic pressure wherever both were taken at one look, of the newest such look.</summary>
    private static ImmutableArray<Reading> Index(Scene scene, Duration fresh)
    {
        var pressure = Pressure(scene, fresh);
        if (pressure is [{ Word: not null }, ..])
            return pressure;
        var within = scene.Casualty.Protocol.Looks.Within;
        var rates = scene.State.WithSign(SignRead.HeartRate);
        var pressures = scene.State.WithSign(SignRead.Systolic);
        var pairs = ImmutableArray<Reading>.Empty;
        var from = Instant.MinValue;
        for (var i = pressures.Length - 1; i >= 0 && pressures[i].When.Latest >= from; i--)
        {
            var systolic = pressures[i];
            if (systolic.When.Earliest > scene.Now)
                continue;
            if (systolic.When.Until(scene.Now).Min > fresh && !pairs.IsEmpty)
                break;
            for (var k = rates.Length - 1; k >= 0 && rates[k].When.Latest >= systolic.When.Earliest - within; k--)
                if (rates[k].When.Earliest <= scene.Now && Pair(rates[k], systolic, within, scene) is { } pair)
                    pairs = pairs.Add(pair);
            if (!pairs.IsEmpty && from == Instant.MinValue)
                from = pairs.Max(p => p.When.Latest) - within;
        }

        return pairs;
    }

    /// <summary>Null where they are not of one look, or no index can be made of them.</summary>
    private static Reading? Pair(Dated rate, Dated systolic, Duration within, Scene scene)
    {
        var (beats, pressure) = (rate.As<Payload.SignsTaken>().HeartRate!.Value, systolic.As<Payload.SignsTaken>().Systolic!.Value);
        var when = Together(rate.When, systolic.When);
        if (!(beats > 0 && pressure > 0 && when.Latest - when.Earliest <= within))
            return null;
        var (one, other) = (Believed(rate, Input.HeartRate, scene), Believed(systolic, Input.Systolic, scene));
        return Reading.Of(ShockIndex.Of(beats, pressure), when) with
        {
            Doubtful = one.Doubtful || other.Doubtful,
            Contradicted = one.Contradicted || other.Contradicted,
        };
    }

    private static Happened Together(Happened a, Happened b) => new(Instant.Min(a.Earliest, b.Earliest), Instant.Max(a.Latest, b.Latest));

    private static Reading Undrugged(Reading mental, Scene scene) =>
        mental.Word == Wire.Word(Mental.Confused)
        && scene
            .State.Of(Kind.DrugGiven)
            .Any(d =>
                d.When.Earliest <= mental.When.Latest
                && d.When.Latest >= mental.When.Earliest - Sedated
                && Sedating.Any(s => d.As<Payload.DrugGiven>().Drug.Contains(s, StringComparison.OrdinalIgnoreCase))
            )
            ? mental with
            {
                Doubtful = true,
            }
            : mental;
}
