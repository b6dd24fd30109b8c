using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Rehearsal.Runs;

/// <summary>Runs a scenario by a script, from the start to its end.</summary>
public static class Headless
{
    /// <param name="seed">Null: the scenario's own.</param>
    /// <param name="refused">Is told of each deed of which nothing came, with its time in seconds.</param>
    public static RehearsalSession Run(Scenario scenario, Script script, ulong? seed = null, Action<double, string>? refused = null)
    {
        var session = new RehearsalSession(scenario, seed);
        var open = new List<OpenLog>();
        foreach (var deed in script.Deeds)
        {
            Pass(session, deed.At, open);
            if (session.IsOver)
                break;
            if (Do(session, deed, open) is { } why)
                refused?.Invoke(deed.At, why);
        }

        Pass(session, session.Scenario.End.At + 1, open);
        return session;
    }

    private static void Pass(RehearsalSession session, double until, List<OpenLog> open)
    {
        while (!session.IsOver && session.Time < until)
        {
            session.AdvanceTo(until, stop: open.Count > 0);
            foreach (var done in open.Where(o => o.IsDone(session)).ToArray())
            {
                open.Remove(done);
                foreach (var payload in SeenPayloads.From(session.Scenario, [.. done.Results(session)]))
                    session.Log(payload);
            }
        }
    }

    private static string? Do(RehearsalSession session, Deed deed, List<OpenLog> open)
    {
        switch (deed)
        {
            case Deed.Does(_, var act):
                return session.Do(act);
            case Deed.Looks looks:
                var from = session.Shown.Count;
                string? why = null;
                var kinds = looks.Kinds.Where(k => k != LookKind.Pressure || session.Scenario.Has(SeenPayloads.Cuff)).ToImmutableArray();
                foreach (var kind in kinds)
                    why = session.Look(kind, kind is LookKind.Bleeding or LookKind.BleedingBelow ? looks.Wound : null) ?? why;
                if (looks.Log && why is null)
                    open.Add(new(from, kinds, looks.Wound));
                return why;
            case Deed.Logs logs:
                Happened? happened = logs.Happened is var (earliest, latest) ? new(session.At(earliest), session.At(latest)) : null;
                return session.Log(logs.Payload, happened, acts: logs.Acts).NothingDone;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    /// <summary>Looks whose results are to be logged together.</summary>
    /// <param name="From">Results before this one are older.</param>
    private sealed record OpenLog(int From, ImmutableArray<LookKind> Kinds, string? Wound)
    {
        public bool IsDone(RehearsalSession session) => Results(session).Count() == Kinds.Length;

        /// <summary>The first of each kind.</summary>
        public IEnumerable<ShownLook> Results(RehearsalSession session) =>
            Kinds
                .Select(k => session.Shown.Skip(From).FirstOrDefault(s => s.Kind == k && (s.Wound is null || s.Wound == Wound)))
                .OfType<ShownLook>();
    }
}

/// <summary>What was seen, as entries of the record.</summary>
public static class SeenPayloads
{
    public const string Cuff = "pressure-cuff";

    public static IEnumerable<Payload> From(Scenario scenario, ImmutableArray<ShownLook> looks)
    {
        foreach (var look in looks.Where(l => l.Wound is not null))
            if (look.Shown is Shown.Bleeds(var seen))
                yield return new Payload.BleedingChecked(
                    look.Wound!,
                    seen switch
                    {
                        BleedingSeen.None => Bleeding.None,
                        BleedingSeen.Oozing => Bleeding.Oozing,
                        _ => Bleeding.Active,
                    }
                );
        var signs = looks.Where(l => l.Wound is null).Aggregate(new Payload.SignsTaken(), (s, l) => With(s, l, scenario));
        if (looks.All(l => l.Wound is not null))
            yield break;
        if (!scenario.Has(Cuff) && looks.Any(l => l.Kind == LookKind.Pulse))
            signs = signs with { NoPressureCuff = true };
        yield return signs;
    }

    private static Payload.SignsTaken With(Payload.SignsTaken signs, ShownLook look, Scenario scenario) =>
        (look.Kind, look.Shown) switch
        {
            (LookKind.Pulse, Shown.Number(var rate)) => signs with { HeartRate = rate },
            (LookKind.Breaths, Shown.Number(var rate)) => signs with { RespiratoryRate = rate },
            (LookKind.Refill, Shown.Number(var seconds)) => signs with { CapillaryRefillS = seconds },
            (LookKind.Temperature, Shown.Number(var celsius)) => signs with { TemperatureC = celsius },
            (_, Shown.Pressures(var systolic, var diastolic)) => signs with { Systolic = systolic, Diastolic = diastolic },
            (_, Shown.Answers(_, Confused: true)) => signs with { Mental = Mental.Confused },
            (_, Shown.Answers(var to, _)) => signs with { Mental = Wire.Parse<Mental>(Wire.Word(to)) },
            (_, Shown.Skin(var pale, var cool, var clammy)) => signs with { Pale = pale, Cool = cool, Clammy = clammy },
            (_, Shown.Says(var dizzy)) => signs with { Dizzy = dizzy },
            (LookKind.Wrist, Shown.Pulses(var felt)) => signs with { RadialPulse = Wire.Parse<RadialPulse>(Wire.Word(felt)) },
            (LookKind.Beyond, Shown.Pulses(var felt)) when scenario.ModelledLimb is { } limb => signs with
            {
                DistalPulse = System.Collections.Immutable.ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(
                    limb,
                    felt == PulseFelt.Absent ? DistalPulse.Absent : DistalPulse.Present
                ),
            },
            _ => signs,
        };
}
