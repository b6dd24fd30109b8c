using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>Facts in sentences, shared by every form: what is unknown is said to be, ranges stay ranges, disputes are told.</summary>
public sealed class FactWords(CareFacts facts, DateTimeZone zone)
{
    private static string Disagrees => HandOverTexts.Disagrees;

    public CareFacts Facts => facts;

    public TimeWords Times { get; } = new(zone, facts.At);

    private Person Person => facts.Person;

    /// <summary><c>Runa, female, 34 years, 68 kg</c>.</summary>
    public string Who =>
        Plain.Line(
            string.Join(
                ", ",
                Or(Person.Aliases, a => a, HandOverTexts.NameNotKnown),
                Or(Person.Sexes, Word, HandOverTexts.SexNotKnown),
                Or(Person.AgesYears, a => HandOverTexts.Years(Say.Number(a)), HandOverTexts.AgeNotKnown),
                Or(Person.MassesKg, m => HandOverTexts.Kilograms(Say.Number(m)), HandOverTexts.MassNotKnown)
            )
        );

    public string Allergies => Plain.Line(HandOverTexts.Allergies(Listed(Person.Allergies)));

    public string Medicines => Plain.Line(HandOverTexts.OwnMedicines(Listed(Person.Medicines)));

    public string History => Plain.Line(HandOverTexts.History(Or(Person.Histories, h => h, HandOverTexts.NotRecorded)));

    /// <summary>One line a wound, then one for each other region told of.</summary>
    public ImmutableArray<string> Wounds => facts.Wounds.IsEmpty ? [HandOverTexts.NoWound] : [.. facts.Wounds.Select(Of)];

    public string Of(WoundFact wound) =>
        Plain.Line(
            HandOverTexts.Wound(wound.Name)
                + string.Join(
                    "; ",
                    [
                        Or(wound.Found, Found, HandOverTexts.PlaceNotRecorded),
                        HandOverTexts.Bleeding(
                            Or(
                                wound.LastLook,
                                l => $"{Bleeds(l.As<Payload.BleedingChecked>().Bleeding)} {Times.At(l.When)}",
                                HandOverTexts.NotLookedAt
                            )
                        ),
                    ]
                )
        );

    /// <summary>Tightness, first tightening and its age.</summary>
    public string Tourniquet(LimbFact limb) =>
        Plain.Line(
            HandOverTexts.TiedSince(Say.Limb(limb.Limb), Tight(limb), Times.At(limb.FirstTightened), Times.Ago(limb.FirstTightened))
        );

    public static string Flow(LimbFact limb) => HandOverTexts.WithoutFlow(Say.Limb(limb.Limb), Say.Elapsed(limb.Occluded));

    public string Limit(LimbFact limb) =>
        limb.LimitAt > facts.At
            ? HandOverTexts.LimitIn(
                Say.Limb(limb.Limb),
                Say.Duration(limb.LimitAt - limb.FirstTightened.Earliest),
                Times.At(limb.LimitAt),
                Say.Duration(limb.LimitAt - facts.At)
            )
            : HandOverTexts.LimitPassed(
                Say.Limb(limb.Limb),
                Say.Duration(limb.LimitAt - limb.FirstTightened.Earliest),
                Times.At(limb.LimitAt)
            );

    public static string Verdict(LimbFact limb) =>
        limb switch
        {
            { Verdict: { } v } => $"{Say.Limb(limb.Limb)}: {VerdictWords.Of(v.Verdict)} ({Wire.Word(v.Verdict)})",
            { Observed: { } w } => $"{Say.Limb(limb.Limb)}: {VerdictWords.Of(w)}",
            _ => throw new UnreachableException(),
        };

    public string Beyond(LimbFact limb) =>
        HandOverTexts.PulseBelow(Say.Limb(limb.Limb))
        + (limb.BeyondIsOfBefore ? HandOverTexts.NotCheckedSince : "")
        + Or(
            limb.DistalPulse,
            s => $"{Word(s.As<Payload.SignsTaken>().DistalPulse![limb.Limb])} {Times.At(s.When)}",
            HandOverTexts.NotChecked
        );

    /// <summary>Every tightening, slackening and removal with its time and place.</summary>
    public ImmutableArray<string> Events(LimbFact limb) => [.. limb.Events.Select(e => Timed(e))];

