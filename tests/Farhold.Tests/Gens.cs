using System.Collections.Immutable;
using CsCheck;

namespace Farhold.Tests;

/// <summary>Generators of what goes into a record. Times fall on few minutes and names are few, so that things collide.</summary>
public static partial class Gens
{
    /// <summary>How many cases a law gets: <c>FARHOLD_CASES</c> is a percentage, for mutation runs (few) and long nights (many).</summary>
    public static int Cases(int usual) => Of(usual, 100);

    /// <summary>The same for a law that takes long: a quarter of them where nothing is said. <c>./test nightly</c> gives it all.</summary>
    public static int LongCases(int usual) => Of(usual, 25);

    private static int Of(int usual, int unsaid) => Math.Max(1, usual * (Percent ?? unsaid) / 100);

    private static readonly int? Percent = int.TryParse(Environment.GetEnvironmentVariable("FARHOLD_CASES"), out var percent)
        ? percent
        : null;

    public static readonly Instant Midnight = Some.At("00:00");

    /// <summary>A minute of the twelve hours after midnight.</summary>
    public static readonly Gen<Instant> Moment = Gen.Int[0, 12 * 60].Select(m => Midnight + Duration.FromMinutes(m));

    /// <summary>Mostly instants, otherwise intervals of up to an hour and a half, which overlap often.</summary>
    public static readonly Gen<Happened> When = Gen.Frequency(
        (2, Moment.Select(Happened.At)),
        (1, Gen.Select(Moment, Gen.Int[1, 90], (from, length) => new Happened(from, from + Duration.FromMinutes(length))))
    );

    public static readonly Gen<EntryId> Id = Gen.Select(
        Gen.OneOf("a7k3", "m2rt", "Q", "x-1", "d_9.z"),
        Gen.Int[1, int.MaxValue],
        (device, number) => new EntryId(device, number)
    );

    private static readonly Gen<string> Wound = Gen.OneOf("w1", "w1", "w1", "w2", "w3");
    private static readonly Gen<string> Tourniquet = Gen.OneOf("t1", "t1", "t2", "t3");
    private static readonly Gen<Limb> OnLimb = Gen.OneOf(Limb.LeftLeg, Limb.LeftLeg, Limb.LeftLeg, Limb.RightArm);

    /// <summary>128 bits in base32, as a device would draw them.</summary>
    private static readonly Gen<string> Identity = Gen.OneOf("4ovs6zt3mbqe5dxhcwkn2rjayu", "aaaaaaaaaaaaaaaaaaaaaaaaaa");

    /// <summary>Texts with what JSON has to escape, and letters beyond ASCII.</summary>
    private static readonly Gen<string> Words = Gen.OneOf(
        "a",
        "calm",
        "två \"ord\"",
        "line\nbreak",
        "tab\t\\ back",
        "雪",
        "😀 half past",
        "<&'>",
        "\u0001 and \u007f",
        "é"
    );

    private static readonly Gen<ImmutableArray<string>> List = Gen.Frequency(
        (1, Gen.Const(default(ImmutableArray<string>))),
        (2, Words.Array[0, 3].Select(a => a.ToImmutableArray()))
    );

