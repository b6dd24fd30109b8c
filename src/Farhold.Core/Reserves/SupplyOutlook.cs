using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Reserves;

/// <summary>When an item runs out. Null on a side: not within <see cref="SupplyOutlook.Horizon"/>.</summary>
public readonly record struct RunsOut(Instant? Earliest, Instant? Latest);

/// <summary>What is known ahead of one item.</summary>
/// <param name="RunsOut">Null: not known, as it was never counted or nothing tells how fast it goes.</param>
/// <param name="HelpLater">
/// Chance that help comes after it ran out, 0 to 1, for the latest and the earliest time it may run out; null: not known.
/// </param>
/// <param name="Instead">What can stand in and is not known to be used up.</param>
public sealed record ItemOutlook(Stock Stock, UseRate Rate, RunsOut? RunsOut, Between? HelpLater, ImmutableArray<string> Instead)
{
    public KitItem Item => Stock.Item;

    /// <summary>Whether it may run out before help comes in one case of ten or more (design): then it is to be saved.</summary>
    public Truth Short =>
        Stock.Left is null ? Truth.Unknown
        : Stock.Left.Value.High <= 0 ? Truth.Met
        : HelpLater is { } later ? Kleene.Of(later.High >= 0.1)
        : RunsOut is { Earliest: null } ? Truth.NotMet
        : Truth.Unknown;

    /// <summary>Whether no more is left than what has to be kept back.</summary>
    public bool OnlyKept => Item.Keep > 0 && Stock.Left is { } left && left.Low <= Item.Keep;
}

/// <summary>How long what is in the pack lasts, against when help comes.</summary>
/// <param name="HelpKnown">Whether a time for help with a latest end is in force.</param>
public sealed record SupplyOutlook(Instant At, Surroundings Around, bool HelpKnown, ImmutableArray<ItemOutlook> Items)
{
    /// <summary>Nothing is forecast beyond (design).</summary>
    public static Duration Horizon { get; } = Duration.FromDays(14);

    /// <summary>All items of the kit list, in its order. The care plan is taken to stay as it is now.</summary>
    public static SupplyOutlook Of(CareRecord record, Rulebook rules, Surroundings around, Instant now)
    {
        var help = HelpLater.Of(record, rules.Protocol, now);
        var stocks = rules.Kit.Items.Select(i => Stock.Of(i, record, now)).ToDictionary(s => s.Item.Id);
        var plans = record.Readings.Select(state => Judge.Of(state, record.Doubts, rules, now).Plan).ToImmutableArray();
        return new(
            now,
            around,
            help is not null,
            [.. rules.Kit.Items.Select(i => Of(stocks[i.Id], UseRate.Of(i, record, plans, around, now), stocks, help, now))]
        );
    }

    private static ItemOutlook Of(Stock stock, UseRate rate, Dictionary<string, Stock> stocks, ImmutableArray<HelpLater>? help, Instant now)
    {
        RunsOut? runsOut =
            stock.Left is { } left && rate.PerHour is { } perHour
                ? new(After(left.Low, perHour.High, now), After(left.High, perHour.Low, now))
                : null;
        Between? later = (runsOut, help) switch
        {
            ({ Earliest: null }, _) => Between.Exactly(0),
            ({ } known, { } laws) => new(Chance(known.Latest, laws, now), Chance(known.Earliest, laws, now)),
            _ => null,
        };
        return new(
            stock,
            rate,
            runsOut,
            later,
            [.. stock.Item.Instead.Where(i => !stocks.TryGetValue(i, out var s) || s.Left is not { High: 0 })]
        );
    }

    private static Instant? After(double pieces, double perHour, Instant now)
    {
        var hours = pieces <= 0 ? 0 : pieces / perHour;
        return hours < Horizon.TotalHours ? now + Duration.FromHours(hours) : null;
    }

    /// <summary>By the help that comes last.</summary>
    private static double Chance(Instant? runsOut, ImmutableArray<HelpLater> laws, Instant now) =>
        runsOut is { } at ? laws.Max(l => l.After(at, now)) : 0;
}
