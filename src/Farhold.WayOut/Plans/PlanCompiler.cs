using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.WayOut.Plans;

/// <summary>Turns legs into steps, noting on the way what they rest on.</summary>
internal sealed class PlanCompiler(Plan plan, DarkClock? dark, SoFar? soFar)
{
    /// <summary>Spread of a walking time about its rule: standard deviation of the logarithm.</summary>
    public static double UsualSpread { get; } = PriorTable.Figure("walk-spread").Value;

    private readonly Copula copula = new(plan.Correlation);
    private readonly Copula weather = new(plan.Weather);

    public Clues Clues { get; } = new(new(plan.Correlation), new(plan.Weather));

    public bool MayReject { get; private set; }

    public List<LegPlace> Places { get; } = [];

    public List<Basis> Rests { get; } =
    [
        new(PlanTexts.DelaysRest(Say.Number(plan.Correlation)), Evidence.Assumption, PaceTexts.CommonFactor),
        new(
            PlanTexts.WeatherRest(Say.Number(plan.Weather)),
            PriorTable.Figure("weather-together").Mark,
            PriorTable.Figure("weather-together").Source
        ),
    ];

    public List<Draw> Draws { get; } = plan.Correlation > 0 ? [new(PlanTexts.AllDelays, 0, 0, null)] : [];

    public ImmutableArray<Step> Steps(ImmutableArray<Leg> legs, string path = "") =>
        Steps(legs, path, Party.Fresh, soFar is null ? null : new(0, Seen: true));

    /// <param name="row">What is known of where these legs begin; null where nobody has begun.</param>
    private ImmutableArray<Step> Steps(ImmutableArray<Leg> legs, string path, Party party, RowSoFar? row)
    {
        var steps = ImmutableArray.CreateBuilder<Step>();
        for (var i = 0; i < legs.Length; i++)
        {
            var here = $"{path}{i + 1}";
            steps.Add(legs[i] is Choice choice ? Chosen(choice, here, party, row) : Travelled((Travel)legs[i], here, party, row));
            row = row is null
                ? null
                : row with
                {
                    From = soFar!.Of(here, StageState.Done) is { } done ? Seconds(done.At) : null,
                    Unseen = false,
                };
            party = party.After(legs[i]);
        }

        return steps.ToImmutable();
    }

    private Step Chosen(Choice choice, string path, Party party, RowSoFar? row)
    {
        var label =
            choice.Name
            ?? choice.Kind switch
            {
                ChoiceKind.Branches => PlanTexts.OneOf(Ways(choice)),
                ChoiceKind.Until => Waiting(choice, choice.Ways[0].Name ?? PlanTexts.Help, choice.Ways[2].Name ?? PlanTexts.Go),
                ChoiceKind.Try => PlanTexts.Try(
                    Title(choice.Ways[0], 0),
                    choice.Ways[2].Legs.IsEmpty ? PlanTexts.Nothing : Title(choice.Ways[2], 2)
                ),
                ChoiceKind.First => PlanTexts.FirstOf(Ways(choice)),
                _ => PlanTexts.AllOf(Ways(choice)),
            };
        var index = Place(path, label, null);
        var taken = Order(choice);
        if (choice.Kind == ChoiceKind.Branches)
            Draws.Add(
                new(label, choice.Slot, ChoiceStep.Which, Shares([.. taken.Select(w => choice.Ways[w].Probability)]))
                {
                    Weather = Weathered(choice.Ways.SelectMany(w => w.Legs)),
                }
            );
        var ways = choice.Ways.Select(
            (way, w) =>
            {
                var outdoors = Weathered(way.Legs);
                if ((choice.Kind == ChoiceKind.First || (choice.IsElse && w == 0)) && way.Probability is > 0 and < 1)
                    Draws.Add(
                        new(
                            Whether(choice.Kind, way.Name ?? PlanTexts.Way(w + 1)),
                            choice.Slot,
                            ChoiceStep.FirstWay + w,
                            [way.Probability, 1]
                        )
                        {
                            Weather = outdoors,
                        }
                    );
                return new WaySteps(
                    way.Probability,
                    outdoors,
                    Steps(way.Legs, $"{path}.{w + 1}.", party.On(choice, w), Into(choice, way, $"{path}.{w + 1}", row))
                );
            }
        );
        ImmutableArray<WaySteps> steps = [.. ways];
        var known = Known(choice, path, taken);
        return choice.Kind == ChoiceKind.Try
            ? new TryStep(
                index,
                choice.Slot,
                choice.Ways[0].Legs.SelectMany(Leg.Inside).Count(),
                steps[0],
                steps[1].Steps,
                choice.Ways[2].Legs.IsEmpty ? null : steps[2].Steps,
                Tried(choice, path, known[0]),
                weather
            )
            : new ChoiceStep(index, choice.Slot, choice.Kind, steps, taken, weather, Until(choice, path), known);
    }

