namespace Farhold.Tests.Verdicts;

/// <summary>Somebody who does what the first thing due asks, logs what they see, and nothing else; each thing takes a minute.</summary>
public sealed class Carer
{
    public static readonly Instant Start = Some.At("12:00");

    private readonly World world;
    private readonly CareRecord record = new([], []);
    private readonly List<string> done = [];
    private readonly List<(Instant At, Payload What)> coming = [];
    private Instant? called;
    private Instant? looked;
    private Duration awaited;
    private int number;
    private string last = "";

    public Carer(World world)
    {
        this.world = world;
        var said = new List<(int Ago, Payload What)>();
        Begin((ago, what) => said.Add((ago, what)));
        foreach (var (ago, what) in said.OrderByDescending(s => s.Ago))
            Write(Start - Duration.FromMinutes(ago), what);
    }

    public Instant Now { get; private set; } = Start;

    /// <summary>What stood against a decision at the end.</summary>
    public string Left { get; private set; } = "";

    /// <summary>What was done, for a failure's message.</summary>
    public string Story =>
        string.Join('\n', [$"{world}", .. record.Entries.Where(e => e.Recorded <= Start).Select(e => e.Json.ToString()), .. done]);

    /// <param name="within">The minutes that an adviser takes to answer come on top: they are nobody's to shorten.</param>
    /// <returns>Whether every limb has its decision by then.</returns>
    public bool Decides(Duration within)
    {
        while (true)
        {
            var judged = Judge.At(record, ShippedRules.Book, Now);
            if (judged.Limbs.All(l => IsDecided(l, judged)))
                return true;
            if (Now >= Start + within + awaited)
            {
                Left = string.Join(
                    "; ",
                    judged.Limbs.Select(l =>
                        $"{Wire.Word(l.Limb)} {Wire.Word(l.Verdict)} {string.Join(",", l.Reasons.Select(r => r.Criterion.Id))}"
                    )
                );
                done.Add($"{Clock} undecided: {Left}");
                return false;
            }

            Do(judged);
        }
    }

    /// <summary>An attempt, help, or a leave-on that stands: time, amputation, an express no, bled with nothing better.</summary>
    private bool IsDecided(LimbVerdict limb, Judgement judged) =>
        limb.Verdict switch
        {
            Verdict.Attempt or Verdict.AwaitHelp => true,
            Verdict.LeaveOn => limb.Reasons.Any(r =>
                r.Criterion.Id switch
                {
                    "limit.time" or "limit.start" or "wound.amputation" or "advice.no" => true,
                    "attempt.bled" => world.Link is Link.None or Link.Silent && called is not null,
                    _ => false,
                }
            ),
            _ => limb.Reasons.All(r => r.Criterion.Id == "limbs.one") && judged.Limbs.Any(o => o.Verdict == Verdict.Attempt),
        };

    private void Do(Judgement judged)
    {
        var first = judged.Due.First(d => judged.Limbs.All(l => d.Task != $"next.{Wire.Word(l.Limb)}" || !IsDecided(l, judged)));
        var limb = judged.Limbs.FirstOrDefault(l => l.Limb == first.Limb && first.Task == $"next.{Wire.Word(l.Limb)}");
        var text = first.Said();
        var told =
            $"{first.Task}: {text}{(limb is null ? "" : $" [{limb.Verdict}: {string.Join(",", limb.CheckFirst.Select(i => i.Name))}]")}";
        if (told != last)
            done.Add($"{Clock} {last = told}");
        if (limb is null)
            Look(first.Task);
        else
            Follow(limb, text);
        Pass(Duration.FromMinutes(1));
    }

    /// <summary>A task that names a wound or a limb: look there.</summary>
    private void Look(string task)
    {
        foreach (var limb in world.Limbs)
            if (task == $"effect.{Wire.Word(limb.Limb)}" || task == $"tourniquet.{Wire.Word(limb.Limb)}")
                SeeWound(limb);
            else if (task == $"pulse-beyond.{Wire.Word(limb.Limb)}")
                Log(
                    new Payload.SignsTaken
                    {
                        DistalPulse = System.Collections.Immutable.ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(
                            limb.Limb,
                            DistalPulse.Absent
                        ),
                    }
                );
        if (task.StartsWith("bleeding.", StringComparison.Ordinal))
            Log(new Payload.BleedingChecked(task["bleeding.".Length..], Bleeding.None));
        if (task.StartsWith("settle-", StringComparison.Ordinal))
            Log(new Payload.TaskDone(task));
    }

