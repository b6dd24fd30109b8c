using System.Collections.Immutable;
using System.Diagnostics;

namespace Farhold.Records;

/// <summary>From the fields of a line to what the entry says, kind by kind.</summary>
internal static class PayloadReading
{
    public static Payload Read(Kind kind, EntryFields f) => kind switch
    {
        Kind.CasualtyOpened => new Payload.CasualtyOpened(
            f.RequiredText(Field.Alias),
            f.Word<Sex>(Field.Sex),
            f.Number(FieldRange.AgeYears, Field.AgeYears),
            f.Number(FieldRange.MassKg, Field.MassKg),
            f.Texts(Field.Allergies),
            f.Texts(Field.Medicines),
            f.Text(Field.History),
            f.Name(Field.Casualty)),
        Kind.WoundFound => Wound(f),
        Kind.TourniquetTightened => new Payload.TourniquetTightened(
            f.RequiredName(Field.Tourniquet),
            f.RequiredWord<Limb>(Field.Limb),
            f.Text(Field.Place),
            f.Word<TourniquetMake>(Field.Make),
            f.Name(Field.Wound),
            f.Word<TighteningReason>(Field.Why)),
        Kind.TourniquetSlackened => new Payload.TourniquetSlackened(f.RequiredName(Field.Tourniquet)),
        Kind.TourniquetRemoved => new Payload.TourniquetRemoved(f.RequiredName(Field.Tourniquet)),
        Kind.WoundPacked => new Payload.WoundPacked(
            f.RequiredName(Field.Wound), f.RequiredWord<PackingMaterial>(Field.Material)),
        Kind.PressureHeld => new Payload.PressureHeld(
            f.RequiredName(Field.Wound), f.RequiredNumber(FieldRange.Minutes, Field.Minutes)),
        Kind.DressingApplied => new Payload.DressingApplied(
            f.RequiredName(Field.Wound), f.RequiredWord<DressingKind>(Field.Dressing)),
        Kind.BleedingChecked => new Payload.BleedingChecked(
            f.RequiredName(Field.Wound), f.RequiredWord<Bleeding>(Field.Bleeding)),
        Kind.AttemptStarted => new Payload.AttemptStarted(
            f.RequiredName(Field.Wound), f.RequiredName(Field.Tourniquet)),
        Kind.AttemptEnded => new Payload.AttemptEnded(
            f.RequiredName(Field.Wound),
            f.RequiredName(Field.Tourniquet),
            f.RequiredWord<AttemptOutcome>(Field.Outcome),
            f.Text(Field.Note)),
        Kind.SignsTaken => Signs(f),
        Kind.WatchStated => new Payload.WatchStated(f.RequiredFlag(Field.Able), f.Word<Watcher>(Field.Who)),
        Kind.SuppliesStated => new Payload.SuppliesStated(
            f.RequiredName(Field.Item), (int)f.RequiredNumber(FieldRange.Count, Field.Count)),
        Kind.DrugGiven => new Payload.DrugGiven(
            f.RequiredText(Field.Drug),
            f.RequiredNumber(FieldRange.Amount, Field.Amount),
            f.RequiredName(Field.Unit),
            f.RequiredName(Field.Route),
            f.Text(Field.Note)),
        Kind.FluidGiven => new Payload.FluidGiven(
            f.RequiredWord<Fluid>(Field.Fluid),
            f.RequiredNumber(FieldRange.Millilitres, Field.Millilitres),
            f.RequiredName(Field.Route)),
        Kind.UrineMeasured => new Payload.UrineMeasured(f.RequiredNumber(FieldRange.Millilitres, Field.Millilitres)),
        Kind.TaskDone => new Payload.TaskDone(f.RequiredName(Field.Task), f.Text(Field.Note)),
        Kind.HelpExpected => Help(f),
        Kind.CasualtyLookedOver => new Payload.CasualtyLookedOver(
            f.Flag(Field.BleedingElsewhere),
            f.Flag(Field.TrunkWound),
            f.Flag(Field.BreathingHard),
            f.Flag(Field.VeryCold),
            f.Flag(Field.BloodThinner)),
        Kind.RegionLooked => Looked(f),
        Kind.ContactTried => new Payload.ContactTried(f.RequiredFlag(Field.Reached), f.Text(Field.Who), f.Text(Field.How)),
        Kind.QuestionAsked => new Payload.QuestionAsked(f.RequiredText(Field.To), f.RequiredText(Field.Text)),
        Kind.AdviceReceived => new Payload.AdviceReceived(
            f.RequiredText(Field.From),
            f.RequiredText(Field.Text),
            f.Texts(Field.Allows),
            f.OptionalId(Field.Answers),
            f.Time(Field.Until),
            f.Flag(Field.ReadBack)),
        Kind.CasualtyMoved => new Payload.CasualtyMoved(
            f.RequiredWord<Movement>(Field.How), f.RequiredWord<MovePhase>(Field.Phase), f.Text(Field.Note)),
        Kind.PositionNoted => new Payload.PositionNoted(
            f.RequiredNumber(FieldRange.Lat, Field.Lat),
            f.RequiredNumber(FieldRange.Lon, Field.Lon),
            f.Number(FieldRange.AccuracyM, Field.AccuracyM),
            f.Number(FieldRange.AltitudeM, Field.AltitudeM)),
        Kind.OutcomeReported => Outcome(f),
        Kind.RulesStated => new Payload.RulesStated(
            f.RequiredText(Field.Rules),
            f.RequiredName(Field.Hash),
            f.Text(Field.Local),
            f.Name(Field.LocalHash),
            f.Word<Standing>(Field.Standing),
            f.Text(Field.Issuer),
            f.Text(Field.Reason),
            f.Time(Field.Until),
            f.Texts(Field.Loosened)),
        Kind.Note => new Payload.NoteWritten(f.RequiredText(Field.Text)),
        Kind.EntryAmended => new Payload.EntryAmended(f.RequiredId(Field.Target), f.RequiredJsonObject(Field.Replace)),
        Kind.EntryWithdrawn => new Payload.EntryWithdrawn(f.RequiredId(Field.Target), f.RequiredText(Field.Reason)),
        Kind.CareEnded => new Payload.CareEnded(
            f.RequiredWord<CareEnd>(Field.How), f.Text(Field.To), f.Text(Field.Note)),
        Kind.OfNewerVersion => new Payload.OfNewerVersion(f.RequiredText(Field.Kind)),
        _ => throw new UnreachableException(),
    };