    public ImmutableArray<string> Attempts(LimbFact limb) =>
        limb.Attempts.IsEmpty
            ? [HandOverTexts.NoAttempt(Say.Limb(limb.Limb))]
            :
            [
                .. limb.Attempts.Select(
                    (a, i) =>
                        Plain.Line(
                            HandOverTexts.Attempt(Say.Limb(limb.Limb), Say.Number(i + 1), a.Tourniquet, Times.At(a.Started), Came(a))
                        )
                ),
            ];

    public string Shock => HandOverTexts.Shock(VerdictWords.Of(facts.Judgement.Shock));

    /// <summary>What was taken, each with age and course, then what nobody took.</summary>
    public ImmutableArray<string> Signs
    {
        get
        {
            var taken = facts.Signs.Where(s => !s.Latest.IsEmpty).Select(Of).ToImmutableArray();
            var missing = facts.Signs.Where(s => s.Latest.IsEmpty).Select(s => s.Kind.Name).ToArray();
            return missing.Length == 0 ? taken : [.. taken, HandOverTexts.SignsNotRecorded(string.Join(", ", missing))];
        }
    }

    public string Of(SignFact sign) =>
        Plain.Line(
            sign.Kind.Name
                + (sign.Latest.All(v => v.Number is not null) ? " " : ": ")
                + Or(
                    sign.Latest,
                    v => $"{v.Text}, {Times.Ago(v.When)}{(v.Stale ? HandOverTexts.TooOld : "")}{Corrected(v.Of)}",
                    HandOverTexts.NotRecorded
                )
                + sign.Course switch
                {
                    SignCourse.Rising => HandOverTexts.Rising,
                    SignCourse.Falling => HandOverTexts.Falling,
                    SignCourse.NoneShown => HandOverTexts.NoChange,
                    _ => "",
                }
        );

    /// <summary>What was last seen of the rest of the casualty, then what nobody looked at, then <see cref="Looks"/>.</summary>
    public ImmutableArray<string> Rest
    {
        get
        {
            var looked = facts.Rest.Where(r => !r.Latest.IsEmpty).Select(Of);
            var missing = facts.Rest.Where(r => r.Latest.IsEmpty).Select(r => r.Kind.Name).ToArray();
            return [.. looked, .. missing.Length == 0 ? (string[])[] : [HandOverTexts.RestNotLooked(string.Join(", ", missing))], .. Looks];
        }
    }

    /// <summary>
    /// Parts and steps of the first look: found clear, clear although the record says otherwise, with something found, that could not be
    /// looked at, and with no look recorded.
    /// </summary>
    public ImmutableArray<string> Looks
    {
        get
        {
            var looks = LookFact.All(facts).ToLookup(l => (l.Came, Doubted: l.Against is not null));
            var could = looks[(LookCame.CouldNot, false)].Select(l => l.Where + Noted(l)).ToArray();
            return
            [
                .. Line(HandOverTexts.FoundClear, looks[(LookCame.Clear, false)].Select(Aged)),
                .. looks[(LookCame.Clear, true)].Select(l => Plain.Line(HandOverTexts.CalledClear(Aged(l), l.Against ?? ""))),
                .. looks[(LookCame.Found, false)].SelectMany(l => l.Last.Select(Timed)),
                .. Line(HandOverTexts.CouldNotLook, could),
                .. NotLooked(looks[(LookCame.NotLooked, false)]),
            ];

            string[] Line(string head, IEnumerable<string> parts) =>
                string.Join(", ", parts) is { Length: > 0 } all ? [Plain.Line(head + all)] : [];

            string Aged(LookFact look) =>
                $"{look.Where} ({string.Join(HandOverTexts.Or, look.Last.Select(s => Times.Ago(s.When)).Distinct())})";

            string Noted(LookFact look) =>
                look.Last.Select(s => s.What).OfType<Payload.StepLooked>().Select(s => s.Note).OfType<string>().FirstOrDefault() is { } note
                    ? $" ({note})"
                    : "";
        }
    }

    /// <summary>In a line each for the steps of the first look and for regions and limbs; a wound that is recorded was looked at.</summary>
    private static IEnumerable<string> NotLooked(IEnumerable<LookFact> looks)
    {
        var (steps, places) = (looks.Select(l => l.Step).OfType<LookStep>().ToArray(), looks.Where(l => l.Step is null).ToArray());
        if (steps.Length > 0)
            yield return steps.Length == Enum.GetValues<LookStep>().Length
                ? HandOverTexts.NoFirstLook
                : HandOverTexts.StepsMissing(string.Join(", ", steps.Select(Word)));
        if (places.Length > 0)
            yield return HandOverTexts.PlacesMissing(string.Join(", ", places.Select(p => p.Where)));
    }

