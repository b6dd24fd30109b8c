using System.Collections.Immutable;

namespace Farhold.Physiology.Rehearsal;

/// <summary>A rehearsal headless: acts go in, looks come out, the truth stays within until the end.</summary>
/// <remarks>
/// Acts and looks begin at the next step and change conditions between steps only, so the same acts and seed give the same truth however
/// time is cut. What somebody then logs is not known here: <see cref="Reading"/> holds it beside what was shown.
/// </remarks>
public sealed class RehearsalRun
{
    private readonly ModelConstants model;
    private readonly CasualtySimulation simulation;
    private readonly NamedDraws draws;
    private readonly string casualty;
    private readonly bool isTrained;
    private readonly WoundCover[] covers;
    private readonly List<Look> looks = [];
    private readonly List<TruthEvent> truth = [];
    private readonly Dictionary<string, int> counts = [];
    private readonly HashSet<string> drawn = [];
    private readonly int stepsPerSecond;
    private Conditions surroundings;
    private Ramp arterial = Ramp.Constant(0);
    private Ramp venous = Ramp.Constant(0);
    private (Infusion Fluid, double Until)? infusion;
    private (double Rate, double Outside, double Until)? drinking;
    private readonly HashSet<string> tight = [];
    private readonly Dictionary<string, double> loosened = [];
    private bool isChanged = true;

    /// <param name="casualty">Names the casualty's own draws.</param>
    /// <param name="start">Air, clothing, pain and the like; its wounds and tourniquet are left out of account.</param>
    /// <param name="isTrained">Who acts; others take longer.</param>
    /// <exception cref="ArgumentException">Two wounds have one name, or something is out of range.</exception>
    public RehearsalRun(
        ModelConstants model,
        string casualty,
        Person person,
        Conditions start,
        ImmutableArray<RehearsalWound> wounds,
        ulong seed,
        bool isTrained = true
    )
    {
        ArgumentNullException.ThrowIfNull(model);
        if (wounds.Select(w => w.Name).Distinct(StringComparer.Ordinal).Count() < wounds.Length)
            throw new ArgumentException("Each wound has a name of its own.", nameof(wounds));
        this.model = model;
        this.casualty = casualty;
        this.isTrained = isTrained;
        draws = new(seed);
        covers = [.. wounds.Select(w => new WoundCover(w))];
        surroundings = start;
        simulation = new(model, person, wounds.Length);
        stepsPerSecond = (int)Math.Round(1 / simulation.Step);
        Apply();
    }

    /// <summary>Seconds since the start.</summary>
    public double Time => simulation.Time;

    public bool IsArrested => simulation.IsArrested;

    /// <summary>All that truly happened so far, in order.</summary>
    public IReadOnlyList<TruthEvent> Truth => truth;

    /// <summary>What looks have shown so far.</summary>
    public IEnumerable<(Look Look, Shown Shown)> Shown => truth.OfType<TruthEvent.Looked>().Select(l => (l.Look, l.Shown));

    /// <summary>In seconds.</summary>
    public double Step => simulation.Step;

    /// <summary>The whole state, as <see cref="CasualtySimulation.State"/> lists it: part of the truth.</summary>
    public ReadOnlySpan<double> State => simulation.State;

    /// <summary>Part of the truth; a trainee sees it by looks alone.</summary>
    public Vitals Vitals() => simulation.Vitals();

    /// <summary>Out of a wound, mL/min: part of the truth.</summary>
    /// <exception cref="ArgumentException">It names no wound of this casualty.</exception>
    public double Flow(string wound) => simulation.WoundFlow(Array.IndexOf(covers, Find(wound)));

    /// <summary>Whether the wound bleeds fast enough to be called so, whoever looks: part of the truth.</summary>
    public bool Bleeds(string wound) => Flow(wound) > model.Looks.ActiveFrom;