    /// <summary>Every kind but amendments and withdrawals, with every field given or not.</summary>
    public static readonly Gen<Payload> Statement = Gen.OneOf<Payload>(
        Gen.Select(
            Words,
            Maybe<Sex>(),
            Maybe(FieldRange.AgeYears),
            Maybe(FieldRange.MassKg),
            List,
            List,
            Gen.Select(Maybe(Words), Maybe(Identity), Flag()),
            (alias, sex, age, mass, allergies, medicines, more) =>
                (Payload)new Payload.CasualtyOpened(alias, sex, age, mass, allergies, medicines, more.Item1, more.Item2, more.Item3)
        ),
        Gen.Select(
            Wound,
            OnLimb,
            Any<BodyRegion>(),
            Gen.Bool,
            Any<WoundNature>(),
            Gen.Select(Maybe(Words), Maybe<BodySide>(), Maybe<BodyFace>()),
            (wound, limb, region, onLimb, nature, more) =>
                (Payload)
                    new Payload.WoundFound(wound, onLimb ? limb : null, onLimb ? null : region, nature, more.Item1, more.Item2, more.Item3)
        ),
        Gen.Select(
            Tourniquet,
            OnLimb,
            Maybe(Words),
            Maybe<TourniquetMake>(),
            Maybe(Wound),
            Maybe<TighteningReason>(),
            Gen.Select(Maybe<TourniquetSite>(), Flag()),
            (t, limb, place, make, wound, why, site) =>
                (Payload)new Payload.TourniquetTightened(t, limb, place, make, wound, why, site.Item1, site.Item2)
        ),
        Tourniquet.Select(t => (Payload)new Payload.TourniquetSlackened(t)),
        Tourniquet.Select(t => (Payload)new Payload.TourniquetRemoved(t)),
        Gen.Select(Wound, Any<PackingMaterial>(), (w, m) => (Payload)new Payload.WoundPacked(w, m)),
        Gen.Select(Wound, Within(FieldRange.Minutes), Flag(), (w, m, c) => (Payload)new Payload.PressureHeld(w, m, c)),
        Gen.Select(Wound, Any<DressingKind>(), (w, d) => (Payload)new Payload.DressingApplied(w, d)),
        Gen.Select(Wound, Any<Bleeding>(), (w, b) => (Payload)new Payload.BleedingChecked(w, b)),
        Gen.Select(Wound, Tourniquet, (w, t) => (Payload)new Payload.AttemptStarted(w, t)),
        Gen.Select(Wound, Tourniquet, Any<AttemptOutcome>(), Maybe(Words), (w, t, o, n) => (Payload)new Payload.AttemptEnded(w, t, o, n)),
        SomeSigns(),
        Gen.Select(Gen.Bool, Maybe<Watcher>(), (able, who) => (Payload)new Payload.WatchStated(able, who)),
        Gen.Select(
            Gen.OneOf("haemostatic-gauze", "plain-gauze", "cloth", "pressure-dressing", "blanket"),
            Gen.Int[0, 3],
            (item, count) => (Payload)new Payload.SuppliesStated(item, count)
        ),
        Gen.Select(
            Words,
            Within(FieldRange.Amount),
            Words,
            Words,
            Maybe(Words),
            (drug, amount, unit, route, note) => (Payload)new Payload.DrugGiven(drug, amount, unit, route, note)
        ),
        Gen.Select(Any<Fluid>(), Within(FieldRange.Millilitres), Words, (f, ml, route) => (Payload)new Payload.FluidGiven(f, ml, route)),
        Within(FieldRange.Millilitres).Select(ml => (Payload)new Payload.UrineMeasured(ml)),
        Gen.Select(
            Gen.OneOf("signs", "help", "tourniquet.left-leg", "gap-a7k3-1"),
            Maybe(Words),
            (t, n) => (Payload)new Payload.TaskDone(t, n)
        ),
        Help(),
        Gen.Select(
            Flag(),
            Flag(),
            Flag(),
            Flag(),
            Flag(),
            (bleeding, trunk, breathing, cold, thinner) =>
                (Payload)new Payload.CasualtyLookedOver(bleeding, trunk, breathing, cold, thinner)
        ),
        Gen.Select(
            OnLimb,
            Any<BodyRegion>(),
            Gen.Bool,
            Any<LookFound>(),
            Maybe(Words),
            (limb, region, onLimb, found, note) =>
                (Payload)new Payload.RegionLooked(onLimb ? limb : null, onLimb ? null : region, found, note)
        ),
        Gen.Select(Gen.Bool, Maybe(Words), Maybe(Words), (reached, who, how) => (Payload)new Payload.ContactTried(reached, who, how)),
        Gen.Select(Words, Words, (to, text) => (Payload)new Payload.QuestionAsked(to, text)),
        Gen.Select(Id, Maybe(Words), (question, note) => (Payload)new Payload.QuestionTaken(question, note)),
        Gen.Select(
            Words,
            Words,
            Allows(),
            Gen.Frequency((1, Gen.Const((EntryId?)null)), (1, Id.Select(id => (EntryId?)id))),
            Gen.Frequency((1, Gen.Const((Instant?)null)), (1, Moment.Select(at => (Instant?)at))),
            Gen.Select(Flag(), Maybe(Words)),
            (from, text, allows, answers, until, more) =>
                (Payload)new Payload.AdviceReceived(from, text, allows, answers, until, more.Item1, more.Item2)
        ),
        Gen.Select(
            Any<Movement>(),
            Any<MovePhase>(),
            Maybe(Words),
            (how, phase, note) => (Payload)new Payload.CasualtyMoved(how, phase, note)
        ),
        Gen.Select(
            Within(FieldRange.Lat),
            Within(FieldRange.Lon),
            Maybe(FieldRange.AccuracyM),
            Maybe(FieldRange.AltitudeM),
            (lat, lon, accuracy, altitude) => (Payload)new Payload.PositionNoted(lat, lon, accuracy, altitude)
        ),
        Gen.Select(
            Words,
            Flag(),
            OnLimb,
            Maybe<LimbFate>(),
            Gen.Select(Maybe(Words), Maybe(Words), Flag(), Flag()),
            Gen.Select(Maybe<NerveFate>(), Maybe<KidneyFate>(), Maybe(FieldRange.HospitalDays)),
            (from, survived, limb, fate, more, organs) =>
                (Payload)
                    new Payload.OutcomeReported(
                        from,
                        survived,
                        fate is null ? null : limb,
                        fate,
                        more.Item1,
                        more.Item2,
                        more.Item3,
                        organs.Item1,
                        organs.Item2,
                        more.Item4,
                        organs.Item3
                    )
        ),
        Gen.Select(
            Words,
            Maybe(Words),
            Maybe<Standing>(),
            Maybe(Words),
            Maybe(Words),
            Moment,
            List,
            (rules, local, standing, issuer, reason, until, loosened) =>
                (Payload)
                    new Payload.RulesStated(
                        rules,
                        new string('a', 64),
                        local,
                        local is null ? null : new string('b', 64),
                        standing,
                        issuer,
                        reason,
                        reason is null ? null : until,
                        loosened
                    )
        ),
        Gen.Select(Any<Mechanism>(), Maybe(Words), (how, note) => (Payload)new Payload.InjuryStated(how, note)),
        Gen.Select(Any<LookStep>(), Any<StepFound>(), Maybe(Words), (s, found, note) => (Payload)new Payload.StepLooked(s, found, note)),
        Gen.Select(
            Gen.OneOf(Gen.Const("1"), Gen.Const("2.1.3")),
            Any<StageState>(),
            Maybe(Words),
            (stage, became, note) => (Payload)new Payload.StageNoted(stage, became, note is null ? "ridge" : null, note)
        ),
        Gen.Select(
            Within(FieldRange.AirC),
            Maybe(FieldRange.WindKmh),
            Maybe(Words),
            (air, wind, note) => (Payload)new Payload.WeatherStated(air, wind, note)
        ),
        Words.Select(text => (Payload)new Payload.NoteWritten(text)),
        Gen.Select(Any<CareEnd>(), Maybe(Words), Maybe(Words), (how, to, note) => (Payload)new Payload.CareEnded(how, to, note)),
        Gen.OneOf("wound.stitched", "note.2").Select(kind => (Payload)new Payload.OfNewerVersion(kind))
    );