    private static ImmutableArray<double> Shares(ImmutableArray<double> probabilities) =>
        [.. probabilities.Select((_, w) => probabilities.Take(w + 1).Sum())];

    /// <summary>Weather has no say in a wait, such as a message that gets through or not.</summary>
    private static bool Weathered(IEnumerable<Leg> legs) =>
        legs.SelectMany(Leg.Inside).OfType<Travel>().Any(leg => leg.Mode != TravelMode.Wait);

    /// <summary>Of branches the shorter are for good weather: what closes, closes in bad.</summary>
    private ImmutableArray<int> Order(Choice choice) =>
        [.. Enumerable.Range(0, choice.Ways.Length).OrderBy(w => choice.Kind == ChoiceKind.Branches ? Typical(choice.Ways[w].Legs) : 0)];

    private double Typical(ImmutableArray<Leg> legs) =>
        legs.Sum(leg =>
            leg switch
            {
                Travel travel => travel.Extent switch
                {
                    Measured m => m.Stretch?.DistanceKm * 3600 / (travel.Mode is TravelMode.Walk or TravelMode.Carry ? 3 : 50) ?? 0,
                    var time => TimeLaws.Of(time, plan.Lambda).Quantile(0.5),
                },
                Choice { IsElse: true, Ways: var ways } => Typical(ways[0].Legs.AddRange(ways[1].Legs)),
                Choice { Ways: var ways } => ways.Min(way => Typical(way.Legs)),
                _ => 0,
            }
        );

    private static string Waiting(Choice choice, string help, string other) =>
        choice.Until is { } until ? PlanTexts.WaitForTime(help, ArrivalWords.Length(until), other) : PlanTexts.WaitFor(help, other);

    private static string Whether(ChoiceKind kind, string way) =>
        kind == ChoiceKind.Try ? PlanTexts.WhetherSucceeds(way) : PlanTexts.WhetherComes(way);

    private static string Ways(Choice choice) => string.Join(", ", choice.Ways.Select(Title));

    internal static string Title(Way way, int w) => way.Name ?? (way.Legs.FirstOrDefault() is { } leg ? Label(leg) : PlanTexts.Way(w + 1));

    /// <summary>When what is tried closes, and what is known of it.</summary>
    private TryTerms Tried(Choice choice, string path, double? known)
    {
        var (title, first) = (Title(choice.Ways[0], 0), choice.Ways[0]);
        Distribution? closes = choice.Closes is { } time ? TimeLaws.Of(time, plan.Lambda) : null;
        if (closes is { Variance: > 0 })
            Draws.Add(new(PlanTexts.WhenCloses(title), choice.Slot, TryStep.Closing, null) { Weather = true });
        var back = Weathered(first.Legs);
        if (back && (closes is not null || first.Probability < 1))
            Rests.Add(new(PlanTexts.TurnsBack(title), Evidence.Assumption, PaceTexts.NoSource));
        if (soFar is null)
            return new(closes, back, null, null, null);
        var tried = $"{path}.1";
        // Whoever is at it and has not given it up has not found it closed.
        double? open = known is null && soFar.Knows(tried) ? Seconds(soFar.Now) : null;
        MayReject |= open is not null && closes is not null;
        return new(closes, back, open, soFar.FailedAt(tried) is { } given ? Seconds(given) : null, known);
    }

