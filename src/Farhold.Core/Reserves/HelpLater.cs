using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Reserves;

/// <summary>The chance that help comes later than an instant, from the three times of <c>help.expected</c>.</summary>
/// <remarks>
/// The three are taken as they are written by a forecast: earliest one in ten, likely the middle, latest the protocol's
/// share (nine in ten). Between them the chance falls in a straight line. After the latest it halves with every further span as
/// long as from the likely to the latest time, at least an hour, and never ends: help may not come at all. Before the earliest it ends
/// after a quarter of the way to the likely time. All this is design.
/// </remarks>
public sealed class HelpLater
{
    private const double EarlyShare = 0.1;

    private readonly Instant first,
        earliest,
        likely,
        latest;
    private readonly double latestShare;

    private HelpLater(Instant first, Instant earliest, Instant likely, Instant latest, double latestShare) =>
        (this.first, this.earliest, this.likely, this.latest, this.latestShare) = (first, earliest, likely, latest, latestShare);

    /// <param name="latestShare">Of <see cref="ClockLimits.SoonProbability"/>, above a half.</param>
    /// <returns>Null without a latest time: the worse side is open then.</returns>
    public static HelpLater? Of(Payload.HelpExpected help, double latestShare)
    {
        if (!(latestShare is > 0.5 and < 1))
            throw new ArgumentOutOfRangeException(nameof(latestShare), latestShare, "A share above a half and below 1.");
        if (help.Latest is not { } latest)
            return null;
        latest = Instant.Max(latest, help.Likely);
        var earliest = Instant.Min(help.Earliest ?? help.Likely - ((latest - help.Likely) / 2), help.Likely);
        return new(earliest - ((help.Likely - earliest) / 4), earliest, help.Likely, latest, latestShare);
    }

    /// <summary>By every reading of the record the help that was told of last; null where it is not known or overdue.</summary>
    /// <remarks>Overdue by the rule of the decision: once the latest time has passed and nobody came, nothing is known any more.</remarks>
    public static ImmutableArray<HelpLater>? Of(CareRecord record, Protocol protocol, Instant now)
    {
        var laws = ImmutableArray.CreateBuilder<HelpLater>();
        foreach (var state in record.Readings)
        {
            var told = state.Of(Kind.HelpExpected).Where(h => h.When.Earliest <= now).ToArray();
            if (told.Length == 0)
                return null;
            foreach (var entry in told.Where(t => !t.When.SurelyBefore(told[^1].When)))
            {
                var help = entry.As<Payload.HelpExpected>();
                if (Of(help, protocol.Clock.SoonProbability) is not { } law || help.Latest < now)
                    return null;
                laws.Add(law);
            }
        }

        return laws.Count == 0 ? null : laws.ToImmutable();
    }

    /// <summary>The chance that help comes after an instant, if it has not come by now.</summary>
    public double After(Instant at, Instant now)
    {
        var byNow = Survival(now);
        return at <= now ? 1 : Math.Clamp(Survival(at) / byNow, 0, 1);
    }

    private double Survival(Instant at)
    {
        if (at < earliest)
            return 1 - (EarlyShare * Share(first, earliest, at));
        if (at < likely)
            return 1 - EarlyShare - ((0.5 - EarlyShare) * Share(earliest, likely, at));
        if (at < latest)
            return 0.5 - ((latestShare - 0.5) * Share(likely, latest, at));
        return (1 - latestShare) * Math.Pow(2, -((at - latest) / Duration.Max(latest - likely, Duration.FromHours(1))));
    }

    private static double Share(Instant from, Instant to, Instant at) =>
        at <= from ? 0
        : at >= to ? 1
        : (at - from) / (to - from);
}
