using Farhold.App.Words;

namespace Farhold.App.Care;

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

    /// <summary>
    /// Bleeding before all; then an attempt, under way or to be made while all it needs is known and fresh; then what is
    /// overdue; then what the verdict waits for.
    /// </summary>
    public Step? First()
    {
        if (picture.Due.FirstOrDefault(d => d.AtOnce) is { } atOnce)
            return OfDue(atOnce);
        if (picture.Limbs.IsEmpty && picture.Watched.IsEmpty)
            return new(texts.QuickTightened, Opens: Quick.Tightened);
        if (UnderWay is { } limb)
            return new(texts.AttemptGoOn, Goes: Attempt(limb));
        if (picture.Limbs.FirstOrDefault(l => l.Verdict == Verdict.Attempt) is { } ready)
            return new(texts.QuickAttempt, Goes: Attempt(ready.Limb));
        if (picture.Due.FirstOrDefault(d => d.Overdue && !IsCare(d)) is { } overdue)
            return OfDue(overdue);
        if (picture.Limbs.FirstOrDefault(l => l.Verdict == Verdict.CheckFirst) is { CheckFirst: [var look, ..] })
            return OfInput(look);
        return picture.Due.FirstOrDefault() is { } due ? IsCare(due) ? new(texts.CareDue, Goes: "sustain") : OfDue(due) : null;
    }

    /// <summary>What the place Sustain shows with its reason: a bare tick would not say of what.</summary>
    private static bool IsCare(DueTask due) => due.Group != TaskGroup.Check || due.Task == "dressings";

    public Step OfDue(DueTask due)
    {
        var dot = due.Task.IndexOf('.', StringComparison.Ordinal);
        return (dot < 0 ? due.Task : due.Task[..dot]) switch
        {
            "tighten" => Tighten(due.Limb!.Value),
            "signs" => new(texts.TakeSigns, Goes: "signs/take"),
            "tourniquet" or "watch" => new(texts.QuickBleeding, Opens: Quick.Bleeding),
            "pulse-beyond" => new(texts.QuickBeyond, Opens: Quick.Beyond),
            "reassess" => new(texts.Reassess, Goes: "why/" + Wire.Word(due.Limb!.Value)),
            "help" => new(texts.QuickHelp, Opens: Quick.Help),
            "drink" when due.LookFirst.IsEmpty && Drink(due) is { } ml => new(texts.DrankMl(Say.Number(ml)), Logs: new Payload.FluidGiven(Fluid.OralWater, ml, "mouth")),
            "drink" or "release-fluid" => new(texts.LogFluid, Goes: "enter/" + Kinds.Wire(Kind.FluidGiven)),
            "urine" or "release-urine" => new(texts.LogUrine, Goes: "enter/" + Kinds.Wire(Kind.UrineMeasured)),
            "pain" => new(texts.SignPain, Goes: "signs/take/pain"),
            _ when due.Every is not null => new(texts.TickOff, Logs: new Payload.TaskDone(due.Task)),
            _ when Doubt.IsOfChain(due.Task) => new(texts.SeenAndSettled, Logs: new Payload.TaskDone(due.Task, texts.ChainLookedAt)),
            _ => new(texts.SeenAndSettled, Logs: new Payload.TaskDone(due.Task)),
        };
    }

    /// <summary>Another answer to the same, for another reason; null where there is none.</summary>
    public Step? OrElse(DueTask due) =>
        Doubt.IsOfChain(due.Task) ? new(texts.Rewritten, Logs: new Payload.TaskDone(due.Task, texts.RewrittenReason)) : null;

    public Step OfInput(Input input) => input switch
    {
        _ when input == Input.Bleeding => new(texts.QuickBleeding, Opens: Quick.Bleeding),
        _ when input == Input.WatchAble => new(texts.QuickWatch, Opens: Quick.Watch),
        _ when input == Input.Packing || input == Input.PressureDressing => new(texts.QuickSupplies, Opens: Quick.Supplies),
        _ when input == Input.WoundNature => new(texts.QuickWound, Opens: Quick.Wound),
        _ when input == Input.HelpWithin => new(texts.QuickHelp, Opens: Quick.Help),
        _ when input == Input.Oversight || input == Input.FurtherAttemptAllowed =>
            new(texts.LogAdvice, Goes: "enter/" + Kinds.Wire(Kind.AdviceReceived)),
        _ when input == Input.TourniquetTight => new(texts.QuickTightened, Opens: Quick.Tightened),
        _ when input == Input.RecordWhole => new(texts.PlaceLog, Goes: "log"),
        _ when input == Input.AgeYears && Opened is { } opened => new(texts.EnterAge, Goes: $"amend/{opened}"),
        _ when input == LongInput.PulseBeyond => new(texts.QuickBeyond, Opens: Quick.Beyond),
        _ when input == LongInput.UrineFlow || input == LongInput.UrineMlPerHour => new(texts.LogUrine, Goes: "enter/" + Kinds.Wire(Kind.UrineMeasured)),
        _ when input == Input.ShockIndex => OfInput(Input.Systolic),
        _ when Sign.Of(input.Name.Replace("Course", "", StringComparison.Ordinal)) is { } sign => new(texts.TakeSigns, Goes: "signs/take/" + sign.Wire),
        _ => new(texts.PlaceLog, Goes: "log"),
    };

    /// <summary>The tourniquet that is on the limb, tightened now; one tap, since nothing may come before it.</summary>
    public Step Tighten(Limb limb)
    {
        var on = picture.Limbs.Select(l => l.Clock).Concat(picture.Watched.Select(w => w.Clock)).First(c => c.Limb == limb).Tourniquets;
        Payload.TourniquetTightened again = on is [.., var last]
            ? Retighten.Of(last, limb, state)
            : new(NewNames.Tourniquet(record), limb, Wound: NewNames.WoundFor(limb, state));
        return new(texts.TightenedNow(Say.Limb(limb), again.Tourniquet), Logs: again);
    }

    /// <summary>A mug; for a child its share by mass, and null where that is not known.</summary>
    private double? Drink(DueTask due) => Circumstances.Opened(state, picture.At) is var person && ChildFigures.Fit(person)
        ? ChildFigures.DrinkMl(person!.MassKg, due.Every)
        : MugMl;

    private EntryId? Opened => state.Of(Kind.CasualtyOpened).Select(o => (EntryId?)o.Id).FirstOrDefault();

    private Limb? UnderWay =>
        picture.Limbs.Where(l => l.Attempt is not null).Select(l => (Limb?)l.Limb).FirstOrDefault()
        ?? picture.Watched.Where(w => w.Attempt is not null).Select(w => (Limb?)w.Limb).FirstOrDefault();

    private static string Attempt(Limb limb) => "attempt/" + Wire.Word(limb);
}