    private TravelStep Travelled(Travel leg, string path, Party party, RowSoFar? row)
    {
        var label = Label(leg);
        var index = Place(path, label, leg.Mode);
        var parts = Parts(leg, party).ToImmutableArray();
        var hold = leg.Hold is { } h ? TimeLaws.Of(h.Time, plan.Lambda) : null;
        if (leg.Hold is { Probability: > 0 } held)
        {
            if (held.Probability < 1)
                Draws.Add(new(PlanTexts.WhetherHeld(label), leg.Slot, TravelStep.Held, [1 - held.Probability, 1]) { Weather = true });
            Draws.Add(new(PlanTexts.HowLongHeld(label), leg.Slot, TravelStep.HeldFor, null));
        }

        foreach (var part in parts.Where(p => p.Law.Variance > 0))
        {
            var draw = new Draw($"{label}: {part.Name}", part.Slot, part.Place, null);
            if (!Draws.Exists(d => d.Slot == draw.Slot && d.Place == draw.Place))
                Draws.Add(draw);
        }

        if (leg is { Mode: TravelMode.Aircraft, Window: FlightWindow.AnyHour })
            Rests.Add(new(PlanTexts.FliesAnyHour(label), Evidence.Assumption, PlanTexts.ThePlan));
        var marked = Mark(leg, path, ref parts, row);
        return new(
            index,
            leg.Slot,
            leg.Hold?.Probability ?? 0,
            hold,
            leg.Window == FlightWindow.Daylight,
            parts,
            copula,
            weather,
            dark,
            marked
        );
    }

    /// <summary>What is known of a leg, and what that tells of the luck of the rest.</summary>
    private Marked? Mark(Travel leg, string path, ref ImmutableArray<Part> parts, RowSoFar? row)
    {
        if (row is null)
            return null;
        var now = Seconds(soFar!.Now);
        var unseen = row.Unseen && leg.Mode is not (TravelMode.Wait or TravelMode.Carry);
        MayReject |= unseen;
        if (!row.Seen)
            return new(now, null, null, false, null, NotBefore: leg.Mode == TravelMode.Carry, unseen);
        var (begun, done) = (soFar.Of(path, StageState.Begun), soFar.Of(path, StageState.Done));
        var failed = soFar.Of(path, StageState.Failed) is not null;
        // Nobody says that it was begun: it was, when the one before was done, unless weather or light may hold it.
        var from =
            begun is not null ? Seconds(begun.At)
            : leg.Hold is null && leg.Window == FlightWindow.AnyHour ? row.From
            : null;
        double? cut = null;
        if (done is null && !failed && begun is { Share: { } share, Since: { } setOut } && parts is [.., { Law: LogNormal whole } moving])
        {
            // What was covered tells of the pace, and what is left goes on from there.
            Clues.Pace(
                moving,
                [.. parts.SkipLast(1).Select(p => p.Law)],
                Part(whole, share),
                Seconds(begun.At) - Seconds(setOut),
                done: true
            );
            parts = [moving with { Law = Part(whole, 1 - share) }];
        }
        else if (from is { } since && !failed && parts.Length > 0)
            cut = Learn(parts, since, done is null ? now : Seconds(done.At), done is not null);
        return new(now, from, done is null ? null : Seconds(done.At), failed, done is null ? cut : null, NotBefore: true, Unseen: false);
    }

    private static LogNormal Part(LogNormal whole, double share) => LogNormal.FromMedian(whole.Median * share, whole.Sigma);

    private double? Learn(ImmutableArray<Part> parts, double from, double to, bool done)
    {
        var last = parts[^1];
        if (last.Law is Constant || last.Law.Variance == 0)
            return null;
        var took =
            last.DarkRate == 1 ? to - from
            : dark is null ? (to - from) * last.DarkRate
            : dark.Work(from, to, last.DarkRate);
        took = Math.Max(took, 1);
        if (last.Place >= TravelStep.FirstPace)
            Clues.Pace(last, [.. parts.SkipLast(1).Select(p => p.Law)], last.Law, took, done);
        else if (parts.Length == 1)
            Clues.Time(last.Law, took, done);
        else
            return null;
        return last.Place < TravelStep.FirstPace && !done ? Clues.Score(last.Law, took) : null;
    }

