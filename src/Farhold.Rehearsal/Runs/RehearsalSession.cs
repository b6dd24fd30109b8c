using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace Farhold.Rehearsal.Runs;

/// <summary>A rehearsal: a scenario that runs, what the trainee does and logs in it, and what is true behind it.</summary>
/// <remarks>
/// The same scenario, seed, acts, looks and entries give the same truth and the same record, however time is cut: whatever is asked for
/// begins at the end of the step that runs, and injects are judged once a second of the scenario's time. It has no clock; whoever shows it
/// lets time pass (<see cref="Pace"/>). Nobody's hands do two things at once: acts wait for each other, looks with the eyes do not.
/// </remarks>
public sealed class RehearsalSession
{
    /// <summary>The device that writes a practice record.</summary>
    public const string Device = "practice";

    /// <summary>Of the truth file.</summary>
    public const int TruthVersion = 1;

    private const string ByScenario = "Scenario";
    private const double KeyEvery = 60;

    /// <summary>Design: setting up a drip, wrapping somebody up, moving somebody, in seconds.</summary>
    private const double HandsOnDrip = 60;
    private const double HandsOnCover = 120;
    private const double HandsOnMove = 60;

    private readonly RehearsalRun run;
    private readonly double offset;
    private readonly Queue<Hands> carer = [];
    private readonly Queue<Hands> helper = [];
    private readonly Queue<Act> waitingDrips = [];
    private readonly Queue<Act> waitingDrinks = [];
    private readonly Dictionary<string, Limb> tourniquets = [];
    private readonly List<Entry> record = [];
    private readonly List<TruthLine> truth = [];
    private readonly List<Happening> happenings = [];
    private readonly List<ShownLook> shown = [];
    private readonly List<Frame> frames = [];
    private readonly SceneState scene;
    private readonly InjectState[] injects;
    private readonly HashSet<Expectation> met = [];
    private double carerFree = double.NegativeInfinity;
    private double helperFree = double.NegativeInfinity;
    private double dripUntil = double.NegativeInfinity;
    private double drinkUntil = double.NegativeInfinity;
    private (string Wound, double At)? letGo;
    private int drained;

    /// <param name="seed">Null: the scenario's own. With another the scenario varies as it says.</param>
    /// <exception cref="ArgumentOutOfRangeException">The scenario names a model that does not ship.</exception>
    public RehearsalSession(Scenario scenario, ulong? seed = null)
        : this(seed ?? scenario.Seed, Variation.Of(scenario, seed ?? scenario.Seed)) { }

    /// <param name="scenario">As it is run.</param>
    /// <param name="opens">False: what was before the trainee arrived is still to pass, see <see cref="Opening"/>.</param>
    private RehearsalSession(ulong seed, Scenario scenario, bool opens = true)
    {
        Seed = seed;
        Scenario = scenario;
        run = NewRun(Scenario, Seed);
        offset = Math.Ceiling(-Scenario.InjuredAt / run.Step) * run.Step;
        scene = new(Scenario, run);
        injects = [.. Scenario.Injects.Select(i => new InjectState(i))];
        truth.Add(new TruthLine.Header(Time, TruthVersion, Scenario.Model, Scenario.Hash, Seed, run.Step));
        if (opens)
            foreach (var _ in Before(double.PositiveInfinity)) { }
    }

    /// <summary>A scenario that keeps its values whatever the seed, for a what-if.</summary>
    internal static RehearsalSession AsIs(Scenario scenario, ulong seed) => new(seed, scenario);

    /// <summary>As <see cref="AsIs"/>, with what was before the trainee arrived in pieces: the session after each of them, and once it is
    /// open.</summary>
    /// <param name="piece">Seconds of the scene.</param>
    internal static IEnumerable<RehearsalSession> Opening(Scenario scenario, ulong seed, double piece)
    {
        var session = new RehearsalSession(seed, scenario, opens: false);
        foreach (var _ in session.Before(piece))
            yield return session;
        yield return session;
    }

    /// <summary>As it is with the seed.</summary>
    public Scenario Scenario { get; }

    public ulong Seed { get; }

    /// <summary>In seconds from the scenario's start.</summary>
    public double Time => run.Time - offset;

    public Instant Now => At(Time);

    /// <summary>Null while it goes on.</summary>
    public EndReason? EndedBy { get; private set; }

    public bool IsOver => EndedBy is not null;

    /// <summary>What the trainee's phone holds; every line says that it is practice.</summary>
    public IReadOnlyList<Entry> Record => record;

