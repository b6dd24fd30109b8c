using System.Collections.Immutable;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>One thing done otherwise; all else at its time, and with the same luck, since every draw goes by its name.</summary>
public abstract record WhatIf
{
    private WhatIf() { }

    /// <summary>Wherever plain gauze was packed.</summary>
    public sealed record Haemostatic : WhatIf;

    public sealed record NeverLetOut : WhatIf;

    /// <summary>Wherever a limb's wound bleeds fast, it is tied within a minute.</summary>
    public sealed record Caught : WhatIf;

    /// <summary>Everything from the first act on a wound or tourniquet on comes later; below 0, earlier. Minutes.</summary>
    public sealed record Moved(double Minutes) : WhatIf;

    public string Title =>
        this switch
        {
            Haemostatic => DebriefTexts.ChangeHaemostatic,
            NeverLetOut => DebriefTexts.ChangeNeverLet,
            Caught => DebriefTexts.ChangeCaught,
            Moved { Minutes: < 0 } earlier => DebriefTexts.ChangeEarlier(DebriefWords.Span(-60 * earlier.Minutes)),
            Moved later => DebriefTexts.ChangeLater(DebriefWords.Span(60 * later.Minutes)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>
    /// The words of the command line: <c>haemostatic</c>, <c>never-let-out</c>, <c>caught</c>, <c>15</c> or <c>-15</c> (minutes).
    /// </summary>
    public static WhatIf? Parse(string text) =>
        text switch
        {
            "haemostatic" => new Haemostatic(),
            "never-let-out" => new NeverLetOut(),
            "caught" => new Caught(),
            _ => int.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out var minutes)
            && Math.Abs(minutes) is > 0 and <= 1_440
                ? new Moved(minutes)
                : null,
        };

    /// <summary>The acts of a rehearsal once more, with this change.</summary>
    /// <param name="redraw">Null: with the same luck. Else with the wound's difficulty and all chance of that number drawn anew.</param>
    public static RehearsalSession Again(RehearsalSession was, WhatIf? change, int? redraw = null)
    {
        var scenario = was.Scenario;
        if (redraw is not null)
            scenario = scenario with { Wounds = [.. scenario.Wounds.Select(w => w with { Difficulty = null })] };
        var session = RehearsalSession.AsIs(scenario, redraw is { } n ? Redraw(was.Seed, n) : was.Seed);
        var ties = change is Caught || redraw is not null;
        var acts = Acts(was, change).ToArray();
        // Who bleeds when is drawn anew, so what was tied again at its own time then is tied now where it bleeds.
        if (redraw is not null && acts.Where(a => a.Act.Act is Act.Slacken).Select(a => (double?)a.At).Min() is { } letOut)
            acts = [.. acts.Where(a => a.Act.Act is not Act.Tighten || a.At < letOut)];
        var led = was.Truth.OfType<TruthLine.InjectAsked>().Select(i => (i.At, Do: (Action)(() => session.InjectNow(i.Inject))));
        foreach (var (at, next) in acts.Select(a => (a.At, Do: (Action)(() => session.Do(a.Act)))).Concat(led).OrderBy(d => d.At))
        {
            Pass(session, at, ties);
            next();
        }

        Pass(session, scenario.End.At + 1, ties);
        return session;
    }

    /// <summary>Both courses of as many casualties alike.</summary>
    public static (ImmutableArray<CasualtyCourse> Same, ImmutableArray<CasualtyCourse> Other) Redrawn(
        RehearsalSession was,
        WhatIf change,
        int count
    ) =>
        (
            [.. Enumerable.Range(1, count).Select(n => CasualtyCourse.Of(Again(was, null, n)))],
            [.. Enumerable.Range(1, count).Select(n => CasualtyCourse.Of(Again(was, change, n)))]
        );

    /// <summary>Seeds of their own, never the seed of the run itself.</summary>
    private static ulong Redraw(ulong seed, int n) => unchecked((seed * 1_000_003) + (ulong)n);

    private static IEnumerable<(double At, AskedAct Act)> Acts(RehearsalSession was, WhatIf? change)
    {
        var asked = was.Truth.OfType<TruthLine.ActAsked>().Select(a => (a.At, a.Act)).ToArray();
        var first = asked
            .Where(a => a.Act.Act is Act.Pack or Act.Dress or Act.Press or Act.Slacken)
            .Select(a => a.At)
            .DefaultIfEmpty(0)
            .Min();
        return change switch
        {
            Haemostatic => asked.Select(a => a.Act.Act is Act.Pack pack ? (a.At, new(pack with { Gauze = PackingGauze.Haemostatic })) : a),
            NeverLetOut => asked.Where(a => a.Act.Act is not Act.Slacken),
            Moved(var minutes) => asked.Select(a => a.At >= first ? (Math.Max(0, a.At + (60 * minutes)), a.Act) : a).OrderBy(a => a.Item1),
            _ => asked,
        };
    }

    private static void Pass(RehearsalSession session, double until, bool ties)
    {
        if (!ties)
        {
            session.AdvanceTo(until);
            return;
        }

        while (!session.IsOver && session.Time < until)
        {
            session.AdvanceTo(Math.Min(until, session.Time + 1));
            foreach (var spell in session.Spells.Where(s => s.Until is null && session.Time - Math.Max(0, s.From) >= 1).ToArray())
                if (session.Scenario.Wounds.First(w => w.Name == spell.Wound).Limb is { } limb && !session.IsTying(limb))
                    session.Do(new(new Act.Tighten(Limb: Wire.Word(limb))));
        }
    }
}