    /// <summary>What anybody who stands beside the casualty sees, without a look under the limb or a dressing.</summary>
    /// <exception cref="ArgumentException">It names no wound of this casualty.</exception>
    public BleedingSeen InView(string wound) => IsHidden(Find(wound)) ? BleedingSeen.None : Observation.Word(model.Looks, Flow(wound));

    /// <summary>Whether a tourniquet was last tightened, and not let out, on a limb; null is the modelled one.</summary>
    public bool IsTight(string? limb) => tight.Contains(limb ?? "");

    internal CasualtySimulation Simulation => simulation;

    /// <summary>Begins an act at once.</summary>
    /// <returns>When it is done, in seconds since the start.</returns>
    /// <exception cref="ArgumentException">It names no wound of this casualty.</exception>
    /// <exception cref="InvalidOperationException">An infusion runs, or something is being drunk.</exception>
    public double Begin(Act act)
    {
        var end = Time;
        switch (act)
        {
            case Act.Tighten(var loose, var limb):
                end = Snap(Lasting(limb is null ? "tighten" : $"limb:{limb}/tighten", model.Acts.TightenFrom, model.Acts.TightenTo));
                Occlude(limb, loose ? model.Acts.LooseArterial : 1, 1, end);
                tight.Add(limb ?? "");
                foreach (var cover in On(limb))
                    cover.FailsAt = null;
                break;
            case Act.Slacken(var limb):
                end = Snap(model.Acts.SlackenTime);
                Occlude(limb, 0, 0, end);
                if (tight.Remove(limb ?? ""))
                    foreach (var cover in On(limb))
                        Attempt(cover, end);
                loosened[limb ?? ""] = end;
                break;
            case Act.Move(var chance):
                Move(chance ?? Dislodgement.FirstHour);
                break;
            case Act.Pack(var wound, var gauze):
                end = Snap(Lasting($"wound:{wound}/pack", model.Acts.PackFrom, model.Acts.PackTo));
                Cover(wound, end, c => (c.Packing, c.IsDressed, c.Leak, c.Soaked, c.CoveredAt) = (gauze, false, null, 0, end));
                break;
            case Act.Dress(var wound):
                end = Snap(model.Acts.DressTime);
                Cover(wound, end, c => (c.IsDressed, c.Soaked, c.CoveredAt) = (true, 0, end));
                break;
            case Act.Press(var wound):
                end = Snap(model.Acts.PressTime);
                Cover(wound, end, c => c.IsPressed = true);
                break;
            case Act.Release(var wound):
                end = Snap(model.Acts.PressTime);
                Cover(wound, end, c => c.IsPressed = false);
                break;
            case Act.Infuse(var fluid, var volume, var minutes):
                if (infusion is not null)
                    throw new InvalidOperationException("An infusion runs.");
                end = Snap(60 * minutes);
                infusion = (fluid with { Rate = volume / (end - Time) }, end);
                break;
            case Act.Drink(var volume, var salts):
                if (drinking is not null)
                    throw new InvalidOperationException("Something is being drunk.");
                end = Snap(60 * volume / model.Acts.DrinkRate);
                drinking = (volume / (end - Time), salts ? model.Acts.SaltsOutside : model.Acts.WaterOutside, end);
                break;
            case Act.Cover(var insulation, var wetness, var warming):
                surroundings = surroundings with { Insulation = insulation, Wetness = wetness, Warming = warming };
                break;
            case Act.Air(var celsius):
                surroundings = surroundings with { AirTemperature = celsius };
                break;
            case Act.Hurt(var pain):
                surroundings = surroundings with { Pain = pain };
                break;
            case Act.Raise(var headUp):
                surroundings = surroundings with { HeadUp = headUp };
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }

        truth.Add(new TruthEvent.Begun(Time, act, end));
        isChanged = true;
        return end;
    }