    /// <summary>Of a way nobody has said anything of, whoever takes it is not seen until they are there.</summary>
    private RowSoFar? Into(Choice choice, Way way, string path, RowSoFar? row) =>
        row is null ? null
        : !row.Seen ? row with { Unseen = false }
        : choice.Kind == ChoiceKind.Try && way == choice.Ways[1] ? row with { From = Done(choice.Ways[0], $"{path[..^1]}1") }
        : choice.Kind == ChoiceKind.Try && way == choice.Ways[2] ? row with { From = null }
        : choice.Kind == ChoiceKind.Try ? row
        : soFar!.Knows(path) || choice.Kind == ChoiceKind.Branches ? row
        : choice.Kind == ChoiceKind.Until && way == choice.Ways[2] ? new(null, Seen: true)
        : new(null, Seen: false) { Unseen = choice.Kind != ChoiceKind.All };

    /// <summary>When the last leg of a way was done; null where nobody said.</summary>
    private double? Done(Way way, string path) =>
        soFar!.Of(FormattableString.Invariant($"{path}.{way.Legs.Length}"), StageState.Done) is { } done ? Seconds(done.At) : null;

    /// <summary>Whoever has set out waits no more, nor does whoever knows that nothing comes.</summary>
    private double Until(Choice choice, string path)
    {
        var planned = choice.Until?.TotalSeconds ?? double.PositiveInfinity;
        if (soFar is null || choice.Kind != ChoiceKind.Until)
            return planned;
        return soFar.Comes($"{path}.3") ? 0
            : soFar.FailedAt($"{path}.1") is { } given ? Math.Min(planned, Seconds(given))
            : planned;
    }

    /// <summary>Which ways are known to come or not, and what that tells of the weather.</summary>
    private ImmutableArray<double?> Known(Choice choice, string path, ImmutableArray<int> taken)
    {
        var known = new double?[choice.Ways.Length];
        if (soFar is null)
            return [.. known];
        var from = double.NegativeInfinity;
        var share = 0.0;
        foreach (var w in taken)
        {
            var (way, here) = (choice.Ways[w], $"{path}.{w + 1}");
            share = Math.Min(1, share + way.Probability);
            var to = NormalLaw.Quantile(choice.Kind == ChoiceKind.Branches ? share : way.Probability);
            var (comes, fails) =
                choice.Kind == ChoiceKind.Try && w == 0
                    ? (Done(way, here) is not null || soFar.Knows($"{path}.2"), soFar.Fails(here) || soFar.Comes($"{path}.3"))
                    : (soFar.Comes(here), soFar.Fails(here));
            var outdoors = Weathered(choice.Kind == ChoiceKind.Branches ? choice.Ways.SelectMany(x => x.Legs) : way.Legs);
            if (choice.Kind == ChoiceKind.Branches ? comes : comes && !fails)
                known[w] = 1;
            else if (fails && choice.Kind != ChoiceKind.Branches)
                known[w] = 0;
            if (choice.Kind == ChoiceKind.All)
                known[w] = null;
            else if (known[w] is { } certain && way.Probability is > 0 and < 1)
                Clues.Weather(
                    certain == 1 ? (choice.Kind == ChoiceKind.Branches ? from : double.NegativeInfinity) : to,
                    certain == 1 ? to : double.PositiveInfinity,
                    outdoors
                );
            from = to;
        }

        return [.. known];
    }

    private double Seconds(Instant at) => (at - plan.Start).TotalSeconds;

    /// <param name="From">When the leg before was done; null where that is not known.</param>
    /// <param name="Seen">Whether the record tells of whoever goes here.</param>
    private sealed record RowSoFar(double? From, bool Seen)
    {
        /// <summary>Whether the end of the first stage that is no wait would have been noticed.</summary>
        public bool Unseen { get; init; }
    }

