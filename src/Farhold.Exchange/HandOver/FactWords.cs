using System.Collections.Immutable;
using System.Diagnostics;
using NodaTime;

namespace Farhold.Exchange.HandOver;

/// <summary>Facts in sentences, shared by every form: what is unknown is said to be, ranges stay ranges, disputes are told.</summary>
public sealed class FactWords(CareFacts facts, DateTimeZone zone)
{
    private const string Disagrees = " (the record disagrees)";

    public CareFacts Facts => facts;

    public TimeWords Times { get; } = new(zone, facts.At);

    private Person Person => facts.Person;

    /// <summary><c>Runa, female, 34 years, 68 kg</c>.</summary>
    public string Who => Plain.Line(string.Join(", ",
        Or(Person.Aliases, a => a, "name not known"),
        Or(Person.Sexes, Word, "sex not known"),
        Or(Person.AgesYears, a => $"{Say.Number(a)} years", "age not known"),
        Or(Person.MassesKg, m => $"{Say.Number(m)} kg", "mass not known")));

    public string Allergies => Plain.Line($"allergies: {Listed(Person.Allergies)}");

    public string Medicines => Plain.Line($"own medicines: {Listed(Person.Medicines)}");

    public string History => Plain.Line($"history: {Or(Person.Histories, h => h, "not recorded")}");

    /// <summary>One line a wound, then one for each other region told of.</summary>
    public ImmutableArray<string> Wounds => facts.Wounds.IsEmpty ? ["no wound recorded"] : [.. facts.Wounds.Select(Of)];

    public string Of(WoundFact wound) => Plain.Line($"wound {wound.Name}, " + string.Join("; ",
    [
        Or(wound.Found, Found, "place and kind not recorded"),
        $"bleeding {Or(wound.LastLook, l => $"{Bleeds(l.As<Payload.BleedingChecked>().Bleeding)} {Times.At(l.When)}", "not looked at")}",
    ]));

    /// <summary>Tightness, first tightening and its age.</summary>
    public string Tourniquet(LimbFact limb) => Plain.Line($"{Say.Limb(limb.Limb)}: {Tight(limb)}, "
        + $"first tightened {Times.At(limb.FirstTightened)}, {Times.Ago(limb.FirstTightened)}");

    public static string Flow(LimbFact limb) => $"{Say.Limb(limb.Limb)}: without blood flow {Say.Elapsed(limb.Occluded)} in all";

    public string Limit(LimbFact limb) => limb.LimitAt > facts.At
        ? $"{Say.Limb(limb.Limb)}: time limit of {Say.Duration(limb.LimitAt - limb.FirstTightened.Earliest)} at {Times.At(limb.LimitAt)}, in {Say.Duration(limb.LimitAt - facts.At)}"
        : $"{Say.Limb(limb.Limb)}: time limit of {Say.Duration(limb.LimitAt - limb.FirstTightened.Earliest)} passed {Times.At(limb.LimitAt)}";

    public static string Verdict(LimbFact limb) => limb switch
    {
        { Verdict: { } v } => $"{Say.Limb(limb.Limb)}: {VerdictWords.Of(v.Verdict)} ({Wire.Word(v.Verdict)})",
        { Observed: { } w } => $"{Say.Limb(limb.Limb)}: {VerdictWords.Of(w)}",
        _ => throw new UnreachableException(),
    };

    public string Beyond(LimbFact limb) => $"{Say.Limb(limb.Limb)}: pulse beyond the tourniquet: "
        + (limb.BeyondIsOfBefore ? "NOT CHECKED since it was loosened; before that " : "")
        + Or(limb.DistalPulse, s => $"{Word(s.As<Payload.SignsTaken>().DistalPulse![limb.Limb])} {Times.At(s.When)}", "NOT CHECKED");

    /// <summary>Every tightening, slackening and removal with its time and place.</summary>
    public ImmutableArray<string> Events(LimbFact limb) => [.. limb.Events.Select(e => Timed(e))];

    public ImmutableArray<string> Attempts(LimbFact limb) => limb.Attempts.IsEmpty
        ? [$"{Say.Limb(limb.Limb)}: no attempt to convert the tourniquet recorded"]
        : [.. limb.Attempts.Select((a, i) => Plain.Line(
            $"{Say.Limb(limb.Limb)}: attempt {Say.Number(i + 1)} to convert {a.Tourniquet}, begun {Times.At(a.Started)}: {Came(a)}"))];

    public string Shock => $"shock: {VerdictWords.Of(facts.Judgement.Shock)}";

    /// <summary>What was taken, each with age and course, then what nobody took.</summary>
    public ImmutableArray<string> Signs
    {
        get
        {
            var taken = facts.Signs.Where(s => !s.Latest.IsEmpty).Select(Of).ToImmutableArray();
            var missing = facts.Signs.Where(s => s.Latest.IsEmpty).Select(s => s.Kind.Name).ToArray();
            return missing.Length == 0 ? taken : [.. taken, $"not recorded: {string.Join(", ", missing)}"];
        }
    }

