namespace Farhold.Tests.Verdicts;

/// <summary>A casualty played through a day: what was logged when, and what Farhold said of it at that time.</summary>
/// <remarks>One wound <c>w1</c> of the left leg under tourniquet <c>t1</c> where nothing else is said.</remarks>
internal sealed class Played
{
    private readonly CareRecord record = new([], []);
    private int number;

    /// <param name="tied">When the tourniquet was tightened; null: told in the script.</param>
    public Played(Payload.CasualtyOpened casualty, string? tied)
    {
        if (tied is not null)
            At(tied, casualty, new Payload.WoundFound("w1", Limb.LeftLeg, null, WoundNature.Bleeding), Tight("t1"));
        else
            At("00:01", casualty);
    }

    public static Payload.SignsTaken Good => Some.GoodSigns;

    public static Payload.SignsTaken NoCuff => Some.GoodSigns with { Systolic = null, NoPressureCuff = true };

    public static Payload Dry => new Payload.BleedingChecked("w1", Bleeding.None);

    public static Payload Bleeds => new Payload.BleedingChecked("w1", Bleeding.Active);

    public static Payload CanWatch => new Payload.WatchStated(true);

    public static Payload NotReached => new Payload.ContactTried(false);

    public static Payload Allowed => new Payload.AdviceReceived("duty doctor", "go ahead", ["attempt"]);

    public static Payload Begun => new Payload.AttemptStarted("w1", "t1");

    public static Payload Slack => new Payload.TourniquetSlackened("t1");

    /// <summary>
    /// Gauze, a dressing, somebody to watch, the rest of the casualty looked over, the wound dry, surgery at seven in the evening.
    /// </summary>
    public static Payload[] Ready =>
        [
            new Payload.SuppliesStated("plain-gauze", 2),
            new Payload.SuppliesStated("pressure-dressing", 2),
            CanWatch,
            Some.NothingElse,
            Dry,
            Surgery("17:00", "19:00"),
        ];

    public static Payload Tight(string tourniquet, TighteningReason? why = null) =>
        new Payload.TourniquetTightened(tourniquet, Limb.LeftLeg, Wound: "w1", Why: why);

    public static Payload Surgery(string likely, string latest) =>
        new Payload.HelpExpected(Some.At(likely), null, Some.At(latest), Care: HelpCare.Surgery);

    public static Payload.CasualtyOpened Who(string alias, double age) => new(alias, AgeYears: age);

    /// <summary>Logged as it happens.</summary>
    public Played At(string time, params Payload[] what) => At(Happened.At(Some.At(time)), what);

    public Played At(Happened when, params Payload[] what)
    {
        foreach (var one in what)
            record.Add(EntryWriting.Write(new("a", ++number), when, when.Latest, "Ane", one));
        return this;
    }

    /// <param name="act">What the limb's next act says, or begins to say.</param>
    public Played Says(string time, Verdict verdict, string act, Limb limb = Limb.LeftLeg)
    {
        var said = Now(time).Limbs.Single(l => l.Limb == limb);
        Assert.True(
            said.Verdict == verdict,
            $"{time}: {said.Verdict}, {said.Act.Text} ({string.Join(", ", said.Reasons.Select(r => r.Criterion.Id))})"
        );
        Assert.Contains(act, said.Act.Text, StringComparison.OrdinalIgnoreCase);
        return this;
    }

    /// <summary>The first thing due, on whatever limb.</summary>
    public Played First(string time, string due, bool atOnce = false)
    {
        var first = Now(time).Due[0];
        Assert.Contains(due, first.Said(), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(atOnce, first.AtOnce);
        return this;
    }

    /// <summary>Among what is due by then.</summary>
    public Played Due(string time, string due)
    {
        Assert.Contains(Now(time).Due, d => d.At <= Some.At(time) && d.Said().Contains(due, StringComparison.OrdinalIgnoreCase));
        return this;
    }

    public Played Cautions(string time, string caution, Limb limb = Limb.LeftLeg)
    {
        Assert.Contains(
            Now(time).Limbs.Single(l => l.Limb == limb).Act.Cautions,
            c => c.Contains(caution, StringComparison.OrdinalIgnoreCase)
        );
        return this;
    }

    public Judgement Now(string time) => Judge.At(record, ShippedRules.Book, Some.At(time));
}
