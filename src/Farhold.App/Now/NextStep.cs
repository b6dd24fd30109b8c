using System.Collections.Immutable;

namespace Farhold.App.Now;

/// <summary>Where a tap leads: to an entry at once, to a choice, or to another screen.</summary>
/// <param name="Logs">Logged by the tap itself.</param>
/// <param name="Opens">The choice it opens.</param>
/// <param name="Goes">Address within the casualty.</param>
public sealed record Step(string Text, Payload? Logs = null, Quick? Opens = null, string? Goes = null);

/// <summary>The action that is next, and where each thing to do is done.</summary>
public sealed class NextStep(CareRecord record, Judgement picture, Texts texts)
{
    /// <summary>As the protocol's task says.</summary>
    private const double MugMl = 250;

    private readonly State state = record.Readings[0];

    private LimbActs Acts => field ??= new(state, picture, texts, OfInput);

    /// <summary>
    /// Bleeding before all; then an attempt under way; then whether the bleeding has stopped; then an attempt to be made while all
    /// it needs is known and fresh; then what the decision asks for now; then what is overdue; then what comes later.
    /// </summary>
    public Step? First()
    {
        if (picture.Due.FirstOrDefault(d => d.AtOnce) is { } atOnce)
            return Named(atOnce);
        if (picture.Limbs.IsEmpty && picture.Observed.IsEmpty)
            return picture.Due.FirstOrDefault(d => d is { Leads: true, Limb: null }) is { } untied
                ? OfDue(untied) // a wound that no tourniquet goes on
                : new(texts.QuickTightened, Opens: Quick.Tightened);
        if (UnderWay is { } limb)
            return Named(new(texts.AttemptGoOn, Goes: LimbActs.AttemptOn(limb)), limb);
        if (picture.Due.FirstOrDefault(d => (d.Leads && !d.IsNextAct) || (d.IsWatch && d.Overdue)) is { } look)
            return Named(look);
        var acts = picture.Due.Where(d => d.IsNextAct).ToArray();
        if (acts.FirstOrDefault(a => Limb(a).Verdict == Verdict.Attempt) is { } ready)
            return Named(ready);
        if (acts.FirstOrDefault(IsToDoNow) is { } act)
            return Named(act);
        if (picture.Due.FirstOrDefault(d => d.Overdue && !IsCare(d)) is { } overdue)
            return Named(overdue);
        if (acts is [var later, ..])
            return Named(later);
        return picture.Due.FirstOrDefault() is { } due
            ? IsCare(due)
                ? new(texts.CareDue, Goes: "sustain")
                : Named(due)
            : null;
    }

    private Step Named(DueTask due) => due.Limb is { } limb ? Named(OfDue(due), limb) : OfDue(due);

    /// <summary>Where several limbs are seen to, with the limb: what stands above the button may be about another one.</summary>
    private Step Named(Step step, Limb limb) =>
        picture.Limbs.Length + picture.Observed.Length > 1
        && (step.Opens is Quick.Bleeding or Quick.Beyond || step.Goes == LimbActs.AttemptOn(limb) || step.Goes == Acts.Why(limb).Goes)
            ? step with
            {
                Text = texts.StepOn(step.Text, texts.Within(limb)),
            }
            : step;

    /// <summary>Not where it waits for its time or for help, or where nothing is left to do but to read why.</summary>
    private bool IsToDoNow(DueTask act) =>
        act.At <= picture.At
        && Limb(act).Verdict != Verdict.AwaitHelp
        && OfDue(act).Goes?.StartsWith("why/", StringComparison.Ordinal) != true;

    private LimbVerdict Limb(DueTask act) => picture.Limbs.First(l => l.Limb == act.Limb);

    /// <summary>What the place Sustain shows with its reason: a bare tick would not say of what.</summary>
    private static bool IsCare(DueTask due) => due.Group != TaskGroup.Check || due.Task == "dressings";