    public string Of(SignFact sign) => Plain.Line(sign.Kind.Name + (sign.Latest.All(v => v.Number is not null) ? " " : ": ") + Or(sign.Latest,
        v => $"{v.Text}, {Times.Ago(v.When)}{(v.Stale ? ", too old to decide by" : "")}{Corrected(v.Of)}", "not recorded") + sign.Course switch
        {
            SignCourse.Rising => "; rising",
            SignCourse.Falling => "; falling",
            SignCourse.NoneShown => "; no change shown",
            _ => "",
        });

    /// <summary>What was last seen of the rest of the casualty, then what nobody looked at, then each part looked at.</summary>
    public ImmutableArray<string> Rest
    {
        get
        {
            var looked = facts.Rest.Where(r => !r.Latest.IsEmpty).Select(Of);
            var missing = facts.Rest.Where(r => r.Latest.IsEmpty).Select(r => r.Kind.Name).ToArray();
            return
            [
                .. looked,
                .. missing.Length == 0 ? (string[])[] : [$"not looked at: {string.Join(", ", missing)}"],
                .. facts.Regions.Select(Timed),
            ];
        }
    }

    public string Of(RestFact rest) => Plain.Line($"{rest.Kind.Name}: " + Or(rest.Latest,
        s => $"{rest.Said(s)}, {Times.Ago(s.When)}{Corrected(s)}", "not looked at"));

    /// <summary>Care of wounds and moves, drugs, fluids with sums, urine.</summary>
    public ImmutableArray<string> Care =>
    [
        .. facts.Wounds.SelectMany(w => w.Care).Concat(facts.Moves).OrderBy(s => s.When.Latest).Select(Timed),
        .. Given,
    ];

    /// <summary>Drugs and fluids one by one, then sums.</summary>
    public ImmutableArray<string> Given =>
    [
        .. facts.Drugs.IsEmpty ? ["no drug recorded"] : facts.Drugs.Select(Timed),
        .. facts.DrugSums.Where(s => s.Amount.Times > 1).Select(s => Plain.Line($"{s.Drug} in all {Of(s.Amount)} {s.Unit}")),
        .. facts.FluidSums.IsEmpty ? ["no fluid recorded"] : facts.FluidSums.Select(s => $"{Word(s.Fluid)} in all {Of(s.Millilitres)} mL"),
        facts.Urine.IsEmpty ? "urine not recorded" : $"urine in all {Of(facts.UrineSum)} mL",
    ];

    /// <summary>Every try to reach advice, question and answer, in order of time.</summary>
    public ImmutableArray<string> Advice =>
    [
        .. facts.Contacts.Concat(facts.Questions).Concat(facts.Advice)
            .OrderBy(s => s.When.Latest).ThenBy(s => s.When.Earliest).ThenBy(s => s.Id).Select(Timed),
    ];

    /// <summary>Where the casualty was last: degrees with the side of the globe, fit to be read aloud.</summary>
    public string Position => Plain.Line(Or(facts.Positions, s =>
    {
        var at = s.As<Payload.PositionNoted>();
        var within = at.AccuracyM is { } accuracy ? $", within {Say.Number(accuracy)} metres" : "";
        var high = at.AltitudeM is { } altitude
            ? $", {Say.Number(Math.Abs(altitude))} metres {(altitude < 0 ? "below" : "above")} sea level" : "";
        return $"position {Degrees(at.Lat, "north", "south")}, {Degrees(at.Lon, "east", "west")}{within}{high}, noted {Times.At(s.When)}";
    }, "position not noted"));

    /// <summary>When each kind of help is expected; says so where nobody did, or the time has passed.</summary>
    public ImmutableArray<string> Help => facts.Help.IsEmpty
        ? ["help not known to be coming"]
        : [.. facts.Help.GroupBy(s => s.As<Payload.HelpExpected>().Care).Select(g => Expected(g.Key, [.. g]))];

    private string Expected(HelpCare? care, ImmutableArray<Stated> said) => Plain.Line(care switch
    {
        HelpCare.Hands => "more helpers ",
        HelpCare.Clinic => "a clinic ",
        HelpCare.Surgery => "surgery ",
        null => "help ",
        _ => throw new UnreachableException(),
    } + Or(said, s =>
    {
        var help = s.As<Payload.HelpExpected>();
        var range = (help.Earliest is { } e ? $", earliest {Times.At(e)}" : "") + (help.Latest is { } l ? $", latest {Times.At(l)}" : ", no latest time given");
        var passed = (help.Latest ?? help.Likely) < facts.At ? ", that time has passed" : "";
        return $"expected {Times.At(help.Likely)}{range}{passed}{(help.Basis is { } basis ? $" ({basis})" : "")}";
    }, "not known to be coming"));