    /// <summary>How the casualty came to harm; where nobody said, what notes of the wounds say.</summary>
    public ImmutableArray<string> Mechanism
    {
        get
        {
            if (!facts.Injuries.IsEmpty)
                return
                [
                    .. facts.Injuries.Select(s =>
                    {
                        var injury = s.As<Payload.InjuryStated>();
                        return Plain.Line(
                            HandOverTexts.Mechanism(Word(injury.Mechanism), injury.Note is { } note ? $" ({note})" : "", Corrected(s))
                                + (s.Disputed ? Disagrees : "")
                        );
                    }),
                ];
            var notes = facts
                .Wounds.SelectMany(w => w.Found)
                .Select(f => f.As<Payload.WoundFound>().Note)
                .OfType<string>()
                .Distinct()
                .ToArray();
            return notes.Length == 0 ? [HandOverTexts.NoMechanism] : [.. notes.Select(n => Plain.Line(HandOverTexts.MechanismByNote(n)))];
        }
    }

    /// <summary>When the casualty came to harm.</summary>
    public string Injured =>
        Or(facts.Injuries, s => HandOverTexts.Injured(Times.At(s.When), Times.Ago(s.When)), HandOverTexts.NoInjuryTime);

    /// <summary>What is needed, then what may be, then what no need was seen for.</summary>
    public ImmutableArray<string> NeedLines => [.. NeedsSaid.Select(n => n.Line)];

    /// <summary>The same, each with what it says.</summary>
    public ImmutableArray<(Need Need, string Line)> NeedsSaid =>
        [.. Needs.Of(facts).OrderByDescending(n => n.State).Select(n => (n, Plain.Line($"{Asking(n)}: {n.Because}{Until(n)}")))];

    private static string Asking(Need need) =>
        need.State switch
        {
            Truth.Met => HandOverTexts.NeedsIt(need.What),
            Truth.Unknown => HandOverTexts.PerhapsNeeds(need.What),
            _ => HandOverTexts.NoNeed(need.What),
        };

    /// <summary>Limb by limb, then warning signs, those that can't be told, and what must not be done now.</summary>
    public ImmutableArray<string> Recommendations =>
        [
            .. facts.Limbs.IsEmpty ? [HandOverTexts.NothingToRecommend] : (string[])[],
            .. Recommendation.All(facts).Select(r => r.Text),
            .. Recommendation.Open(facts) is { IsEmpty: false } open
                ? [Plain.Line(HandOverTexts.SignsNotTold(string.Join(", ", open)))]
                : (string[])[],
            .. Withheld,
        ];

    /// <summary>What the plan of care has, and must not be done now.</summary>
    public ImmutableArray<string> Withheld =>
        [
            .. facts.Judgement.Withheld.Select(w =>
                Plain.Line(
                    HandOverTexts.NotNow(w.Limb is { } limb ? $", {Say.Limb(limb)}" : "", w.Text)
                        + (w.Used.IsEmpty ? "" : HandOverTexts.ByTheRecord(string.Join("; ", w.Used.Select(u => u.Said))))
                )
            ),
        ];

    private string Until(Need need) =>
        need.Until is not { } until
            ? ""
            : HandOverTexts.WindowAndLimit(
                Say.Duration(facts.Judgement.Protocol.Clock.Window),
                Times.At(until.Window),
                Say.Duration(facts.Judgement.Protocol.Clock.Limit),
                Times.At(until.Limit)
            );

    public string Of(RestFact rest) =>
        Plain.Line(
            $"{rest.Kind.Name}: " + Or(rest.Latest, s => $"{rest.Said(s)}, {Times.Ago(s.When)}{Corrected(s)}", HandOverTexts.NotLookedAt)
        );

    /// <summary>Care of wounds and moves, drugs, fluids with sums, urine.</summary>
    public ImmutableArray<string> Care =>
        [.. facts.Wounds.SelectMany(w => w.Care).Concat(facts.Moves).OrderBy(s => s.When.Latest).Select(Timed), .. Given];