    /// <summary>Begins a look; what it shows is among <see cref="Shown"/> once its time is up, and is of that moment.</summary>
    /// <exception cref="ArgumentException">A look at bleeding names no wound of this casualty, or another look names one.</exception>
    public Look Begin(LookKind kind, string? wound = null)
    {
        if (kind is LookKind.Bleeding or LookKind.BleedingBelow)
            _ = Find(wound);
        else if (wound is not null)
            throw new ArgumentException($"{kind} is not of a wound.", nameof(wound));
        var look = new Look(kind, wound, Time, Snap(Observation.Seconds(model.Looks, kind)));
        looks.Add(look);
        return look;
    }

    /// <summary>Lets as many steps pass, fewer where the circulation stops.</summary>
    public void Advance(int steps)
    {
        for (var i = 0; i < steps && !IsArrested; i++)
        {
            Fail();
            if (isChanged)
                Apply();
            simulation.Advance(1);
            Soak();
            Show();
            if (IsArrested)
                truth.Add(new TruthEvent.Arrested(Time));
        }
    }

    private void Apply()
    {
        var now = Time;
        if (infusion is { } running && now >= running.Until)
            infusion = null;
        if (drinking is { } drunk && now >= drunk.Until)
            drinking = null;
        simulation.Conditions = surroundings with
        {
            ArterialOcclusion = arterial.At(now),
            VenousOcclusion = venous.At(now),
            Infusion = infusion?.Fluid ?? new(),
            Drinking = drinking?.Rate ?? 0,
            DrinkOutsideCells = drinking?.Outside ?? simulation.Conditions.DrinkOutsideCells,
            Wounds = [.. covers.Select(c => c.At(now))],
        };
        isChanged = arterial.Runs(now) || infusion is not null || drinking is not null || covers.Any(c => c.Changes(now));
    }

    /// <exception cref="ArgumentException">No wound is on such a limb.</exception>
    private void Occlude(string? limb, double toArterial, double toVenous, double end)
    {
        if (limb is not null)
        {
            if (!On(limb).Any())
                throw new ArgumentException($"No wound of this casualty is on a limb \"{limb}\".", nameof(limb));
            foreach (var cover in On(limb))
                cover.Tied = cover.Tied.Towards(toArterial, Time, end);
            return;
        }

        arterial = arterial.Towards(toArterial, Time, end);
        venous = venous.Towards(toVenous, Time, end);
    }

    private void Cover(string wound, double end, Action<WoundCover> change)
    {
        var cover = Find(wound);
        change(cover);
        cover.Settle(model.Acts, Time, end);
    }

    /// <summary>Whether what lies on a wound of the limb holds once the tourniquet is let out.</summary>
    private void Attempt(WoundCover cover, double end)
    {
        var (wound, k) = (cover.Wound, model.Acts);
        cover.Attempts++;
        var name = $"wound:{wound.Name}/attempt:{cover.Attempts}";
        var share =
            !wound.NeedsTourniquet ? k.HoldNotNeeded
            : cover.Leak is not null ? 0
            : cover.Packing switch
            {
                PackingGauze.Haemostatic => k.HoldHaemostatic,
                PackingGauze.Plain => k.HoldPlain,
                _ => 0,
            };
        var difficulty = wound.Difficulty ?? Draw($"wound:{wound.Name}/difficulty");
        if (!RehearsalWound.Holds(share, difficulty, Draw($"{name}/hold"), k.SameWound))
            cover.FailsAt = Snap(end - Time + (k.FailsWithin * Draw($"{name}/fails")));
    }

    private void Fail()
    {
        for (var i = 0; i < covers.Length; i++)
            if (covers[i].FailsAt <= Time)
                GiveWay(i, $"attempt:{covers[i].Attempts}");
    }

    private void GiveWay(int i, string why)
    {
        var cover = covers[i];
        cover.FailsAt = null;
        if (cover.Packing is not null)
            cover.Leak = Between($"wound:{cover.Wound.Name}/{why}/leak", model.Acts.LeakFrom, model.Acts.LeakTo);
        cover.Settle(model.Acts, Time, Time);
        simulation.Dislodge(i);
        truth.Add(new TruthEvent.Failed(Time, cover.Wound.Name));
        isChanged = true;
    }

