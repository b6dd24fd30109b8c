using System.Globalization;
using NodaTime;

namespace Farhold.Reserves;

/// <summary>What is known ahead of supplies, in lines.</summary>
public sealed class SupplyWords(Instant now, DateTimeZone zone)
{
    private const double Nearly = 0.95;

    /// <summary>The line of one item, without its name.</summary>
    public string Of(ItemOutlook outlook) => outlook.Stock.Left is not { } left
        ? "not counted: count it"
        : $"{Amount(outlook.Item, left)}; {Lasting(outlook, left)}{Chance(outlook)}";

    /// <summary>What to do about it, where anything is to be done.</summary>
    public static IEnumerable<string> Advice(ItemOutlook outlook, KitList kit)
    {
        if (outlook.Short == Truth.Met && outlook.Stock.Left is not { High: <= 0 } && outlook.Item.Save is { } save)
            yield return save;
        if (outlook.OnlyKept && outlook.Stock.Left is { High: > 0 })
            yield return $"Keep {outlook.Item.Keep} back for {outlook.Item.KeepFor}.";
        if (outlook.Short != Truth.NotMet && outlook.Stock.Left is not null && !outlook.Instead.IsEmpty)
            yield return $"In its place: {string.Join(", or ", outlook.Instead.Select(i => kit.Named(i)?.Name ?? i))}.";
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
    public static string OneIn(double chance) => chance switch
    {
        < 0.05 => "less than 1 in 20",
        < Nearly => string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(Math.Round(chance * 10, 6)):0} in 10"),
        _ => "more than 9 in 10",
    };

    /// <summary><c>today 14:20</c>, <c>Tuesday 05:00</c>, or with the date beyond six days.</summary>
    public string When(Instant at)
    {
        var (then, today) = (at.InZone(zone).LocalDateTime, now.InZone(zone).LocalDateTime);
        var days = Period.DaysBetween(today.Date, then.Date);
        var clock = then.ToString("HH:mm", CultureInfo.InvariantCulture);
        return days switch
        {
            0 => $"today {clock}",
            1 => $"tomorrow {clock}",
            < 7 => $"{then.DayOfWeek} {clock}",
            _ => then.ToString("d MMMM HH:mm", CultureInfo.InvariantCulture),
        };
    }

    private static string Range(double low, double high)
    {
        var (from, to) = (Say.Number(Math.Round(low, 1)), Say.Number(Math.Round(high, 1)));
        return from == to ? to : $"{from} to {to}";
    }

    private string Lasting(ItemOutlook outlook, Between left) => (outlook.RunsOut, left) switch
    {
        (_, { High: <= 0 }) => "used up",
        (null, _) => "none used yet, so nobody can say how long it lasts",
        ({ Earliest: null }, _) => $"lasts more than {SupplyOutlook.Horizon.Days} days",
        ({ Earliest: { } from, Latest: null }, _) => from <= now ? "may be used up" : $"lasts until {When(from)} at least",
        ({ Earliest: { } from, Latest: { } to }, _) => from <= now
            ? $"may be used up, lasts until {When(to)} at most"
            : When(from) == When(to) ? $"lasts until {When(from)}" : $"lasts until {When(from)} to {When(to)}",
    };

    private static string Chance(ItemOutlook outlook) => (outlook.HelpLater, outlook.RunsOut) switch
    {
        _ when outlook.Stock.Left is { High: <= 0 } => "",
        ({ High: > 0 } later, _) => OneIn(later.Low) == OneIn(later.High) || later.High >= Nearly
            ? $"; {OneIn(later.High)} that help comes later"
            : $"; up to {OneIn(later.High)} that help comes later",
        (null, { Earliest: not null }) => "; not known whether help comes before: enter when help comes at the latest",
        _ => "",
    };
}
