using System.Collections.Immutable;

namespace Farhold.Rehearsal.Runs;

/// <summary>How the scene stands: what conditions ask about, what anybody sees, what the debrief keeps.</summary>
internal sealed class SceneState(Scenario scenario, RehearsalRun run)
{
    private static readonly int Lost = Slot("LostVolume");
    private static readonly int Dead = Slot("DeadMuscle");
    private static readonly int Potassium = Slot("Potassium");

    private readonly string? modelled = scenario.ModelledLimb is { } limb ? Wire.Word(limb) : null;
    private readonly Dictionary<string, double> tightenedAt = [];
    private readonly Dictionary<string, double> slackenedAt = [];
    private readonly HashSet<string> pressed = [];
    private readonly HashSet<string> pressedSincePacked = [];
    private readonly HashSet<string> packed = [];
    private readonly HashSet<string> dressed = [];
    private readonly Dictionary<Kind, int> counts = [];
    private readonly Dictionary<string, BleedingSpell> open = [];
    private readonly List<BleedingSpell> spells = [];
    private bool collapsed;
    private double now;
    private double occluded;
    private Vitals vitals = run.Vitals();

    public SignOverride Override { get; set; } = SignOverride.None;

    public IReadOnlyList<BleedingSpell> Spells => [.. spells, .. open.Values];

    public void Count(Kind kind) => counts[kind] = counts.GetValueOrDefault(kind) + 1;

    /// <summary>Met while a hand is on a wound; unknown where one was since it was packed.</summary>
    public Farhold.Values.Truth Pressed(string wound) =>
        pressed.Contains(wound) ? Farhold.Values.Truth.Met
        : pressedSincePacked.Contains(wound) ? Farhold.Values.Truth.Unknown
        : Farhold.Values.Truth.NotMet;

    /// <summary>The limb that the model has is nameless there.</summary>
    public Act OfModel(Act act) =>
        act switch
        {
            Act.Tighten t => t with { Limb = t.Limb == modelled ? null : t.Limb },
            Act.Slacken s => s with { Limb = s.Limb == modelled ? null : s.Limb },
            _ => act,
        };

    public Act OfScenario(Act act) =>
        act switch
        {
            Act.Tighten t => t with { Limb = t.Limb ?? modelled },
            Act.Slacken s => s with { Limb = s.Limb ?? modelled },
            _ => act,
        };

    public void Began(Act act, double at, double until)
    {
        switch (act)
        {
            case Act.Tighten { Limb: { } limb, Loose: false }:
                tightenedAt[limb] = until;
                break;
            case Act.Slacken { Limb: { } limb }:
                slackenedAt[limb] = until;
                break;
            case Act.Press(var wound):
                pressed.Add(wound);
                pressedSincePacked.Add(wound);
                break;
            case Act.Release(var wound):
                pressed.Remove(wound);
                break;
            case Act.Pack(var wound, _):
                packed.Add(wound);
                pressedSincePacked.Remove(wound);
                dressed.Remove(wound);
                break;
            case Act.Dress(var wound):
                dressed.Add(wound);
                break;
        }
    }

    public SceneValue Value(Input input)
    {
        var name = input.Name;
        return name switch
        {
            SceneInputs.Elapsed => new(now),
            SceneInputs.Arrested => SceneValue.Of(run.IsArrested),
            SceneInputs.LostMl => new(run.State[Lost]),
            SceneInputs.MeanPressure => new(vitals.MeanArterialPressure),
            SceneInputs.Systolic => new(vitals.SystolicPressure),
            SceneInputs.HeartRate => new(vitals.HeartRate),
            SceneInputs.TemperatureC => new(vitals.CoreTemperature),
            SceneInputs.MentalState => new(null, ShownText.Write(Answers())),
            _ when After(name, SceneInputs.Tight) is { } limb => SceneValue.Of(IsTight(limb)),
            _ when After(name, SceneInputs.SinceSlackened) is { } limb => Since(slackenedAt, limb),
            _ when After(name, SceneInputs.SinceTightened) is { } limb => Since(tightenedAt, limb),
            _ when After(name, SceneInputs.BleedingOf) is { } wound => new(null, Wire.Word(Seen(run.Flow(wound)))),
            _ when After(name, SceneInputs.Packed) is { } wound => SceneValue.Of(packed.Contains(wound)),
            _ when After(name, SceneInputs.Dressed) is { } wound => SceneValue.Of(dressed.Contains(wound)),
            _ when After(name, SceneInputs.Logged) is { } kind => new(
                Kinds.Parse(System.Text.Encoding.UTF8.GetBytes(kind)) is { } known ? counts.GetValueOrDefault(known) : 0
            ),
            _ => default,
        };
    }