    /// <summary>Each wound with something on it, and with no tourniquet tight above it, may come open.</summary>
    private void Move(double chance)
    {
        var ordinal = counts["move"] = counts.GetValueOrDefault("move") + 1;
        for (var i = 0; i < covers.Length; i++)
        {
            var cover = covers[i];
            var limb = cover.Wound.Kind == WoundKind.TrunkArtery ? "trunk" : cover.Wound.Limb ?? "";
            if (tight.Contains(limb) || cover.Leak is not null || !(Time >= cover.CoveredAt))
                continue;
            var since = Time - Math.Max(cover.CoveredAt, loosened.GetValueOrDefault(limb));
            if (Draw($"wound:{cover.Wound.Name}/move:{ordinal}") < Dislodgement.Chance(chance, cover.Wound.NeedsTourniquet, since))
                GiveWay(i, $"move:{ordinal}");
        }
    }

    /// <summary>What lies on the wounds that a tourniquet of this limb, null the modelled one, is above.</summary>
    private IEnumerable<WoundCover> On(string? limb) =>
        covers.Where(c => c.Wound.Limb == limb && (limb is not null || c.Wound.Kind != WoundKind.TrunkArtery));

    private void Soak()
    {
        if (simulation.Steps % stepsPerSecond != 0)
            return;
        for (var i = 0; i < covers.Length; i++)
            if (Time >= covers[i].CoveredAt)
                covers[i].Soaked += simulation.WoundFlow(i) / 60;
    }

    private void Show()
    {
        for (var i = 0; i < looks.Count; i++)
        {
            var look = looks[i];
            if (Time < look.ReadyAt)
                continue;
            looks.RemoveAt(i--);
            var (flow, hidden) = (0.0, false);
            if (look.Wound is not null)
            {
                var cover = Find(look.Wound);
                flow = simulation.WoundFlow(Array.IndexOf(covers, cover));
                hidden = IsHidden(cover);
            }

            var (vitals, name) = (simulation.Vitals(), $"look:{look.Kind}/at:{look.AskedAt / simulation.Step:0}");
            var shown = Observation.Of(model.Looks, look.Kind, vitals, flow, hidden, e => (2 * Draw($"{name}/{e}")) - 1);
            var exact = Observation.Of(model.Looks, look.Kind, vitals, flow, false, _ => 0);
            truth.Add(new TruthEvent.Looked(Time, look, shown, exact));
        }
    }

    private bool IsHidden(WoundCover cover) => Time >= cover.CoveredAt && cover.Soaked < model.Looks.SoakedFrom;

    private WoundCover Find(string? wound) =>
        covers.FirstOrDefault(c => c.Wound.Name == wound)
        ?? throw new ArgumentException($"This casualty has no wound \"{wound}\".", nameof(wound));

    /// <summary>A drawn time; the ordinal is of this kind of act, so other acts leave it alone.</summary>
    private double Lasting(string kind, double from, double to)
    {
        var ordinal = counts[kind] = counts.GetValueOrDefault(kind) + 1;
        return Between($"{kind}:{ordinal}/time", from, to) + (isTrained ? 0 : model.Acts.UntrainedMore);
    }

    private double Between(string name, double low, double high) => low + ((high - low) * Draw(name));

    private double Draw(string name)
    {
        var full = $"casualty:{casualty}/{name}";
        var value = draws.Uniform(full);
        if (drawn.Add(full))
            truth.Add(new TruthEvent.Drawn(Time, full, value));
        return value;
    }

    /// <summary>So many seconds from now, up to the end of a step.</summary>
    private double Snap(double seconds)
    {
        var steps = Math.Floor(seconds / simulation.Step);
        return Time + ((steps * simulation.Step < seconds ? steps + 1 : steps) * simulation.Step);
    }
}