    /// <summary>Every kind there is.</summary>
    public static readonly Gen<Payload> AnyPayload = Gen.Frequency(
        (8, Statement),
        (
            1,
            Gen.Select(
                Id,
                Gen.OneOf("{}", """{"note":null}""", """{"heartRate":90,"pale":false}"""),
                (target, replace) => (Payload)new Payload.EntryAmended(target, JsonText.Of(replace))
            )
        ),
        (1, Gen.Select(Id, Words, (target, reason) => (Payload)new Payload.EntryWithdrawn(target, reason)))
    );

    public static Gen<T> Any<T>()
        where T : struct, Enum => Gen.OneOf(Enum.GetValues<T>());

    /// <summary>A number a field accepts: the ends, whole ones, and any other.</summary>
    public static Gen<double> Within(FieldRange range) =>
        range.Whole
            ? Gen.Int[(int)range.Min, (int)range.Max].Select(n => (double)n)
            : Gen.Frequency(
                (1, Gen.OneOf(range.Min, range.Max)),
                (2, Gen.Int[(int)Math.Ceiling(range.Min), (int)range.Max].Select(n => (double)n)),
                (2, Gen.Double[range.Min, range.Max])
            );

    private static Gen<double?> Maybe(FieldRange range) =>
        Gen.Frequency((1, Gen.Const((double?)null)), (2, Within(range).Select(n => (double?)n)));