    private List<Part> Parts(Travel leg, Party party)
    {
        var whole = leg.Dark == DarkRule.Stop ? 0.0 : 1;
        switch (leg.Extent)
        {
            case ThreePoint three:
                return [new(PlanTexts.PartTime, TimeLaws.Of(three, plan.Lambda), whole, leg.Slot, TravelStep.FirstPart)];
            case Percentiles tenths:
                return [new(PlanTexts.PartTime, Tenths(leg, tenths), whole, leg.Slot, TravelStep.FirstPart)];
            case Measured measured:
                var stretch =
                    measured.Stretch ?? throw new ArgumentException($"Track '{measured.Track}' has not been measured.", nameof(leg));
                return leg.Mode switch
                {
                    TravelMode.Walk => Walked(leg, measured, stretch, party),
                    TravelMode.Carry => Carried(leg, measured, stretch, party),
                    _ => Ridden(leg, measured, stretch, whole, party),
                };
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private List<Part> Walked(Travel leg, Measured m, Stretch stretch, Party party)
    {
        var rule = m.Rule ?? PaceRules.Default;
        var surface = m.Surface ?? Surfaces.Path;
        var spread = m.Spread ?? (rule.Id == "campbell" ? CampbellSpread(stretch) : UsualSpread);
        var seconds = rule.Time(stretch).TotalSeconds / (surface.SpeedFactor * Snow.SpeedFactor(m.SnowCm));
        Rests.Add(new(PaceTexts.WalkingBy(rule.Name, rule.Caution), rule.Mark, rule.Source));
        Rests.Add(new(PaceTexts.WalkersDiffer(Say.Number(spread)), Evidence.Assumption, PaceTexts.NoRule));
        if (surface != Surfaces.Path)
            Rests.Add(
                new(
                    PaceTexts.OnSurface(surface.Name, surface.SpeedFactor.ToString("0.00", CultureInfo.InvariantCulture)),
                    surface.Mark,
                    surface.Source
                )
            );
        return seconds > 0
            ?
            [
                new(
                    PlanTexts.PartPace,
                    LogNormal.FromMedian(seconds, spread),
                    DarkRate(leg, Night.SpeedFactor(surface)),
                    party.Slot,
                    party.PaceOf(leg.Mode)
                ),
            ]
            : [];
    }

    private static double CampbellSpread(Stretch stretch) =>
        stretch.DistanceKm == 0 ? 0 : Math.Log(Campbell.Time(stretch, 10) / Campbell.Time(stretch, 90)) / (2 * NormalLaw.Z90);

    private List<Part> Carried(Travel leg, Measured m, Stretch stretch, Party party)
    {
        var surface = m.Surface ?? Surfaces.Path;
        var carry = new LitterCarry(stretch, surface, m.Bearers, m.Wheel, m.SnowCm);
        Rests.AddRange(carry.Rests());
        var parts = new List<Part>();
        if (m.Packaging)
        {
            var prior = Priors.Packaging;
            Rests.Add(Priors.OntoLitter);
            parts.Add(new(PlanTexts.PartPackaging, TimeLaws.Of(prior), 1, leg.Slot, TravelStep.FirstPart));
        }

        if (m.RopePitches > 0)
        {
            Rests.Add(new(PlanTexts.Ropes, Evidence.Assumption, PaceTexts.NoSource));
            parts.Add(
                new(
                    PlanTexts.PartRopes,
                    LogNormal.FromQuantiles(m.RopePitches * 20 * 60, m.RopePitches * 60 * 60),
                    1,
                    leg.Slot,
                    TravelStep.FirstPart + 1
                )
            );
        }

        if (carry.EquivalentKm > 0)
            parts.Add(
                new(PlanTexts.PartPace, carry.TimeSeconds(), DarkRate(leg, LitterCarry.InTheDark), party.Slot, party.PaceOf(leg.Mode))
                {
                    Work = WorkOf(leg, m, carry, party),
                }
            );
        return parts;
    }

    private CarryWork WorkOf(Travel leg, Measured m, LitterCarry carry, Party party)
    {
        Rests.AddRange(BearerLimits.Rests);
        var people = m.Bearers ?? LitterTeam.Full;
        if (m.Joining is { } more)
            Rests.Add(new(PlanTexts.BearersJoin(more.Bearers), Evidence.Assumption, PlanTexts.ThePlan));
        if (m.Halts is { } halts)
            Rests.Add(
                new(
                    PlanTexts.Halts(ArrivalWords.Length(halts.For), ArrivalWords.Length(halts.Every)),
                    Evidence.Assumption,
                    PlanTexts.ThePlan
                )
            );
        var all = people + (m.Joining?.Bearers ?? 0);
        // Work counts at the pace of those who set out, so hands that join stretch what the party can do.
        var faster = (carry with { Bearers = all }).SpeedFactor / (carry with { Bearers = people }).SpeedFactor;
        return new(
            [
                .. party
                    .Carried.Select(before => new LitterCarry(
                        before.Stretch ?? default,
                        before.Surface ?? Surfaces.Path,
                        before.Bearers,
                        before.Wheel,
                        before.SnowCm
                    ))
                    .Where(before => before.EquivalentKm > 0)
                    .Select(before => before.TimeSeconds()),
            ],
            faster * BearerLimits.TireSeconds(all),
            faster * BearerLimits.LastSeconds(all),
            m.Halts is { } stop ? 1 + (stop.For / stop.Every) : 1,
            m.Joining is { } joining ? new(TimeLaws.Of(joining.Time, plan.Lambda), faster, party.Slot, party.PaceOf(TravelMode.Wait)) : null
        );
    }

    private List<Part> Ridden(Travel leg, Measured m, Stretch stretch, double darkRate, Party party)
    {
        var speed =
            m.SpeedKmh is { } given ? TravelSpeed.Given(given)
            : leg.Mode == TravelMode.Aircraft ? TravelSpeed.InFlight
            : TravelSpeed.OnGround(m.Surface);
        Rests.Add(new(speed.What, speed.Mark, speed.Source));
        var parts = new List<Part>();
        // Getting in and off is counted once of a ride in pieces; every flight has a landing of its own.
        if (speed.FixedMinutes > 0 && (leg.Mode == TravelMode.Aircraft || party.Last != leg.Mode))
            parts.Add(new(PlanTexts.PartFixed, new Constant(60 * speed.FixedMinutes), 1, leg.Slot, TravelStep.FirstPart));
        if (stretch.DistanceKm > 0)
            parts.Add(new(PlanTexts.PartSpeed, speed.TimeSeconds(stretch.DistanceKm), darkRate, party.Slot, party.PaceOf(leg.Mode)));
        return parts;
    }

    private double DarkRate(Travel leg, double inTheDark)
    {
        if (leg.Dark == DarkRule.Stop)
            return 0;
        Rests.Add(
            dark is null
                ? new(PlanTexts.NoPlace, Evidence.Assumption, PlanTexts.TheWorse)
                : new(PaceTexts.InTheDark(Say.Number(inTheDark)), Evidence.Computed, PaceTexts.SourceMarches)
        );
        return inTheDark;
    }

    private Distribution Tenths(Travel leg, Percentiles t)
    {
        if (Priors.Behind(leg) is { } prior)
            Rests.Add(
                new(
                    PlanTexts.Suggested(
                        Label(leg),
                        Priors.Minutes(prior.P10Minutes),
                        Priors.Minutes(prior.P50Minutes),
                        Priors.Minutes(prior.P90Minutes)
                    ),
                    prior.Mark,
                    prior.Source
                )
            );
        return TimeLaws.Of(t);
    }

    private int Place(string path, string label, TravelMode? mode)
    {
        Places.Add(new(path, label, mode));
        return Places.Count - 1;
    }

    internal static string Label(Leg leg) =>
        leg switch
        {
            { Name: { } name } => Priors.Titled(name),
            Travel { Extent: Measured { Stretch: { } ground } } travel => PlanTexts.LegKm(
                Word(travel.Mode),
                ground.DistanceKm.ToString("0.#", CultureInfo.InvariantCulture)
            ),
            Travel travel => Word(travel.Mode),
            _ => PlanTexts.Choice,
        };

    private static string Word(TravelMode mode) =>
        mode switch
        {
            TravelMode.Walk => PlanTexts.Walk,
            TravelMode.Carry => PlanTexts.Carry,
            TravelMode.Vehicle => PlanTexts.Vehicle,
            TravelMode.Boat => PlanTexts.Boat,
            TravelMode.Aircraft => PlanTexts.Aircraft,
            TravelMode.Wait => PlanTexts.Wait,
            _ => throw new System.Diagnostics.UnreachableException(),
        };
}