    private void Follow(LimbVerdict limb, string text)
    {
        var tied = world.Limbs.Single(l => l.Limb == limb.Limb);
        bool Says(string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);
        bool Asks(params Input[] inputs) => limb.CheckFirst.Intersect(inputs).Any();

        if (Says("look over the whole casualty") || Says("every other wound"))
            LookOver();
        else if (Says("what kind of wound") || Says("does it bleed now"))
            SeeWound(tied);
        else if (Says("watch"))
            Log(new Payload.CasualtyMoved(Movement.Carried, MovePhase.Moved), new Payload.WatchStated(true));
        else if (Says("gauze") || Says("to pack with") || Says("to press with") || Says("bandage"))
            Count();
        else if (Says("ask or estimate the age"))
            Log(new Payload.CasualtyOpened("Runa", AgeYears: world.Age, Medicines: world.Medicines));
        else if (Says("ask what comes"))
            AskForHelp();
        else if (Says("whether the tourniquet is tight"))
            Log(new Payload.TourniquetTightened(tied.Tourniquet, tied.Limb, Wound: tied.Wound, Why: TighteningReason.Precaution));
        else if (Says("advice") && !(called > Now - Duration.FromMinutes(world.TriesAgainAfter)))
            AskForAdvice();
        else if (Says("improved"))
            Log(new Payload.TaskDone($"improved.{Wire.Word(tied.Limb)}"));
        else if (Asks(Input.HelpSoon) && limb.CheckFirst.Length == 1)
            AskForHelp();
        else if (looked is { } at && Now < at + Duration.FromMinutes(10) && !Says("at one look") && limb.Act.LookAgain > Now)
            return; // wait for the next look
        else
            TakeSigns(limb, text);
    }

    private void TakeSigns(LimbVerdict limb, string text)
    {
        looked = Now;
        var refill =
            text.Contains("refill", StringComparison.OrdinalIgnoreCase)
            || limb.CheckFirst.Any(i => i.Look.Contains("refill", StringComparison.OrdinalIgnoreCase))
            || limb.CheckFirst.Contains(Input.CapillaryRefillS);
        timesRefill |= refill;
        Log(world.Signs(timesRefill));
    }

    private bool timesRefill;

    private void LookOver()
    {
        foreach (var wound in record.Readings[0].Of(Kind.WoundFound).Select(w => w.As<Payload.WoundFound>().Wound).Distinct().ToArray())
            Log(new Payload.BleedingChecked(wound, Bleeding.None));
        var thinner = world.Medicines.Contains("apixaban") || world.Medicines.Contains("clopidogrel");
        Log(new Payload.CasualtyLookedOver(false, world.Trunk, false, false, thinner));
    }

    private void SeeWound(TiedLimb limb)
    {
        if (!record.Readings[0].Of(Kind.WoundFound).Any(w => w.As<Payload.WoundFound>().Wound == limb.Wound))
            Log(new Payload.WoundFound(limb.Wound, limb.Limb, null, WoundNature.Bleeding));
        Log(new Payload.BleedingChecked(limb.Wound, Bleeding.None));
    }

    private void Count() => Log(new Payload.SuppliesStated("plain-gauze", 2), new Payload.SuppliesStated("pressure-dressing", 1));

    private void AskForAdvice()
    {
        called = Now;
        Log(new Payload.ContactTried(world.Link != Link.None));
        var answer = Now + Duration.FromMinutes(world.AnswersAfter);
        if (world.Link is Link.Allows or Link.Refuses)
            coming.Add((answer, new Payload.AdviceReceived("duty doctor", "as said", world.Link == Link.Allows ? ["attempt"] : [])));
    }

    /// <summary>Whoever answers says when surgery comes; with nobody to ask, the carer's own worst estimate has to do.</summary>
    private void AskForHelp()
    {
        if (world.Link is Link.Silent or Link.None && !(called > Now - Duration.FromMinutes(world.TriesAgainAfter)))
            AskForAdvice();
        Log(new Payload.HelpExpected(Now + Duration.FromHours(7), null, Now + Duration.FromHours(9), Care: HelpCare.Surgery));
    }

