using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Signs;

/// <summary>NEWS2 at one look after another.</summary>
public static class News2Course
{
    /// <summary>Whether the score is made for this casualty: 16 years or over, as far as is known not pregnant.</summary>
    public static bool IsFor(State state, Instant now)
    {
        var person = CasualtyProfile.At(state, now);
        var caution = News2Caution.For(person?.AgeYears, person?.Sex, CasualtyProfile.Pregnancy(state, now), null);
        return caution.Under16 == Truth.NotMet && caution.Pregnancy != Truth.Met;
    }

    /// <summary>The total at the end of each look, with what was known then.</summary>
    /// <param name="looks">Each the entries of one look; in order of time.</param>
    public static ImmutableArray<Seen<ScoreBounds>> At(ImmutableArray<ImmutableArray<Dated>> looks, Duration freshFor)
    {
        var known = new News2Signs();
        var scores = ImmutableArray.CreateBuilder<Seen<ScoreBounds>>(looks.Length);
        foreach (var look in looks)
        {
            foreach (var entry in look)
                known = With(known, entry);
            var when = look[^1].When;
            scores.Add(new(News2.Score(known, News2Scale.One, when.Latest, freshFor).Total, when));
        }

        return scores.MoveToImmutable();
    }

    private static News2Signs With(News2Signs known, Dated entry)
    {
        var signs = entry.As<Payload.SignsTaken>();
        Seen<T>? Newer<T>(T? value, Seen<T>? before)
            where T : struct => value is { } v ? new Seen<T>(v, entry.When) : before;
        return new()
        {
            RespiratoryRate = Newer(signs.RespiratoryRate, known.RespiratoryRate),
            Spo2 = Newer(signs.Spo2, known.Spo2),
            OnOxygen = Newer(signs.OnOxygen, known.OnOxygen),
            Systolic = Newer(signs.Systolic, known.Systolic),
            HeartRate = Newer(signs.HeartRate, known.HeartRate),
            Mental = Newer(signs.Mental, known.Mental),
            TemperatureC = Newer(signs.TemperatureC, known.TemperatureC),
        };
    }
}