    private static Payload.WoundFound Wound(EntryFields f)
    {
        var (limb, region) = Place(f, "a wound is on");
        return new(
            f.RequiredName(Field.Wound), limb, region, f.RequiredWord<WoundNature>(Field.Nature), f.Text(Field.Note));
    }

    private static Payload.RegionLooked Looked(EntryFields f)
    {
        var (limb, region) = Place(f, "a look is at");
        return new(limb, region, f.RequiredWord<LookFound>(Field.Found), f.Text(Field.Note));
    }

    private static (Limb? Limb, BodyRegion? Region) Place(EntryFields f, string what)
    {
        if (f.Has(Field.Limb) == f.Has(Field.Region))
            f.Object(Field.Limb, $"{what} one limb or in one region: give exactly one of limb and region");
        return (f.Word<Limb>(Field.Limb), f.Word<BodyRegion>(Field.Region));
    }

    private static Payload.OutcomeReported Outcome(EntryFields f)
    {
        if (f.Has(Field.Limb) != f.Has(Field.LimbOutcome))
            f.Object(Field.Limb, "limb and limbOutcome go together");
        return new(
            f.RequiredText(Field.From),
            f.Flag(Field.Survived),
            f.Word<Limb>(Field.Limb),
            f.Word<LimbFate>(Field.LimbOutcome),
            f.Text(Field.Note));
    }

    private static Payload.SignsTaken Signs(EntryFields f)
    {
        var signs = new Payload.SignsTaken
        {
            HeartRate = f.Number(FieldRange.HeartRate, Field.HeartRate),
            BreathRate = f.Number(FieldRange.BreathRate, Field.BreathRate),
            Systolic = f.Number(FieldRange.Systolic, Field.Systolic),
            Diastolic = f.Number(FieldRange.Diastolic, Field.Diastolic),
            Spo2 = f.Number(FieldRange.Spo2, Field.Spo2),
            TemperatureC = f.Number(FieldRange.TemperatureC, Field.TemperatureC),
            Mental = f.Word<Mental>(Field.Mental),
            Gcs = f.Object(Field.Gcs, "{eye, verbal, motor}", Glasgow),
            Dizzy = f.Flag(Field.Dizzy),
            Pale = f.Flag(Field.Pale),
            Cool = f.Flag(Field.Cool),
            Clammy = f.Flag(Field.Clammy),
            RadialPulse = f.Word<RadialPulse>(Field.RadialPulse),
            CapillaryRefillS = f.Number(FieldRange.CapillaryRefillS, Field.CapillaryRefillS),
            Pain = f.Number(FieldRange.Pain, Field.Pain),
            DistalPulse = DistalPulses(f),
            OnOxygen = f.Flag(Field.OnOxygen),
            NoPressureCuff = f.Flag(Field.NoPressureCuff),
        };
        if (signs.Diastolic > signs.Systolic)
            f.Object(Field.Diastolic, $"diastolic {signs.Diastolic} is above systolic {signs.Systolic}: swapped?");
        return signs;
    }

    private static GlasgowParts Glasgow(EntryFields f) => new(
        (int?)f.Number(FieldRange.Eye, Field.Eye),
        (int?)f.Number(FieldRange.Verbal, Field.Verbal),
        (int?)f.Number(FieldRange.Motor, Field.Motor));

    private static ImmutableSortedDictionary<Limb, DistalPulse>? DistalPulses(EntryFields f)
    {
        if (!f.Has(Field.DistalPulse))
            return null;
        var pulses = ImmutableSortedDictionary.CreateBuilder<Limb, DistalPulse>();
        foreach (var (name, word, offset) in f.WordMembers(Field.DistalPulse))
        {
            if (Wire.Parse<Limb>(name) is { } limb && word is not null && Wire.Parse<DistalPulse>(word) is { } pulse
                && !pulses.ContainsKey(limb))
                pulses.Add(limb, pulse);
            else
                f.Object(offset, "distalPulse names each limb once, as present or absent");
        }

        return pulses.ToImmutable();
    }

    private static Payload.HelpExpected Help(EntryFields f)
    {
        var help = new Payload.HelpExpected(
            f.RequiredTime(Field.Likely),
            f.Time(Field.Earliest),
            f.Time(Field.Latest),
            f.Text(Field.Basis),
            f.Name(Field.Plan),
            f.Word<HelpCare>(Field.Care));
        if (help.Earliest > help.Likely || help.Latest < help.Likely)
            f.Object(Field.Likely, "the likely time has to lie between earliest and latest");
        return help;
    }
}