    public Step OfDue(DueTask due)
    {
        var dot = due.Task.IndexOf('.', StringComparison.Ordinal);
        return (dot < 0 ? due.Task : due.Task[..dot]) switch
        {
            TaskNames.Next => Acts.Of(Limb(due)),
            TaskNames.Effect => new(texts.HasItStopped, Opens: Quick.Bleeding),
            "bleeding" when dot > 0 => new(texts.QuickBleeding, Opens: Quick.Bleeding),
            "tighten" => Tighten(due.Limb!.Value),
            "signs" or TaskNames.SecondLook => new(texts.TakeSigns, Goes: "signs/take"),
            "tourniquet" or "watch" => new(texts.QuickBleeding, Opens: Quick.Bleeding),
            "pulse-beyond" => new(texts.QuickBeyond, Opens: Quick.Beyond),
            "reassess" or "decide" => Acts.Why(due.Limb!.Value),
            "before-release" when due.Limb == UnderWay => new(texts.AttemptGoOn, Goes: LimbActs.AttemptOn(due.Limb!.Value)),
            TaskNames.Site => new(texts.ReSiteLook, Goes: $"re-site/{Wire.Word(due.Limb!.Value)}"),
            TaskNames.ReSite => new(texts.ReSiteGoOn, Goes: $"re-site/{Wire.Word(due.Limb!.Value)}"),
            "airway" => new(texts.LookStepAgain(texts.StepWord(LookStep.Airway)), Goes: "look/airway"),
            "help" => new(texts.QuickHelp, Opens: Quick.Help),
            "drink" when due.LookFirst.IsEmpty && Drink(due) is { } ml => new(
                texts.DrankMl(texts.Number(ml)),
                Logs: new Payload.FluidGiven(Fluid.OralWater, ml, "mouth")
            ),
            "drink" or "release-fluid" => new(texts.LogFluid, Goes: "enter/" + Kinds.Wire(Kind.FluidGiven)),
            "urine" or "release-urine" => new(texts.LogUrine, Goes: "enter/" + Kinds.Wire(Kind.UrineMeasured)),
            "pain" => new(texts.SignPain, Goes: "signs/take/pain"),
            _ when due.ByDrugList => new(texts.DrugsTitle, Goes: "drugs"),
            "tranexamic-acid" or "pain-relief" or "antibiotics" or "tetanus" => Acts.Advice,
            _ when AskedBack(due.Task) is { } again => again,
            _ when due.Every is not null => new(texts.TickOff, Logs: new Payload.TaskDone(due.Task)),
            _ when Doubt.IsOfChain(due.Task) => new(
                texts.SeenAndSettled,
                Logs: new Payload.TaskDone(due.Task, texts.Recorded.ChainLookedAt)
            ),
            _ when Doubt.IsOfClock(due.Task) => new(
                texts.ThisClockRight,
                Logs: new Payload.TaskDone(due.Task, texts.Recorded.ThisClockReason)
            ),
            _ when Doubt.IsOfOpenings(due.Task) => new(
                texts.OnePersonSure,
                Logs: new Payload.TaskDone(due.Task, texts.Recorded.OnePersonReason)
            ),
            _ when Retraction.IsAcceptedBy(due.Task) => new(
                texts.AcceptUnsaying,
                Logs: new Payload.TaskDone(due.Task, texts.Recorded.AcceptReason)
            ),
            _ => new(texts.SeenAndSettled, Logs: new Payload.TaskDone(due.Task)),
        };
    }

    /// <summary>Where a value that is asked back is read again or corrected; null where none is asked back.</summary>
    private Step? AskedBack(string task) =>
        Question.Parse(task) is not (var about, var field) ? null
        : Sign.Of(field) is { } sign ? new(texts.TakeSigns, Goes: "signs/take/" + sign.Wire)
        : new(texts.Amend, Goes: $"amend/{about}");

    /// <summary>Another answer to the same, for another reason; null where there is none.</summary>
    public Step? OrElse(DueTask due) =>
        Doubt.IsOfChain(due.Task) ? new(texts.Rewritten, Logs: new Payload.TaskDone(due.Task, texts.Recorded.RewrittenReason))
        : Doubt.IsOfClock(due.Task) ? new(texts.OtherClockRight, Logs: new Payload.TaskDone(due.Task, texts.Recorded.OtherClockReason))
        : Doubt.IsOfOpenings(due.Task) || Retraction.IsAcceptedBy(due.Task) ? new(texts.PlaceLog, Goes: "log")
        : null;

