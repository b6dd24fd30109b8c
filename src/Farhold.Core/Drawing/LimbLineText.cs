using System.Globalization;
using NodaTime;

namespace Farhold.Drawing;

/// <summary>What the limb line shows, in words.</summary>
internal static class LimbLineText
{
    /// <summary>The heads of the picture: how it stands, what the clock allows, and whether help comes before that.</summary>
    public static IEnumerable<string> Heads(LimbPicture p)
    {
        var name = Say.Limb(p.Limb);
        var limb = char.ToUpperInvariant(name[0]) + name[1..];
        var since = Say.Elapsed(p.Clock.SinceFirstTightened);
        yield return p.Clock.Tight switch
        {
            Truth.Met => $"{limb}: tight, on {since}",
            Truth.Unknown => $"{limb}: perhaps tight, on {since}",
            _ => $"{limb}: loose now",
        };
        yield return p.LimitAt > p.Now
            ? $"{Say.Duration(p.LimitAt - p.Now)} left to the limit, {TimeAxis.Clock(p.LimitAt, p.Zone)}"
            : $"limit passed {Say.Duration(p.Now - p.LimitAt)} ago";
        if (p.Arrival is { } arrival)
            yield return Answer(p, arrival);
    }

    /// <summary>Will help come before the limit? Of a loose limb there is nothing to fear from it.</summary>
    private static string Answer(LimbPicture p, Arrival arrival) => arrival switch
    {
        _ when p.Clock.Tight == Truth.NotMet => $"help {arrival.Names.Middle} {TimeAxis.Clock(arrival.Middle, p.Zone)}",
        _ when arrival.Late <= p.LimitAt => "help before the limit, even at its latest",
        _ when arrival.Early > p.LimitAt => "help only after the limit",
        _ when arrival.Middle <= p.LimitAt => "help probably before the limit, not surely",
        _ => "help probably after the limit, not surely",
    };

    /// <summary>Everything the picture shows, for who can't see it.</summary>
    public static string Describe(LimbPicture p)
    {
        string At(Instant t) => t.InZone(p.Zone).ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture);
        string When(Happened h) => h.IsInstant ? At(h.Earliest) : $"between {At(h.Earliest)} and {At(h.Latest)}";
        var all = new List<string>(Heads(p))
        {
            $"First tightened {When(p.Clock.FirstTightened)}",
            $"Without blood flow {Say.Elapsed(p.Clock.Occluded)} in all",
        };
        all.AddRange(p.Clock.Stretches.Select(s =>
            $"{(s.Stopped == Truth.Met ? "No flow" : "Perhaps no flow")} from {At(s.From)} to {(s.To == p.Now ? "now" : At(s.To))}"));
        all.AddRange(p.Attempts.Select((a, i) => string.Create(
            CultureInfo.InvariantCulture, $"Attempt {i + 1} {When(a.Started)}: {Result(a.Result)}{(a.Ended is { } e ? $" {When(e)}" : "")}")));
        if (!p.Looks.IsEmpty)
            all.Add(string.Create(CultureInfo.InvariantCulture, $"Looked at {p.Looks.Length} times, last {When(p.Looks[^1])}"));
        all.Add($"Window of {Say.Duration(p.Limits.Window)} {(p.WindowAt > p.Now ? "ends" : "ended")} {At(p.WindowAt)}");
        all.Add($"Limit of {Say.Duration(p.Limits.Limit)} at {At(p.LimitAt)}");
        all.AddRange(p.Light.Where(l => l.Sky == Sky.Night).Select(l => $"Night from {At(l.From)} to {At(l.To)}"));
        if (p.Arrival is { } a)
            all.Add($"Help, {a.Source}: {a.Names.Early} {At(a.Early)}, {a.Names.Middle} {At(a.Middle)}, {a.Names.Late} {At(a.Late)}");
        all.Add($"Now {At(p.Now)}; times in {p.Zone.Id}");
        return Plain.Line(string.Join(". ", all) + ".");
    }

    public static string Result(AttemptResult result) => result switch
    {
        AttemptResult.UnderWay => "under way",
        _ => Wire.Word(result),
    };
}