    /// <summary>Drugs and fluids one by one, then sums.</summary>
    public ImmutableArray<string> Given =>
        [
            .. facts.Drugs.IsEmpty ? [HandOverTexts.NoDrug] : facts.Drugs.Select(Timed),
            .. facts.DrugSums.Where(s => s.Amount.Times > 1).Select(s => Plain.Line(HandOverTexts.DrugInAll(s.Drug, Of(s.Amount), s.Unit))),
            .. facts.FluidSums.IsEmpty
                ? [HandOverTexts.NoFluid]
                : facts.FluidSums.Select(s => HandOverTexts.FluidInAll(Word(s.Fluid), Of(s.Millilitres))),
            facts.Urine.IsEmpty ? HandOverTexts.NoUrine : HandOverTexts.UrineInAll(Of(facts.UrineSum)),
        ];

    /// <summary>Every try to reach advice, question and answer, in order of time.</summary>
    public ImmutableArray<string> Advice =>
        [
            .. facts
                .Contacts.Concat(facts.Questions)
                .Concat(facts.Advice)
                .OrderBy(s => s.When.Latest)
                .ThenBy(s => s.When.Earliest)
                .ThenBy(s => s.Id)
                .Select(Timed),
        ];

    /// <summary>Where the casualty was last: degrees with the side of the globe, fit to be read aloud.</summary>
    public string Position =>
        Plain.Line(
            Or(
                facts.Positions,
                s =>
                {
                    var at = s.As<Payload.PositionNoted>();
                    var within = at.AccuracyM is { } accuracy ? HandOverTexts.WithinMetres(Say.Number(accuracy)) : "";
                    var high = at.AltitudeM is { } altitude
                        ? HandOverTexts.MetresHigh(Say.Number(Math.Abs(altitude)), altitude < 0 ? HandOverTexts.Below : HandOverTexts.Above)
                        : "";
                    return HandOverTexts.Position(
                        Degrees(at.Lat, HandOverTexts.North, HandOverTexts.South),
                        Degrees(at.Lon, HandOverTexts.East, HandOverTexts.West),
                        within,
                        high,
                        Times.At(s.When)
                    );
                },
                HandOverTexts.NoPosition
            )
        );

    /// <summary>When each kind of help is expected; says so where nobody did, or the time has passed.</summary>
    public ImmutableArray<string> Help =>
        facts.Help.IsEmpty
            ? [HandOverTexts.NoHelp]
            : [.. facts.Help.GroupBy(s => s.As<Payload.HelpExpected>().Care).Select(g => Expected(g.Key, [.. g]))];

    private string Expected(HelpCare? care, ImmutableArray<Stated> said) =>
        Plain.Line(
            care switch
            {
                HelpCare.Hands => HandOverTexts.MoreHelpers,
                HelpCare.Clinic => HandOverTexts.AClinic,
                HelpCare.Surgery => HandOverTexts.Surgery,
                null => HandOverTexts.Help,
                _ => throw new UnreachableException(),
            }
                + Or(
                    said,
                    s =>
                    {
                        var help = s.As<Payload.HelpExpected>();
                        var range =
                            (help.Earliest is { } e ? HandOverTexts.Earliest(Times.At(e)) : "")
                            + (help.Latest is { } l ? HandOverTexts.Latest(Times.At(l)) : HandOverTexts.NoLatest);
                        var passed = (help.Latest ?? help.Likely) < facts.At ? HandOverTexts.HasPassed : "";
                        return HandOverTexts.Expected(Times.At(help.Likely), range, passed, help.Basis is { } basis ? $" ({basis})" : "");
                    },
                    HandOverTexts.HelpNotKnown
                )
        );

    public string Watch =>
        Or(
            facts.Watch,
            s =>
                s.As<Payload.WatchStated>() switch
                {
                    { Able: false } => HandOverTexts.NobodyWatches(Times.At(s.When)),
                    { Who: Watcher.Casualty } => HandOverTexts.CasualtyWatches(Times.At(s.When)),
                    _ => HandOverTexts.SomeoneWatches(Times.At(s.When)),
                },
            HandOverTexts.NoWatch
        );

    /// <summary>What comes first is what must be done at once.</summary>
    public ImmutableArray<string> Due =>
        facts.Judgement.Due.IsEmpty
            ? [HandOverTexts.NothingDue]
            :
            [
                .. facts.Judgement.Due.Select(d =>
                    Plain.Line(
                        $"{(d.AtOnce ? HandOverTexts.AtOnce : VerdictWords.IsLate(d, facts.At) ? HandOverTexts.OverdueSince(Times.At(d.At)) : VerdictWords.IsFirst(d, facts.At) ? HandOverTexts.FirstCheckDue(Times.At(d.At)) : d.At <= facts.At ? HandOverTexts.Now : Times.At(d.At))}"
                            + $"{(d.Limb is { } limb ? $", {Say.Limb(limb)}" : "")}: {d.Text}"
                    )
                ),
            ];