    /// <summary>For the debrief; no screen of a trainee shows it before the end.</summary>
    public IReadOnlyList<TruthLine> Truth => truth;

    /// <summary>What the trainee saw.</summary>
    public IReadOnlyList<ShownLook> Shown => shown;

    /// <summary>What has happened for the trainee, in order: what was said, what looks came to, what anybody would see.</summary>
    public IReadOnlyList<Happening> Happenings => happenings;

    /// <summary>The truth once a minute, for the debrief.</summary>
    public IReadOnlyList<Frame> Frames => frames;

    /// <summary>When wounds bled, for the debrief.</summary>
    public IReadOnlyList<BleedingSpell> Spells => scene.Spells;

    /// <summary>How many entries the record began with, before the trainee logged any.</summary>
    internal int Opened { get; private set; }

    /// <summary>Of the model, in seconds.</summary>
    internal double StepS => run.Step;

    /// <summary>Whether somebody's hands are at work, or asked for.</summary>
    public bool IsBusy => carer.Count > 0 || Time < carerFree;

    /// <summary>SHA-256 of the scenario's own and the seed: what the first entry of the record is sealed with.</summary>
    public string Seal => SealOf(Scenario.Hash, Seed);

    public Instant At(double seconds) => Scenario.Start + Duration.FromSeconds(seconds);

    /// <summary>Seconds from the start.</summary>
    public double SecondsAt(Instant instant) => (instant - Scenario.Start).TotalSeconds;

