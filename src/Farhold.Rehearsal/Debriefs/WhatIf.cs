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

    /// <summary>What a debrief on the phone offers, by the words of <see cref="Parse"/>.</summary>
    public static ImmutableArray<string> Offered { get; } = ["haemostatic", "never-let-out", "caught", "-15", "15"];

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
    public static RehearsalSession Again(RehearsalSession was, WhatIf? change, int? redraw = null) =>
        InPieces(was, change, redraw, double.PositiveInfinity).Last();

    /// <summary>As <see cref="Again"/>, and asked on after each piece, so that a page can breathe meanwhile.</summary>
    /// <param name="piece">Seconds of the scene, 1 or more.</param>
    /// <returns>The session as far as it has come; the last one is over.</returns>
    public static IEnumerable<RehearsalSession> InPieces(RehearsalSession was, WhatIf? change, int? redraw, double piece)
    {
        var scenario = was.Scenario;
        if (redraw is not null)
            scenario = scenario with { Wounds = [.. scenario.Wounds.Select(w => w with { Difficulty = null })] };
        RehearsalSession? begun = null;
        foreach (var opening in RehearsalSession.Opening(scenario, redraw is { } n ? Redraw(was.Seed, n) : was.Seed, piece))
            yield return begun = opening;
        var session = begun!;
        var ties = change is Caught || redraw is not null;
        var acts = Acts(was, change).ToArray();
        // Who bleeds when is drawn anew, so what was tied again at its own time then is tied now where it bleeds.
        if (redraw is not null && acts.Where(a => a.Act.Act is Act.Slacken).Select(a => (double?)a.At).Min() is { } letOut)
            acts = [.. acts.Where(a => a.Act.Act is not Act.Tighten || a.At < letOut)];
        var led = was.Truth.OfType<TruthLine.InjectAsked>().Select(i => (i.At, Do: (Action)(() => session.InjectNow(i.Inject))));
        foreach (var (at, next) in acts.Select(a => (a.At, Do: (Action)(() => session.Do(a.Act)))).Concat(led).OrderBy(d => d.At))
        {
            foreach (var _ in Pass(session, at, ties, piece))
                yield return session;
            next();
            yield return session;
        }

        foreach (var _ in Pass(session, scenario.End.At + 1, ties, piece))
            yield return session;
        yield return session;
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

    /// <summary>Asked on after each piece.</summary>
    private static IEnumerable<double> Pass(RehearsalSession session, double until, bool ties, double piece)
    {
        if (!ties)
        {
            foreach (var at in session.InPieces(until, piece))
                yield return at;
            yield break;
        }

        var asked = session.Time;
        while (!session.IsOver && session.Time < until)
        {
            session.AdvanceTo(Math.Min(until, session.Time + 1));
            foreach (var spell in session.Spells.Where(s => s.Until is null && session.Time - Math.Max(0, s.From) >= 1).ToArray())
                if (session.Scenario.Wounds.First(w => w.Name == spell.Wound).Limb is { } limb && !session.IsTying(limb))
                    session.Do(new(new Act.Tighten(Limb: Wire.Word(limb))));
            if (session.Time - asked < piece)
                continue;
            yield return asked = session.Time;
        }
    }
}