    public ImmutableArray<string> Cautions =>
        [.. facts.Practice ? [HandOverTexts.PracticeNotice] : (string[])[], .. facts.Cautions.Select(c => HandOverTexts.Caution(c))];

    public string Protocol =>
        Plain.Line(
            HandOverTexts.ProtocolInForce(facts.Judgement.Protocol.Named)
                + (
                    facts.Judgement.Protocol.Local is not { } local ? ""
                    : local.Standing == Standing.Unsigned ? HandOverTexts.WithTightened(FileHash.Short(local.Hash))
                    : HandOverTexts.WithLocal(local.Id, local.Version, FileHash.Short(local.Hash))
                )
        );

    /// <summary>How care ended, and what was heard of it later.</summary>
    public ImmutableArray<string> Ended => [.. facts.Ended.Select(Timed), .. facts.Outcomes.Select(Timed)];

    public string Helpers => Plain.Line(HandOverTexts.RecordedBy(string.Join(", ", facts.Helpers.Select(h => h.Name))));

    /// <summary>An entry with its time, who, and what became of it.</summary>
    public string Timed(Stated s) =>
        Plain.Line(
            $"{Times.At(s.When)}: {s.Text} ({s.By}{(s.Corrected ? HandOverTexts.Corrected : "")}{(s.Disputed ? HandOverTexts.Disputed : "")})"
        );

    public static string Of(GivenSum sum) =>
        sum.Amount.IsExact
            ? Say.Number(sum.Amount.Low)
            : HandOverTexts.RangeDisagrees(Say.Number(sum.Amount.Low), Say.Number(sum.Amount.High));

    /// <summary>The one, or all of several with a word that the record disagrees, or that there is none.</summary>
    private static string Or<T>(ImmutableArray<T> values, Func<T, string> say, string none)
    {
        var said = values.Select(say).Distinct().ToArray();
        return said.Length == 0 ? none : string.Join(HandOverTexts.Or, said) + (said.Length > 1 ? Disagrees : "");
    }

    private static string Listed(ImmutableArray<string>? items) =>
        items is not { } known ? HandOverTexts.NotRecorded
        : known.IsEmpty ? HandOverTexts.NoneKnown
        : string.Join(HandOverTexts.And, known);

    private static string Found(Stated s)
    {
        var found = s.As<Payload.WoundFound>();
        var place =
            found.Limb is { } limb ? Say.Limb(limb)
            : found.Region is { } region ? Word(region)
            : HandOverTexts.NoPlace;
        return $"{place}: {(found.Nature == WoundNature.Other ? HandOverTexts.OtherWound : Word(found.Nature))}{(found.Note is { } note ? $" ({note})" : "")}{Corrected(s)}";
    }

    private static string Degrees(double value, string positive, string negative) =>
        HandOverTexts.Degrees(string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(value):0.#####}"), value < 0 ? negative : positive);

    private static string Corrected(Stated s) => s.Corrected ? HandOverTexts.Corrected : "";

    private string Tight(LimbFact limb) =>
        limb.Tight switch
        {
            Truth.Met => HandOverTexts.TourniquetTight,
            Truth.NotMet => limb.Loosened is { } at ? HandOverTexts.TourniquetLoosenedAt(Times.At(at)) : HandOverTexts.TourniquetLoosened,
            _ => HandOverTexts.TourniquetPerhaps,
        };

    private string Came(Attempt attempt) =>
        attempt.Result switch
        {
            AttemptResult.UnderWay => HandOverTexts.UnderWay,
            AttemptResult.Held => HandOverTexts.AttemptHeld + EndedAt(attempt),
            AttemptResult.Bled => HandOverTexts.AttemptBled + EndedAt(attempt),
            AttemptResult.Abandoned => HandOverTexts.AttemptAbandoned + EndedAt(attempt),
            _ => throw new UnreachableException(),
        };

    private string EndedAt(Attempt attempt) => attempt.Ended is { } ended ? $", {Times.At(ended)}" : "";

    private static string Bleeds(Bleeding bleeding) =>
        bleeding switch
        {
            Bleeding.None => HandOverTexts.BleedsNone,
            Bleeding.Oozing => HandOverTexts.BleedsOozing,
            Bleeding.Active => HandOverTexts.BleedsActive,
            _ => throw new UnreachableException(),
        };

    private static string Word<T>(T value)
        where T : struct, Enum => Say.Word(value);
}