    private static Gen<T?> Maybe<T>()
        where T : struct, Enum => Gen.Frequency((1, Gen.Const((T?)null)), (2, Any<T>().Select(v => (T?)v)));

    private static Gen<string?> Maybe(Gen<string> gen) => Gen.Frequency((1, Gen.Const((string?)null)), (2, gen.Select(v => (string?)v)));

    private static Gen<bool?> Flag() => Gen.OneOf((bool?)null, true, false, false);

    private static Gen<ImmutableArray<string>> Allows() =>
        Gen.OneOf<ImmutableArray<string>>(default, [], ["attempt"], ImmutableArray.Create("fluids", "attempt"));

    private static Gen<Payload> SomeSigns()
    {
        var numbers = Gen.Select(
            Maybe(FieldRange.HeartRate),
            Maybe(FieldRange.RespiratoryRate),
            Maybe(FieldRange.Systolic),
            Maybe(FieldRange.Diastolic),
            Maybe(FieldRange.Spo2),
            Maybe(FieldRange.TemperatureC),
            Gen.Select(Maybe(FieldRange.CapillaryRefillS), Maybe(FieldRange.Pain))
        );
        var parts = Gen.Select(
            Maybe(FieldRange.Eye),
            Maybe(FieldRange.Verbal),
            Maybe(FieldRange.Motor),
            (e, v, m) => new GlasgowParts((int?)e, (int?)v, (int?)m)
        );
        var words = Gen.Select(
            Maybe<Mental>(),
            Maybe<RadialPulse>(),
            Gen.Frequency((1, Gen.Const((GlasgowParts?)null)), (1, parts.Select(p => (GlasgowParts?)p))),
            Gen.Select(OnLimb, Any<DistalPulse>(), Gen.Bool)
        );
        var flags = Gen.Select(Flag(), Flag(), Flag(), Flag(), Flag(), Flag());
        return Gen.Select(
            numbers,
            words,
            flags,
            (n, w, f) =>
                (Payload)
                    new Payload.SignsTaken
                    {
                        HeartRate = n.Item1,
                        RespiratoryRate = n.Item2,
                        Systolic = n.Item3,
                        Diastolic = n.Item4 > n.Item3 ? null : n.Item4,
                        Spo2 = n.Item5,
                        TemperatureC = n.Item6,
                        CapillaryRefillS = n.Item7.Item1,
                        Pain = n.Item7.Item2,
                        Mental = w.Item1,
                        RadialPulse = w.Item2,
                        Gcs = w.Item3,
                        DistalPulse = w.Item4.Item3
                            ? ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(w.Item4.Item1, w.Item4.Item2)
                            : null,
                        Dizzy = f.Item1,
                        Pale = f.Item2,
                        Cool = f.Item3,
                        Clammy = f.Item4,
                        OnOxygen = f.Item5,
                        NoPressureCuff = f.Item6,
                    }
        );
    }

    private static Gen<Payload> Help() =>
        Gen.Select(
            Moment,
            Gen.Int[0, 300],
            Gen.Int[0, 600],
            Gen.Bool,
            Gen.Frequency((1, Gen.Const(false)), (3, Gen.Const(true))),
            Gen.Select(Maybe(Words), Maybe(Words)),
            Maybe<HelpCare>(),
            (likely, before, after, early, late, more, care) =>
                (Payload)
                    new Payload.HelpExpected(
                        likely,
                        early ? likely - Duration.FromMinutes(before) : null,
                        late ? likely + Duration.FromMinutes(after) : null,
                        more.Item1,
                        more.Item2,
                        care
                    )
        );
}