    public static string SealOf(string scenarioHash, ulong seed) =>
        Convert.ToHexStringLower(
            SHA256.HashData(
                Encoding.UTF8.GetBytes(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{scenarioHash}/{seed}"))
            )
        );

    /// <summary>The truth as it is now; its signs are those of the last whole second.</summary>
    public Frame Present => scene.Frame(Time);

    /// <summary>What looks show in place of the truth.</summary>
    public SignOverride Overrides => scene.Override;

    /// <summary>Injects that may still happen, those with a time first.</summary>
    /// <remarks>One by a condition has a time only while the condition holds, and none is due before it is judged.</remarks>
    public IEnumerable<(Inject Inject, double? At)> Coming =>
        injects.Where(i => !i.IsSpent).Select(i => (i.Inject, i.DueAt)).OrderBy(i => i.DueAt ?? double.PositiveInfinity);

    /// <summary>Sets about an act, once the trainee's hands are free.</summary>
    /// <param name="by">Who, where several treat.</param>
    /// <returns>Why nothing comes of it, or null.</returns>
    public string? Do(AskedAct asked, string? by = null)
    {
        if ((IsOver ? RunTexts.Over(EndWords.Say(EndedBy!.Value)) : Objection(asked.Act)) is { } why)
            return why;
        truth.Add(new TruthLine.ActAsked(Time, asked, by));
        carer.Enqueue(new(asked, null, null));
        StartDue();
        return null;
    }

    /// <summary>Begins a look; what it shows is among <see cref="Shown"/> once its time is up.</summary>
    /// <param name="by">Who, where several treat.</param>
    /// <returns>Why nothing comes of it, or null.</returns>
    public string? Look(LookKind kind, string? wound = null, string? by = null)
    {
        var ofWound = kind is LookKind.Bleeding or LookKind.BleedingBelow;
        if (ofWound != (wound is not null) || (wound is not null && Scenario.Wounds.All(w => w.Name != wound)))
            return RunTexts.NoSuchWound(wound ?? "");
        if (IsOver)
            return RunTexts.Over(EndWords.Say(EndedBy!.Value));
        truth.Add(new TruthLine.LookAsked(Time, kind, wound, by));
        if (ByEye(kind))
            run.Begin(kind, wound);
        else
            (Scenario.Party.Length > 1 ? helper : carer).Enqueue(new(null, kind, wound));
        StartDue();
        return null;
    }

    /// <summary>Has an inject of the scenario happen now, whatever it was written for; it then happens no second time by itself.</summary>
    /// <returns>Why nothing comes of it, or null.</returns>
    public string? InjectNow(string id)
    {
        if (IsOver)
            return RunTexts.Over(EndWords.Say(EndedBy!.Value));
        if (Array.Find(injects, i => i.Inject.Id == id && !i.IsSpent) is not { } state)
            return RunTexts.NoSuchInject(id);
        truth.Add(new TruthLine.InjectAsked(Time, id));
        state.ComesByHand();
        Fire(state.Inject);
        return null;
    }

    /// <summary>Sets what looks show from now on; the casualty's truth stays what it is.</summary>
    /// <param name="show">The newer of each holds; with no sign at all, looks show the truth again.</param>
    /// <returns>Why nothing comes of it, or null.</returns>
    public string? Show(SignOverride show)
    {
        if (IsOver)
            return RunTexts.Over(EndWords.Say(EndedBy!.Value));
        truth.Add(new TruthLine.ShowAsked(Time, show));
        scene.Override = show == SignOverride.None ? show : scene.Override.With(show);
        return null;
    }

    /// <summary>Writes down that from a moment of the wall's clock on time passes so fast; moves nothing.</summary>
    /// <returns>Why nothing comes of it, or null.</returns>
    public string? Pace(Instant wall, double rate)
    {
        if (IsOver)
            return RunTexts.Over(EndWords.Say(EndedBy!.Value));
        truth.Add(new TruthLine.Paced(Time, wall, rate));
        return null;
    }

    /// <summary>Logs an entry, as on a real phone; where the tap is the act, that is set about.</summary>
    /// <param name="happened">Null: now.</param>
    /// <param name="acts">False where somebody else confirms what was done, and an entry moves nothing.</param>
    /// <exception cref="ArgumentException">The entry says something that no record accepts.</exception>
    public (Entry Entry, string? NothingDone) Log(Payload payload, Happened? happened = null, string? by = null, bool acts = true)
    {
        var entry = Write(payload, happened ?? Happened.At(Now), by ?? Scenario.Party[0].Name);
        string? nothing = null;
        if (acts)
            foreach (var asked in EntryActs.For(payload, tourniquets, scene.Pressed))
                nothing = Do(asked) ?? nothing;
        return (entry, nothing);
    }

    /// <summary>Takes over an entry that the trainee's own phone wrote: the tap is the act.</summary>
    /// <remarks>Who packs a wound keeps a hand on it until it is logged how long they held, or that it is dressed.</remarks>
    /// <param name="acts">As for <see cref="Log"/>.</param>
    /// <returns>Why nothing comes of it, or null.</returns>
    public string? Take(Entry entry, bool acts = true)
    {
        ArgumentNullException.ThrowIfNull(entry);
        Add(entry);
        if (!acts)
            return null;
        string? nothing = null;
        foreach (var asked in EntryActs.For(entry.Payload, tourniquets, scene.Pressed))
            nothing = Do(asked) ?? nothing;
        if (nothing is null && entry.Payload is Payload.WoundPacked packed)
            Do(new(new Act.Press(packed.Wound)));
        if (nothing is null && entry.Payload is Payload.DressingApplied dressed && scene.Pressed(dressed.Wound) == Farhold.Values.Truth.Met)
            Do(new(new Act.Release(dressed.Wound)));
        return nothing;
    }

    /// <summary>Lets time pass, to the end of the step in which a time lies.</summary>
    /// <param name="seconds">From the scenario's start.</param>
    /// <param name="stop">Stops at the first step in which something happens for the trainee.</param>
    public void AdvanceTo(double seconds, bool stop = false)
    {
        var before = happenings.Count;
        while (!IsOver && Time < seconds && !(stop && happenings.Count > before))
            Step();
    }

    /// <summary>Whether what the scenario expects of its truth came true: by its time, or, where it has none, at the end.</summary>
    internal bool Met(Expectation expected) => met.Contains(expected);

    /// <summary>Whether a limb's tourniquet is tight, or being tightened, or about to be.</summary>
    internal bool IsTying(Limb limb) =>
        scene.IsTight(Wire.Word(limb)) || carer.Any(h => h.Act?.Act is Act.Tighten tie && tie.Limb == Wire.Word(limb));

    internal void LogAgain(TruthLine.Logged logged)
    {
        truth.Add(logged with { });
        scene.Count(logged.Kind);
    }

    /// <summary>The next inject that comes at a time, or the end; in seconds.</summary>
    internal double NextTime =>
        injects.Where(i => !i.IsSpent && i.Inject.At is not null).Select(i => i.Inject.At!.Value).Append(Scenario.End.At).Min();

    private void Step()
    {
        StartDue();
        if (IsWhole && Time >= 0)
            Judge();
        if (IsOver)
            return;
        run.Advance(1);
        Drain();
        if (IsWhole || run.IsArrested)
            Watch();
        if (!run.IsArrested)
            return;
        Tell(HappeningKind.Arrested, RunTexts.Arrested);
        End(EndReason.Arrest);
    }

    private bool IsWhole => run.Time == Math.Floor(run.Time);

    private void Judge()
    {
        foreach (var state in injects)
            if (state.Comes(Time, scene.Value))
                Fire(state.Inject);
        Expect();
        if (Scenario.End.When is { } when && SceneCondition.Holds(when, scene.Value) == Farhold.Values.Truth.Met)
            End(EndReason.Condition);
        else if (Time >= Scenario.End.At)
            End(EndReason.Time);
    }

    /// <summary>One with a time has to come true by then; one without holds or not at the end.</summary>
    private void Expect()
    {
        foreach (var expected in Scenario.Expect.Where(e => e.When is not null))
            if (SceneCondition.Holds(expected.When!, scene.Value) != Farhold.Values.Truth.Met)
            {
                if (expected.By is null)
                    met.Remove(expected);
            }
            else if (expected.By is null || Time <= expected.By)
                met.Add(expected);
    }

    private void Fire(Inject inject)
    {
        truth.Add(new TruthLine.Injected(Time, inject.Id));
        scene.Override = scene.Override.With(inject.Show);
        foreach (var act in inject.Acts)
            Begin(act);
        if (inject.ShownSay is { } say)
            Tell(HappeningKind.Said, RunTexts.Said(say));
    }

    private void End(EndReason why)
    {
        EndedBy = why;
        truth.Add(new TruthLine.Ended(Time, Wire.Word(why)));
        Tell(HappeningKind.Over, RunTexts.Over(EndWords.Say(why)));
    }

    /// <summary>Begins what waited for hands that are free now.</summary>
    private void StartDue()
    {
        if (letGo is var (wound, at) && Time >= at)
        {
            letGo = null;
            Begin(new Act.Release(wound));
        }

        while (carer.Count > 0 && Time >= carerFree)
            carerFree = Begin(carer.Dequeue());
        while (helper.Count > 0 && Time >= helperFree)
            helperFree = Begin(helper.Dequeue());
        if (waitingDrips.Count > 0 && Time > dripUntil)
            Begin(waitingDrips.Dequeue());
        if (waitingDrinks.Count > 0 && Time > drinkUntil)
            Begin(waitingDrinks.Dequeue());
    }

    /// <returns>When the hands are free again.</returns>
    private double Begin(Hands work)
    {
        if (work.Look is { } kind)
            return run.Begin(kind, work.Wound).ReadyAt - offset;
        var (act, minutes) = work.Act!;
        var end = Begin(act);
        if (act is Act.Press(var wound) && minutes is { } held)
        {
            letGo = (wound, Time + (60 * held));
            return letGo.Value.At;
        }

        return act switch
        {
            Act.Infuse => Time + HandsOnDrip,
            Act.Cover => Time + HandsOnCover,
            Act.Move => Time + HandsOnMove,
            Act.Drink or Act.Air or Act.Hurt or Act.Raise => Time,
            _ => end,
        };
    }

    /// <summary>One drip and one cup at a time: the next one waits.</summary>
    private double Begin(Act act)
    {
        if (act is Act.Infuse && Time <= dripUntil)
        {
            waitingDrips.Enqueue(act);
            return Time;
        }

        if (act is Act.Drink && Time <= drinkUntil)
        {
            waitingDrinks.Enqueue(act);
            return Time;
        }

        var end = run.Begin(scene.OfModel(act)) - offset;
        if (act is Act.Infuse)
            dripUntil = end;
        if (act is Act.Drink)
            drinkUntil = end;
        Drain();
        return end;
    }

    private string? Objection(Act act)
    {
        var (limb, wound) = act switch
        {
            Act.Tighten t => (t.Limb, null),
            Act.Slacken s => (s.Limb, null),
            Act.Pack p => (null, p.Wound),
            Act.Dress d => (null, d.Wound),
            Act.Press p => (null, p.Wound),
            Act.Release r => (null, r.Wound),
            _ => (null as string, null as string),
        };
        if (limb is not null && Scenario.Limbs.All(l => Wire.Word(l) != limb))
            return RunTexts.NoSuchLimb(Wire.Parse<Limb>(limb) is { } named ? Say.Limb(named) : limb.Replace('-', ' '));
        return wound is not null && Scenario.Wounds.All(w => w.Name != wound) ? RunTexts.NoSuchWound(wound) : null;
    }

    /// <summary>Takes over what the model says has happened since.</summary>
    private void Drain()
    {
        for (; drained < run.Truth.Count; drained++)
            switch (run.Truth[drained])
            {
                case TruthEvent.Begun(var at, var act, var until):
                    var named = scene.OfScenario(act);
                    truth.Add(new TruthLine.Began(at - offset, named, until - offset));
                    scene.Began(named, at - offset, until - offset);
                    break;
                case TruthEvent.Drawn(var at, var name, var value):
                    truth.Add(new TruthLine.Drawn(at - offset, name, value));
                    break;
                case TruthEvent.Failed(var at, var wound):
                    truth.Add(new TruthLine.Failed(at - offset, wound));
                    break;
                case TruthEvent.Arrested(var at):
                    truth.Add(new TruthLine.Arrested(at - offset));
                    break;
                case TruthEvent.Looked looked:
                    Looked(looked);
                    break;
                default:
                    throw new System.Diagnostics.UnreachableException();
            }
    }

    private void Looked(TruthEvent.Looked looked)
    {
        var seen = Overridden.Show(looked.Look.Kind, looked.Shown, scene.Override);
        var (kind, wound, asked) = (looked.Look.Kind, looked.Look.Wound, looked.Look.AskedAt - offset);
        truth.Add(new TruthLine.Looked(looked.At - offset, kind, wound, asked, ShownText.Write(seen), ShownText.Write(looked.Truth)));
        shown.Add(new(looked.At - offset, kind, wound, asked, seen, looked.Truth));
        var (word, text) = (LookWords.Say(kind), LookWords.Say(seen));
        Tell(HappeningKind.Looked, wound is null ? RunTexts.Looked(word, text) : RunTexts.LookedAt(word, wound, text), looked.At - offset);
    }

    /// <summary>Once a second: what anybody would see, and the truth once a minute.</summary>
    private void Watch()
    {
        foreach (var (kind, text) in scene.Watch(Time))
            Tell(kind, text);
        if (run.Time % KeyEvery != 0 && !run.IsArrested)
            return;
        truth.Add(new TruthLine.Key(Time, [.. run.State]));
        frames.Add(scene.Frame(Time));
    }

    private void Tell(HappeningKind kind, string text, double? at = null)
    {
        if (Time >= 0)
            happenings.Add(new(at ?? Time, kind, text));
    }

    private static bool ByEye(LookKind kind) =>
        kind is LookKind.Bleeding or LookKind.Mental or LookKind.Breaths or LookKind.Skin or LookKind.Dizzy;

    private static RehearsalRun NewRun(Scenario scenario, ulong seed)
    {
        var who = scenario.Casualty;
        var person = new Physiology.Body.Person
        {
            MassKg = who.MassKg,
            HeightM = who.HeightM,
            AgeYears = Math.Max(who.AgeYears, ScenarioCasualty.YoungestModelled),
            Sex = who.Sex == Sex.Female ? ModelSex.Female : ModelSex.Male,
            HeartRate = who.HeartRate ?? new Physiology.Body.Person().HeartRate,
            Haematocrit = who.Sex == Sex.Female ? 0.40 : 0.43,
            BetaBlockade = who.BetaBlockade,
            Anticoagulation = who.Anticoagulation,
        };
        var conditions = new Conditions
        {
            AirTemperature = scenario.Surroundings.AirC,
            Insulation = scenario.Surroundings.Insulation,
            Wetness = scenario.Surroundings.Wetness,
            Pain = who.Pain,
            Anxiety = who.Anxiety,
            // Injured tissue holds the depressor reflex back (the model's reference, section 8).
            NociceptiveBlock = 0.8,
        };
        var modelled = scenario.ModelledLimb;
        return new(
            Models.ByNumber(scenario.Model),
            scenario.Id,
            person,
            conditions,
            [
                .. scenario.Wounds.Select(w => new RehearsalWound(
                    w.Name,
                    w.Limb is null ? WoundKind.TrunkArtery
                        : w.Vessel == Vessel.Vein ? WoundKind.LimbVein
                        : WoundKind.LimbArtery,
                    w.BleedMlPerMin,
                    w.NeedsTourniquet,
                    w.Difficulty,
                    w.Limb is { } limb && limb != modelled ? Wire.Word(limb) : null
                )),
            ],
            seed,
            scenario.Party[0].Trained
        );
    }

    /// <summary>Up to when the trainee arrives, and opens the record; in pieces of so many seconds, each of which is its end.</summary>
    private IEnumerable<double> Before(double piece)
    {
        foreach (var act in Scenario.Before)
        {
            foreach (var at in InPieces(act.At, piece))
                yield return at;
            Begin(act.Act);
        }

        foreach (var at in InPieces(0, piece))
            yield return at;
        Open();
    }

    /// <summary>Lets time pass as <see cref="AdvanceTo"/> does, and is asked on after each piece.</summary>
    internal IEnumerable<double> InPieces(double until, double piece)
    {
        while (!IsOver && Time < until)
        {
            AdvanceTo(Math.Min(until, Time + piece));
            yield return Time;
        }
    }

    /// <summary>What the record holds when the trainee takes the phone: the seal first.</summary>
    private void Open()
    {
        var start = Happened.At(Scenario.Start);
        // What the record holds is the same in every language, and so are the hashes of its lines.
        var note = Translation.InEnglish(() => RunTexts.Sealed(Seal, RunTexts.Caution));
        Write(new Payload.NoteWritten(note), start, ByScenario);
        var who = Scenario.Casualty;
        Write(
            new Payload.CasualtyOpened(who.Alias, who.Sex, who.AgeYears, Math.Round(who.MassKg, 1), Medicines: who.Medicines),
            start,
            ByScenario
        );
        foreach (var wound in Scenario.Wounds.Where(w => w.Found))
            Write(new Payload.WoundFound(wound.Name, wound.Limb, wound.Region, wound.Nature, wound.Looks), start, ByScenario);
        foreach (var act in Scenario.Before)
            if (Reported(act) is { } payload)
                Write(payload, new(At(act.Reported?.Earliest ?? Scenario.InjuredAt), At(act.Reported?.Latest ?? 0)), ByScenario);
        foreach (var kit in Scenario.Kit)
            Write(new Payload.SuppliesStated(kit.Item, kit.Count), start, ByScenario);
        if (Scenario.Help is { } help)
            Write(
                new Payload.HelpExpected(
                    At(help.Likely),
                    help.Earliest is { } e ? At(e) : null,
                    help.Latest is { } l ? At(l) : null,
                    Care: help.Care
                ),
                start,
                ByScenario
            );
        Write(new Payload.WeatherStated(Scenario.Surroundings.AirC, Scenario.Surroundings.WindKmh), start, ByScenario);
        Opened = record.Count;
    }

    private static Payload? Reported(EarlierAct earlier) =>
        earlier.Act switch
        {
            Act.Tighten { Limb: { } limb } => new Payload.TourniquetTightened(
                earlier.Tourniquet!,
                Wire.Parse<Limb>(limb)!.Value,
                Make: earlier.Make
            ),
            Act.Slacken when earlier.Tourniquet is { } name => new Payload.TourniquetSlackened(name),
            Act.Pack(var wound, var gauze) => new Payload.WoundPacked(
                wound,
                gauze == PackingGauze.Haemostatic ? PackingMaterial.HaemostaticGauze : PackingMaterial.PlainGauze
            ),
            Act.Dress(var wound) => new Payload.DressingApplied(wound, DressingKind.Pressure),
            _ => null,
        };

    private Entry Write(Payload payload, Happened happened, string by)
    {
        var body = EntryWriting.Body(happened, Now, by, practice: true, payload);
        var link = record.Count == 0 ? "" : $"\"previous\":\"{LineHash.Of(record[^1].Json)}\",";
        var line = Encoding.UTF8.GetBytes($"{{\"id\":\"{Device}-{record.Count + 1}\",{link}{body[1..]}");
        var entry = new EntryReader().Read(line, "practice", record.Count + 1) switch
        {
            Read<Entry>.Usable usable => usable.Value,
            Read<Entry>.Refused refused => throw new ArgumentException(string.Join("; ", refused.Refusals), nameof(payload)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        Add(entry);
        return entry;
    }

    private void Add(Entry entry)
    {
        record.Add(entry);
        if (entry.Payload is Payload.TourniquetTightened tightened)
            tourniquets[tightened.Tourniquet] = tightened.Limb;
        scene.Count(Kinds.Of(entry.Payload));
        truth.Add(new TruthLine.Logged(Time, Kinds.Of(entry.Payload), LineHash.Of(entry.Json).ToString()));
    }

    /// <summary>What waits for hands: an act, or a look.</summary>
    private sealed record Hands(AskedAct? Act, LookKind? Look, string? Wound);
}
