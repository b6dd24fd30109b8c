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
            Truth.Met => DrawingTexts.HeadTight(limb, since),
            Truth.Unknown => DrawingTexts.HeadPerhaps(limb, since),
            _ => DrawingTexts.HeadLoose(limb),
        };
        yield return p.LimitAt > p.Now
            ? DrawingTexts.LeftToLimit(Say.Duration(p.LimitAt - p.Now), TimeAxis.Clock(p.LimitAt, p.Zone))
            : DrawingTexts.LimitPassed(Say.Duration(p.Now - p.LimitAt));
        if (p.Arrival is { } arrival)
            yield return Answer(p, arrival);
    }

    /// <summary>Will help come before the limit? Of a loose limb there is nothing to fear from it.</summary>
    private static string Answer(LimbPicture p, Arrival arrival) =>
        arrival switch
        {
            _ when p.Clock.Tight == Truth.NotMet => DrawingTexts.HelpAt(arrival.Names.Middle, TimeAxis.Clock(arrival.Middle, p.Zone)),
            _ when arrival.Late <= p.LimitAt => DrawingTexts.HelpBeforeLimit,
            _ when arrival.Early > p.LimitAt => DrawingTexts.HelpAfterLimit,
            _ when arrival.Middle <= p.LimitAt => DrawingTexts.HelpProbablyBefore,
            _ => DrawingTexts.HelpProbablyAfter,
        };

    /// <summary>Everything the picture shows, for who can't see it.</summary>
    public static string Describe(LimbPicture p)
    {
        string At(Instant t) => t.InZone(p.Zone).ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture);
        string When(Happened h) => h.IsInstant ? At(h.Earliest) : DrawingTexts.BetweenTimes(At(h.Earliest), At(h.Latest));
        var all = new List<string>(Heads(p))
        {
            DrawingTexts.FirstTightened(When(p.Clock.FirstTightened)),
            DrawingTexts.WithoutBlood(Say.Elapsed(p.Clock.Occluded)),
        };
        all.AddRange(
            p.Clock.Stretches.Select(s =>
                DrawingTexts.FlowFromTo(
                    s.Stopped == Truth.Met ? DrawingTexts.NoFlow : DrawingTexts.PerhapsNoFlow,
                    At(s.From),
                    s.To == p.Now ? DrawingTexts.Now : At(s.To)
                )
            )
        );
        all.AddRange(
            p.Attempts.Select(
                (a, i) => DrawingTexts.AttemptAt(i + 1, When(a.Started), Result(a.Result), a.Ended is { } e ? $" {When(e)}" : "")
            )
        );
        if (!p.Looks.IsEmpty)
            all.Add(DrawingTexts.LookedTimes(p.Looks.Length, When(p.Looks[^1])));
        all.Add(
            DrawingTexts.WindowEnd(
                Say.Duration(p.Limits.Window),
                p.WindowAt > p.Now ? DrawingTexts.Ends : DrawingTexts.Ended,
                At(p.WindowAt)
            )
        );
        all.Add(DrawingTexts.LimitEnd(Say.Duration(p.Limits.Limit), At(p.LimitAt)));
        all.AddRange(p.Light.Where(l => l.Sky == Sky.Night).Select(l => DrawingTexts.Night(At(l.From), At(l.To))));
        if (p.Arrival is { } a)
            all.Add(DrawingTexts.HelpTimes(a.Source, a.Names.Early, At(a.Early), a.Names.Middle, At(a.Middle), a.Names.Late, At(a.Late)));
        all.Add(DrawingTexts.NowIn(At(p.Now), p.Zone.Id));
        return Plain.Line(string.Join(". ", all) + ".");
    }

    public static string Result(AttemptResult result) =>
        result switch
        {
            AttemptResult.UnderWay => DrawingTexts.UnderWay,
            _ => Wire.Word(result),
        };
}