    private void Begin(Action<int, Payload> say)
    {
        var first = world.Limbs.Max(l => l.Minutes);
        if (world.AgeWritten)
            say(first, new Payload.CasualtyOpened("Runa", AgeYears: world.Age, Medicines: world.Medicines));
        foreach (var limb in world.Limbs)
        {
            if (limb.WoundWritten)
                say(limb.Minutes, new Payload.WoundFound(limb.Wound, limb.Limb, null, WoundNature.Bleeding));
            say(limb.Minutes, new Payload.TourniquetTightened(limb.Tourniquet, limb.Limb, Wound: limb.Wound));
            if (limb.Tried == Tried.Never)
                continue;
            say(38, new Payload.AttemptStarted(limb.Wound, limb.Tourniquet));
            say(
                30,
                new Payload.AttemptEnded(
                    limb.Wound,
                    limb.Tourniquet,
                    limb.Tried == Tried.Abandoned ? AttemptOutcome.Abandoned : AttemptOutcome.Bled
                )
            );
            if (limb.Tried == Tried.BledAndBetterNow)
                say(5, new Payload.TaskDone($"improved.{Wire.Word(limb.Limb)}"));
        }

        if (world.Cuff == Cuff.Lost)
            say(Math.Min(first, 28), (world with { Cuff = Cuff.There }).Signs(false));
        switch (world.Looks)
        {
            case Looks.FewSigns:
                say(1, new Payload.SignsTaken { HeartRate = world.Signs(false).HeartRate, Pain = 4 });
                break;
            case Looks.Whole or Looks.Stale:
                say(world.Looks == Looks.Whole ? 1 : Math.Min(first, 27), world.Signs(false));
                break;
        }

        if (world.Counted)
        {
            say(1, new Payload.SuppliesStated("haemostatic-gauze", 1));
            say(1, new Payload.SuppliesStated("elastic-bandage", 1));
        }

        if (world.OnTheMove)
            say(Math.Min(first, 20), new Payload.CasualtyMoved(Movement.Carried, MovePhase.AboutTo));
        if (world.OtherWound.Length > 0)
            say(
                first,
                world.OtherWound switch
                {
                    "neck" => new Payload.WoundFound("w7", null, BodyRegion.Neck, WoundNature.Bleeding),
                    "back grazed" => new Payload.WoundFound("w7", null, BodyRegion.Back, WoundNature.Other),
                    _ => new Payload.WoundFound("w7", Limb.RightArm, null, WoundNature.Fracture),
                }
            );
        if (Help() is { } help)
            say(Math.Min(first, 30), help);
    }

    private Payload? Help()
    {
        Payload Coming(HelpCare? care, int likely, int latest) =>
            new Payload.HelpExpected(Start + Duration.FromMinutes(likely), null, Start + Duration.FromMinutes(latest), Care: care);
        return world.Help switch
        {
            HelpSaid.Nothing => null,
            HelpSaid.SurgeryFar => Coming(HelpCare.Surgery, 400, 600),
            HelpSaid.SurgeryNear => Coming(HelpCare.Surgery, 60, 90),
            HelpSaid.ClinicFar => Coming(HelpCare.Clinic, 300, 400),
            HelpSaid.HandsOnly => Coming(HelpCare.Hands, 60, 90),
            HelpSaid.KindNotSaid => Coming(null, 60, 90),
            _ => Coming(HelpCare.Surgery, -20, -5),
        };
    }

    private void Pass(Duration time)
    {
        Now += time;
        awaited += coming.Count > 0 ? time : Duration.Zero;
        foreach (var (at, what) in coming.Where(c => c.At <= Now).ToArray())
            Write(at, what);
        coming.RemoveAll(c => c.At <= Now);
    }

    private void Log(params Payload[] what)
    {
        foreach (var one in what)
        {
            Write(Now, one);
            done.Add($"      {Clock} logs {EntryText.Of(one)}");
        }
    }

    private void Write(Instant at, Payload what) =>
        record.Add(EntryWriting.Write(new("a", ++number), Happened.At(at), Instant.Max(at, Now), "Ane", what));

    private string Clock => Now.ToString("HH:mm", null);
}