    public Step OfInput(Input input) =>
        input switch
        {
            _ when input == Input.Bleeding => new(texts.QuickBleeding, Opens: Quick.Bleeding),
            _ when input == Input.WatchAble || input == Input.WatchAlone => new(texts.QuickWatch, Opens: Quick.Watch),
            _ when input == Input.Packing || input == Input.PressureDressing => new(texts.QuickSupplies, Opens: Quick.Supplies),
            _ when input == Input.WoundNature => new(texts.QuickWound, Opens: Quick.Wound),
            _ when input == Input.TourniquetTight || input == Input.TourniquetMake => new(texts.QuickTightened, Opens: Quick.Tightened),
            _ when input == Input.HelpWithin || input == Input.HelpSoon => new(texts.QuickHelp, Opens: Quick.Help),
            _ when LookedOver.Contains(input) => new(texts.QuickLookedOver, Opens: Quick.LookedOver),
            _ when Asked.Contains(input) => Acts.Advice,
            _ when input == Input.OtherLimbFirst && Acts.OtherLimb(null) is { } other => other,
            _ when input == Input.RecordWhole => new(texts.PlaceLog, Goes: "log"),
            _ when input == Input.AgeYears || input == Input.RateSilent => new(
                texts.EnterAge,
                Goes: Opened is { } opened ? $"amend/{opened}/{FieldRange.AgeYears.Field}" : "enter/" + Kinds.Wire(Kind.CasualtyOpened)
            ),
            _ when input == LongInput.DistalPulse => new(texts.QuickBeyond, Opens: Quick.Beyond),
            _ when input == LongInput.UrineFlow || input == LongInput.UrineMlPerHour => new(
                texts.LogUrine,
                Goes: "enter/" + Kinds.Wire(Kind.UrineMeasured)
            ),
            _ when input == Input.ShockIndex => OfInput(Input.Systolic),
            _ when Looks.Contains(input) => new(texts.TakeSigns, Goes: "signs/take"),
            _ when Sign.Of(input.Name.Replace("Course", "", StringComparison.Ordinal)) is { } sign => new(
                texts.TakeSigns,
                Goes: "signs/take/" + sign.Wire
            ),
            _ => new(texts.PlaceLog, Goes: "log"),
        };

    /// <summary>What one look over the rest of the casualty answers.</summary>
    private static readonly ImmutableArray<Input> LookedOver =
    [
        Input.BleedingElsewhere,
        Input.TrunkWound,
        Input.BreathingHard,
        Input.VeryCold,
        Input.BloodThinner,
    ];

    /// <summary>What advice settles, or that there is none to be had.</summary>
    private static readonly ImmutableArray<Input> Asked =
    [
        Input.Oversight,
        Input.AdviceRefuses,
        Input.NobodyReached,
        Input.FurtherAttemptAllowed,
    ];

    /// <summary>What a whole look at the signs settles.</summary>
    private static readonly ImmutableArray<Input> Looks = [Input.ClearLooks, Input.SoftSigns, Input.SoftSignStays];

    /// <summary>Saying that something has improved since the first attempt bled; null where that changes nothing.</summary>
    public Step? Improved(LimbVerdict limb) =>
        ImprovedChoices.Counts(limb, state, picture) ? new(texts.QuickImproved, Opens: Quick.Improved) : null;

    /// <summary>The tourniquet that is on the limb, tightened now; one tap, since nothing may come before it.</summary>
    public Step Tighten(Limb limb)
    {
        var on = picture.Limbs.Select(l => l.Clock).Concat(picture.Observed.Select(w => w.Clock)).First(c => c.Limb == limb).Tourniquets;
        TighteningReason? why = picture.Observed.Any(w => w.Limb == limb) ? TighteningReason.Bleeding : null;
        var again = on is [.., var last]
            ? Retighten.Of(last, limb, state, why)
            : new(NewNames.Tourniquet(record), limb, Wound: NewNames.WoundFor(limb, state), Why: why);
        return new(texts.TightenedNow(texts.Within(limb), again.Tourniquet), Logs: again);
    }

    /// <summary>A mug; for a child its share by mass, and null where that is not known.</summary>
    private double? Drink(DueTask due) =>
        CasualtyProfile.At(state, picture.At) is var person && ChildFigures.Fit(person)
            ? ChildFigures.DrinkMl(person!.MassKg, due.Every)
            : MugMl;

    private EntryId? Opened => state.Of(Kind.CasualtyOpened).Select(o => (EntryId?)o.Id).FirstOrDefault();

    private Limb? UnderWay =>
        picture.Limbs.Where(l => l.Attempt is not null).Select(l => (Limb?)l.Limb).FirstOrDefault()
        ?? picture.Observed.Where(w => w.Attempt is not null).Select(w => (Limb?)w.Limb).FirstOrDefault();
}