    /// <summary>Once a second; what begins now that anybody notices.</summary>
    public IEnumerable<(HappeningKind Kind, string Text)> Watch(double time)
    {
        vitals = run.Vitals();
        if (modelled is not null && run.IsTight(null) && !run.IsArrested)
            occluded += Math.Max(0, time - now);
        now = time;
        foreach (var wound in scenario.Wounds.Select(w => w.Name))
        {
            var visible = run.InView(wound) == BleedingSeen.Active;
            if (!run.Bleeds(wound))
            {
                if (open.Remove(wound, out var over))
                    spells.Add(over with { Until = time });
                continue;
            }

            var spell = open.GetValueOrDefault(wound) ?? new(wound, time, null, null);
            var first = visible && spell.Visible is null;
            open[wound] = first ? spell with { Visible = time } : spell;
            if (first)
                yield return (HappeningKind.BleedsInView, RunTexts.BleedsInView(wound));
        }

        var alert = vitals.Consciousness == Consciousness.Alert;
        if (!alert && !collapsed)
            yield return (HappeningKind.Collapsed, RunTexts.Collapsed);
        collapsed = !alert;
    }

    public Frame Frame(double time) =>
        new(
            time,
            vitals,
            run.State[Lost],
            run.State[Dead],
            run.State[Potassium],
            occluded,
            [.. scenario.Wounds.Select(w => run.Flow(w.Name))],
            [.. scenario.Limbs.Select(l => IsTight(Wire.Word(l)))]
        );

    public bool IsTight(string limb) => run.IsTight(limb == modelled ? null : limb);

    private SceneValue Since(Dictionary<string, double> at, string limb) =>
        at.TryGetValue(limb, out var then) && now >= then ? new(now - then) : default;

    private Shown.Answers Answers() => new(vitals.Consciousness, vitals.Consciousness == Consciousness.Alert && vitals.Glasgow < 14.5);

    private static BleedingSeen Seen(double flow) =>
        flow < 1 ? BleedingSeen.None
        : flow <= 15 ? BleedingSeen.Oozing
        : BleedingSeen.Active;

    private static string? After(string name, string start) =>
        name.StartsWith(start, StringComparison.Ordinal) ? name[start.Length..] : null;

    private static int Slot(string name) => Slots.Body.IndexOf(Slots.Body.First(s => s.Name == name));
}

/// <summary>How an inject stands.</summary>
internal sealed class InjectState(Inject inject)
{
    private double? heldSince;
    private bool came;
    private bool cameThisTime;

    public Inject Inject => inject;

    /// <summary>Comes no more.</summary>
    public bool IsSpent => came && (inject.Once || inject.At is not null);

    /// <summary>When it comes if nothing changes, in seconds; null where a condition decides that does not hold.</summary>
    public double? DueAt => inject.At ?? (cameThisTime ? null : heldSince + inject.After);

    public void ComesByHand() => came = cameThisTime = true;

    /// <summary>Whether it comes now; judged once a second.</summary>
    public bool Comes(double time, Func<Input, SceneValue> value)
    {
        if (IsSpent)
            return false;
        if (inject.At is { } at)
            return came = time >= at;
        if (SceneCondition.Holds(inject.When!, value) != Farhold.Values.Truth.Met)
        {
            (heldSince, cameThisTime) = (null, false);
            return false;
        }

        heldSince ??= time;
        if (cameThisTime || time - heldSince < inject.After)
            return false;
        return came = cameThisTime = true;
    }
}
