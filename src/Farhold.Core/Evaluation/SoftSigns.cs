using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>Why something that stands against an attempt does not count.</summary>
public enum Lift
{
    None,

    /// <summary>Advice given since allows an attempt.</summary>
    Advice,

    /// <summary>Nobody can be reached, and the looks bear it out.</summary>
    Unreached,
}

/// <summary>The soft signs of shock as they stand now.</summary>
/// <param name="Met">Ids of the criteria, in the order of the protocol.</param>
/// <param name="Lifted">Why a lone one does not count.</param>
/// <param name="Stays">It was there at a look at least ten minutes before, too, and no clear look came between.</param>
internal sealed record SoftSigns(ImmutableArray<string> Met, Lift Lifted, bool Stays)
{
    /// <summary>How many count.</summary>
    public int Count => Lifted == Lift.None ? Met.Length : 0;

    /// <summary>Those that looks may show and be clear all the same.</summary>
    public ImmutableArray<string> SetAside => Lifted == Lift.None ? [] : Met;

    public static SoftSigns At(CasualtyView casualty)
    {
        var soft = casualty.Protocol.Shock.Seen.Where(c => c.Role == Role.Soft).ToArray();
        var met = soft.Where(c => casualty.Evaluator.Of(c).State == Truth.Met).ToArray();
        var ids = met.Select(c => c.Id).ToImmutableArray();
        var lifted =
            met is not [var lone] ? Lift.None
            : AdviceLifts(lone, casualty) ? Lift.Advice
            : casualty.Advice.Unreached && GivesWay(lone.Id, casualty) ? Lift.Unreached
            : Lift.None;
        return new(ids, lifted, met.Length > 0 && Persists(casualty));
    }

    /// <summary>Whether a yes that counts for a criterion was given when it already stood.</summary>
    internal static bool AdviceLifts(Criterion criterion, CasualtyView casualty) =>
        casualty.Advice.GivenFor(criterion.Id) is { IsEmpty: false } given && given.All(g => StoodBefore(criterion, g, casualty));

    /// <summary>Whether a criterion already stood against an attempt when the advice was given, however old its values were.</summary>
    private static bool StoodBefore(Criterion criterion, Happened given, CasualtyView casualty)
    {
        var then = casualty.At(given.Earliest);
        return new CriterionEvaluator(ImmutableSortedDictionary<string, Duration>.Empty, new Scene(then, null, []))
                .Of(criterion.Condition)
                .State == Truth.Met;
    }

    /// <summary>Looks at the beginning and the end of ten minutes that both show a soft sign, with no clear look between.</summary>
    private static bool Persists(CasualtyView casualty)
    {
        ShockLook? newest = null;
        foreach (var look in casualty.Looks.NewestFirst)
        {
            if (look.IsClear([]))
                return false;
            if (look.Soft.IsEmpty)
                continue;
            newest ??= look;
            if (look != newest && newest.Since(look) >= casualty.Protocol.Looks.Apart)
                return true;
        }

        return false;
    }

    /// <summary>Enough looks over long enough that show it alone, with a steady pulse and pressure.</summary>
    private static bool GivesWay(string sign, CasualtyView casualty)
    {
        var rules = casualty.Protocol.Looks;
        ShockLook? newest = null,
            last = null;
        var looks = 0;
        var (rate, pressure) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var look in casualty.Looks.NewestFirst)
        {
            if (!look.ShowsNoMoreThan([sign]))
                return false;
            if (!look.Complete || look.Open)
                continue;
            if (look.Soft.IsEmpty)
                return false;
            newest ??= look;
            if (last is null || last.Since(look) >= rules.Within)
                (looks, last) = (looks + 1, look);
            rate = Math.Min(rate, look.HeartRate ?? rate);
            pressure = Math.Max(pressure, look.Systolic ?? pressure);
            if (newest.HeartRate - rate >= rules.HeartRateUp || pressure - newest.Systolic >= rules.SystolicDown)
                return false;
            if (looks >= rules.SoftLooks && newest.Since(look) >= rules.SoftOver)
                return true;
        }

        return false;
    }
}