    public string Watch => Or(facts.Watch, s => s.As<Payload.WatchStated>() switch
    {
        { Able: false } => $"nobody can watch the wound closely (said {Times.At(s.When)})",
        { Who: Watcher.Casualty } => $"the casualty alone can watch the wound closely (said {Times.At(s.When)})",
        _ => $"someone can watch the wound closely (said {Times.At(s.When)})",
    }, "whether someone can watch the wound is not recorded");

    /// <summary>What comes first is what must be done at once.</summary>
    public ImmutableArray<string> Due => facts.Judgement.Due.IsEmpty
        ? ["nothing is due"]
        : [.. facts.Judgement.Due.Select(d => Plain.Line(
            $"{(d.AtOnce ? "AT ONCE" : VerdictWords.IsLate(d, facts.At) ? $"overdue since {Times.At(d.At)}" : d.At <= facts.At ? "now" : Times.At(d.At))}"
            + $"{(d.Limb is { } limb ? $", {Say.Limb(limb)}" : "")}: {d.Text}"))];

    public ImmutableArray<string> Cautions =>
    [
        .. facts.Practice ? ["PRACTICE: this is no real casualty"] : (string[])[],
        .. facts.Cautions.Select(c => $"caution: {c}"),
    ];

    public string Protocol => Plain.Line($"protocol in force: {facts.Judgement.Protocol.Named}"
        + (facts.Judgement.Protocol.Local is not { } local ? ""
            : local.Standing == Standing.Unsigned ? $" with numbers tightened by an unsigned local protocol ({FileHash.Short(local.Hash)})"
            : $" with local protocol {local.Id} {local.Version} ({FileHash.Short(local.Hash)})"));

    /// <summary>How care ended, and what was heard of it later.</summary>
    public ImmutableArray<string> Ended => [.. facts.Ended.Select(Timed), .. facts.Outcomes.Select(Timed)];

    public string Helpers => Plain.Line($"recorded by {string.Join(", ", facts.Helpers.Select(h => h.Name))}");

    /// <summary>An entry with its time, who, and what became of it.</summary>
    public string Timed(Stated s) => Plain.Line($"{Times.At(s.When)}: {s.Text} ({s.By}{(s.Corrected ? ", corrected" : "")}{(s.Disputed ? ", disputed" : "")})");

    public static string Of(GivenSum sum) => sum.Amount.IsExact
        ? Say.Number(sum.Amount.Low) : $"{Say.Number(sum.Amount.Low)} to {Say.Number(sum.Amount.High)} (the record disagrees)";

    /// <summary>The one, or all of several with a word that the record disagrees, or that there is none.</summary>
    private static string Or<T>(ImmutableArray<T> values, Func<T, string> say, string none)
    {
        var said = values.Select(say).Distinct().ToArray();
        return said.Length == 0 ? none : string.Join(" or ", said) + (said.Length > 1 ? Disagrees : "");
    }

    private static string Listed(ImmutableArray<string>? items) =>
        items is not { } known ? "not recorded" : known.IsEmpty ? "none known" : string.Join(" and ", known);

    private static string Found(Stated s)
    {
        var found = s.As<Payload.WoundFound>();
        var place = found.Limb is { } limb ? Say.Limb(limb) : found.Region is { } region ? Word(region) : "place not recorded";
        return $"{place}: {(found.Nature == WoundNature.Other ? "other wound" : Word(found.Nature))}{(found.Note is { } note ? $" ({note})" : "")}{Corrected(s)}";
    }

    private static string Degrees(double value, string positive, string negative) =>
        FormattableString.Invariant($"{Math.Abs(value):0.#####} degrees {(value < 0 ? negative : positive)}");

    private static string Corrected(Stated s) => s.Corrected ? ", corrected" : "";

    private string Tight(LimbFact limb) => limb.Tight switch
    {
        Truth.Met => "tourniquet tight",
        Truth.NotMet => limb.Loosened is { } at ? $"tourniquet loosened {Times.At(at)}" : "tourniquet loosened",
        _ => "tourniquet perhaps tight, it is not known",
    };

    private string Came(Attempt attempt) => attempt.Result switch
    {
        AttemptResult.UnderWay => "under way",
        AttemptResult.Held => "it held" + EndedAt(attempt),
        AttemptResult.Bled => "it bled" + EndedAt(attempt),
        AttemptResult.Abandoned => "abandoned" + EndedAt(attempt),
        _ => throw new UnreachableException(),
    };

    private string EndedAt(Attempt attempt) => attempt.Ended is { } ended ? $", {Times.At(ended)}" : "";

    private static string Bleeds(Bleeding bleeding) => bleeding switch
    {
        Bleeding.None => "none",
        Bleeding.Oozing => "oozing",
        Bleeding.Active => "active",
        _ => throw new UnreachableException(),
    };

    private static string Word<T>(T value)
        where T : struct, Enum => Wire.Word(value).Replace('-', ' ');
}
