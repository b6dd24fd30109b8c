using System.Globalization;
using NodaTime;

namespace Farhold.Reserves;

/// <summary>What is known ahead of supplies, in lines.</summary>
public sealed class SupplyWords(Instant now, DateTimeZone zone)
{
    private const double Nearly = 0.95;

    /// <summary>The line of one item, without its name.</summary>
    public string Of(ItemOutlook outlook) =>
        outlook.Stock.Left is not { } left
            ? ReserveTexts.NotCounted
            : $"{Amount(outlook.Item, left)}; {Lasting(outlook, left)}{Chance(outlook)}";

    /// <summary>What to do about it, where anything is to be done.</summary>
    public static IEnumerable<string> Advice(ItemOutlook outlook, KitList kit)
    {
        if (outlook.Short == Truth.Met && outlook.Stock.Left is not { High: <= 0 } && outlook.Item.Save is { } save)
            yield return save;
        if (outlook.OnlyKept && outlook.Stock.Left is { High: > 0 })
            yield return ReserveTexts.KeepBack(outlook.Item.Keep, outlook.Item.KeepFor);
        if (outlook.Short != Truth.NotMet && outlook.Stock.Left is not null && !outlook.Instead.IsEmpty)
            yield return ReserveTexts.InItsPlace(string.Join(ReserveTexts.OrListed, outlook.Instead.Select(i => kit.Named(i)?.Name ?? i)));
    }

    /// <summary><c>3 rolls</c>, <c>1 to 2 rolls</c>, <c>2.5 L</c>.</summary>
    public static string Amount(KitItem item, Between left)
    {
        if (item.ByVolume)
            return $"{Range(left.Low / 1000, left.High / 1000)} L";
        var (low, high) = (Math.Floor(left.Low), Math.Ceiling(left.High));
        return $"{Range(low, high)} {(low == 1 && high == 1 ? item.Unit : item.Unit + "s")}";
    }

    /// <summary><c>3 in 10</c>, rounded up; never nought and never certain.</summary>
    public static string OneIn(double chance) =>
        chance switch
        {
            < 0.05 => ReserveTexts.UnderOneIn20,
            < Nearly => ReserveTexts.OneInTen(string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(Math.Round(chance * 10, 6)):0}")),
            _ => ReserveTexts.OverNineIn10,
        };

    /// <summary><c>today 14:20</c>, <c>Tuesday 05:00</c>, or with the date beyond six days.</summary>
    public string When(Instant at)
    {
        var (then, today) = (at.InZone(zone).LocalDateTime, now.InZone(zone).LocalDateTime);
        var days = Period.DaysBetween(today.Date, then.Date);
        var clock = then.ToString("HH:mm", CultureInfo.InvariantCulture);
        return days switch
        {
            0 => ReserveTexts.Today(clock),
            1 => ReserveTexts.Tomorrow(clock),
            < 7 => $"{TimeText.Weekday(then.DayOfWeek)} {clock}",
            _ => $"{TimeText.LongDay(then.Date)} {clock}",
        };
    }

    private static string Range(double low, double high)
    {
        var (from, to) = (Say.Number(Math.Round(low, 1)), Say.Number(Math.Round(high, 1)));
        return from == to ? to : ReserveTexts.Range(from, to);
    }

    private string Lasting(ItemOutlook outlook, Between left) =>
        (outlook.RunsOut, left) switch
        {
            (_, { High: <= 0 }) => ReserveTexts.UsedUp,
            (null, _) => ReserveTexts.NoneUsed,
            ({ Earliest: null }, _) => ReserveTexts.LastsMoreDays(SupplyOutlook.Horizon.Days),
            ({ Earliest: { } from, Latest: null }, _) => from <= now ? ReserveTexts.MayBeUsedUp : ReserveTexts.LastsAtLeast(When(from)),
            ({ Earliest: { } from, Latest: { } to }, _) => from <= now ? ReserveTexts.LastsAtMost(When(to))
            : When(from) == When(to) ? ReserveTexts.LastsUntil(When(from))
            : ReserveTexts.LastsUntilRange(When(from), When(to)),
        };

    private static string Chance(ItemOutlook outlook) =>
        (outlook.HelpLater, outlook.RunsOut) switch
        {
            _ when outlook.Stock.Left is { High: <= 0 } => "",
            ({ High: > 0 } later, _) => OneIn(later.Low) == OneIn(later.High) || later.High >= Nearly
                ? ReserveTexts.ChanceLater(OneIn(later.High))
                : ReserveTexts.ChanceLaterUpTo(OneIn(later.High)),
            (null, { Earliest: not null }) => ReserveTexts.ChanceUnknown,
            _ => "",
        };
}
