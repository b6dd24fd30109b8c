using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using NodaTime;

namespace Farhold.Overlays;

/// <summary>Reads a local protocol and lays it over another, as far as what stands behind it allows.</summary>
/// <remarks>
/// Unsigned, it may tighten the numbers that the protocol under it names, within its bounds, and holds no words. Signed by a trusted
/// issuer it may add and change words, rules, steps, tasks and orders, and loosen what the protocol lets loosen; everything that
/// differs is told, every loosening on every screen and print. Hard criteria can't be dropped or loosened by anybody.
/// One fault refuses the file, and the protocol under it stays in force.
/// </remarks>
public sealed class LocalReader
{
    private readonly LocatedJson json;
    private readonly Protocol under;
    private readonly Standing standing;
    private readonly Instant at;
    private readonly Func<Formulary> formulary;
    private readonly Func<KitList> kit;
    private readonly List<string> loosened = [];
    private readonly List<string> lapsed = [];
    private readonly List<Difference> differences = [];

    /// <summary>Members that hold more than numbers.</summary>
    private static readonly string[] Signable =
    [
        "title",
        "authority",
        "sources",
        "criteria",
        "steps",
        "watch",
        "tasks",
        "orders",
        "contacts",
        "emergency",
        "mayAllow",
        "names",
        "words",
    ];

    private LocalReader(LocatedJson json, Protocol under, Standing standing, Instant at, Func<Formulary> formulary, Func<KitList> kit) =>
        (this.json, this.under, this.standing, this.at, this.formulary, this.kit) = (json, under, standing, at, formulary, kit);

    /// <summary>The protocol with the local one laid over it, as it stands at an instant.</summary>
    /// <param name="formulary">What may be ordered, or has a name of its own; asked only where something is.</param>
    /// <param name="kit">What may have a name of its own; asked only where something has.</param>
    public static Read<Protocol> Read(
        ReadOnlyMemory<byte> utf8,
        string file,
        Protocol under,
        Proof proof,
        Instant at,
        Func<Formulary> formulary,
        Func<KitList> kit
    )
    {
        var standing = proof.Of(utf8.Span, at);
        var read = LocatedFields.Whole(
            utf8,
            file,
            "a local protocol",
            (json, root) => Translation.InEnglish(() => new LocalReader(json, under, standing, at, formulary, kit).Lay(root))
        );
        return read is not Read<Protocol>.Usable { Value: { Local: { } local } laid }
            ? read
            : new Read<Protocol>.Usable(
                laid with
                {
                    Local = local with
                    {
                        Hash = FileHash.Of(utf8.Span),
                        Issuer = standing is Standing.Verified or Standing.Expired ? proof.Issuer : null,
                        Signature = standing is Standing.Verified or Standing.Expired ? proof.Head : null,
                        Until = standing == Standing.Emergency ? proof.EmergencyFrom + Proof.LongestEmergency : proof.Head?.Expires,
                    },
                }
            );
    }

    private Protocol? Lay(Located root)
    {
        json.OnlyKnown(
            root,
            "$schema",
            "local",
            "version",
            "title",
            "over",
            "authority",
            "sources",
            "clock",
            "freshness",
            "criteria",
            "steps",
            "watch",
            "tasks",
            "careFreshness",
            "orders",
            "contacts",
            "emergency",
            "mayAllow",
            "names",
            "words"
        );
        if (json.Text(root, "over") is var over && over.Length > 0 && over != under.Id)
            json.Refuse(root["over"]!.Offset, $"this local protocol is meant for {over}, not for {under.Id}");
        if (standing == Standing.Unsigned)
            foreach (var member in root.Members.Where(m => Signable.Contains(m.Name)))
                json.Refuse(member.Offset, $"{member.Name} needs a signature: without one a local protocol may only tighten numbers");
        Legible(root);
        var (id, version) = (Name(root, "local"), Name(root, "version"));
        var parts = new ProtocolParts(json, root);
        var clock = Clock(root, parts);
        if (clock is null)
            return null;
        var laid = under with { Clock = clock, Freshness = Freshness(root, parts), CareFreshness = CareFreshness(root, parts) };
        if (standing == Standing.Unsigned)
            return laid with { Local = new("unsigned", "", "", null, [], [.. differences], []) };
        var local = Signed(root, id, version);
        laid = laid with
        {
            Sources = Sources(parts),
            Criteria = Criteria(root, parts, clock),
            Steps = Steps(root, parts, clock),
            Watch = Watch(root, parts),
            Tasks = Tasks(root, new(json, parts, clock)),
        };
        ProtocolReader.Whole(json, root, laid);
        var service = new ServiceReader(json, root, differences);
        laid = laid with
        {
            Advice = laid.Advice with { Allowances = service.Allowances(laid, formulary) },
            Tasks = service.Worded(laid.Tasks),
        };
        var read = service.Read(formulary, kit, standing == Standing.Emergency ? lapsed : null);
        return laid with
        {
            Local = local with
            {
                Service = read,
                Loosened = [.. loosened],
                Lapsed = [.. lapsed],
                Differences = [.. differences],
                Standing = standing,
            },
        };
    }

    /// <summary>What a signature makes room for besides the rules: a title, an authority, orders.</summary>
    private LocalProtocol Signed(Located root, string id, string version)
    {
        var authority = Authority(root);
        return new(id, version, json.Text(root, "title"), authority, [], [], Orders(root, authority));
    }

    private ClockLimits? Clock(Located root, ProtocolParts parts)
    {
        if (parts.Clock(under.Clock) is not { } clock)
            return null;
        if (root["clock"] is not { } at)
            return clock;
        var (before, bounds) = (under.Clock, under.Overlays);
        Duration Time(Duration was, Duration now, Change change, (Duration? Tightest, Duration? Loosest) bound, Loosens part, string what)
        {
            var tooTight = bound.Tightest is { } tightest && !Between(now, tightest, was);
            var tooLoose = bound.Loosest is { } loosest && !Between(now, was, loosest);
            return Within(at, change, tooTight, tooLoose, what) && Admit(at, change, part, bound.Tightest is not null, what) ? now : was;
        }

        var admitted = clock with
        {
            Window = Time(
                before.Window,
                clock.Window,
                Strictness.Shorter(before.Window, clock.Window),
                bounds.Window,
                Loosens.Window,
                $"the first window is {Say.Duration(clock.Window)} instead of {Say.Duration(before.Window)}"
            ),
            Limit = Time(
                before.Limit,
                clock.Limit,
                Strictness.Shorter(before.Limit, clock.Limit),
                bounds.Limit,
                Loosens.Nothing,
                $"the time limit is {Say.Duration(clock.Limit)} instead of {Say.Duration(before.Limit)}"
            ),
            Soon = Time(
                before.Soon,
                clock.Soon,
                Strictness.Longer(before.Soon, clock.Soon),
                bounds.Soon,
                Loosens.Soon,
                $"help counts as soon within {Say.Duration(clock.Soon)} instead of {Say.Duration(before.Soon)}"
            ),
            SoonProbability = Probability(at, clock.SoonProbability),
        };
        return admitted with
        {
            Longest = (Duration.Max(before.Longest.Window, admitted.Window), Duration.Max(before.Longest.Limit, admitted.Limit)),
        };
    }

    private double Probability(Located at, double now)
    {
        var (was, bound) = (under.Clock.SoonProbability, under.Overlays.SoonProbability);
        var change = Strictness.Larger(was, now);
        var what = FormattableString.Invariant($"a forecast counts for soon at a probability of {now} instead of {was}");
        return
            Within(at, change, now > bound.Tightest, now < bound.Loosest, what)
            && Admit(at, change, Loosens.SoonProbability, bound.Tightest is not null, what)
            ? now
            : was;
    }

    private static bool Between(Duration value, Duration a, Duration b) => value >= Duration.Min(a, b) && value <= Duration.Max(a, b);

    /// <summary>Refuses what is out of bounds on either side: that nothing is ever allowed is no protocol either.</summary>
    private bool Within(Located at, Change change, bool tooTight, bool tooLoose, string what)
    {
        if (change == Change.Tighter && tooTight)
            json.Refuse(at.Offset, $"{what}: this is tighter than a local protocol may be, whoever signs");
        else if (change == Change.Looser && tooLoose)
            json.Refuse(at.Offset, $"{what}: this is looser than a local protocol may be, whoever signs");
        else
            return true;
        return false;
    }

    private ImmutableSortedDictionary<string, Duration> Freshness(Located root, ProtocolParts parts)
    {
        var freshness = under.Freshness.ToBuilder();
        foreach (var (name, span) in parts.Freshness())
        {
            var at = root["freshness"]![name]!;
            if (!under.Freshness.TryGetValue(name, out var before))
            {
                if (
                    Admit(
                        at,
                        Change.Different,
                        Loosens.Freshness,
                        false,
                        $"{InputWords.Name(name)} stays fresh {Say.Duration(span)}, of which nothing was said"
                    )
                )
                    freshness[name] = span;
                continue;
            }

            var bears = under.Criteria.Any(c => (c.Hard || c.IsSign) && c.Condition.Inputs.Any(i => i.Name == name));
            freshness[name] = Fresh(
                at,
                before,
                span,
                under.Overlays.Freshness,
                bears ? Loosens.Nothing : Loosens.Freshness,
                name,
                $"{InputWords.Name(name)} stays fresh {Say.Duration(span)} instead of {Say.Duration(before)}"
            );
        }

        return freshness.ToImmutable();
    }

    private ImmutableSortedDictionary<string, Duration> CareFreshness(Located root, ProtocolParts parts)
    {
        var freshness = under.CareFreshness.ToBuilder();
        foreach (var (name, span) in parts.CareFreshness())
        {
            var before = under.CareFreshness.GetValueOrDefault(name, under.Freshness.GetValueOrDefault(name, span));
            freshness[name] = Fresh(
                root["careFreshness"]![name]!,
                before,
                span,
                under.Overlays.CareFreshness,
                Loosens.CareFreshness,
                name,
                $"for tasks, {InputWords.Name(name)} stays fresh {Say.Duration(span)} instead of {Say.Duration(before)}"
            );
        }

        return freshness.ToImmutable();
    }

    private Duration Fresh(
        Located at,
        Duration before,
        Duration span,
        ImmutableSortedDictionary<string, Duration> tightest,
        Loosens part,
        string name,
        string what
    )
    {
        var change = Strictness.Shorter(before, span);
        var bounded = tightest.TryGetValue(name, out var least);
        return
            Within(at, change, bounded && span < least, span > before * OverlayRules.FreshnessTimes, what)
            && Admit(at, change, part, bounded, what)
            ? span
            : before;
    }

    private ImmutableSortedDictionary<string, Source> Sources(ProtocolParts parts)
    {
        var sources = parts.Sources(under.Sources);
        foreach (var (key, source) in sources)
            if (!under.Sources.TryGetValue(key, out var before) || before != source)
                Note($"the source {key} is {(before is null ? "added" : "changed")}: {source.Title} ({source.Known})", Bearing.Neither);
        return sources;
    }

    private ImmutableArray<Criterion> Criteria(Located root, ProtocolParts parts, ClockLimits clock)
    {
        // Limits taken from the clock follow it, so that a changed clock changes every criterion that names it.
        var criteria = under.Criteria.Select(c => c with { Condition = Reclocked(c.Condition, clock) }).ToList();
        foreach (var item in json.Items(root, "criteria", required: false))
        {
            var at = criteria.FindIndex(c => c.Id == item["id"]?.Text);
            if (json.Flag(item, "drop"))
                Drop(item, criteria, at);
            else if (parts.Criterion(item, clock, at < 0 ? null : criteria[at]) is { } criterion)
                Put(criteria, at, criterion, $"{criterion.Id}: {RuleWords.Of(criterion)}", before => Compare(item, before, criterion));
        }

        return [.. criteria];
    }

    /// <summary>Puts a rule in the place of the one before, or beside the others, and tells what that changes.</summary>
    /// <param name="takes">Whether it may take the place of the one before.</param>
    private void Put<T>(List<T> rules, int at, T rule, string name, Predicate<T> takes)
    {
        if (at < 0)
        {
            rules.Add(rule);
            Note($"added {name}", Bearing.Stricter);
        }
        else if (takes(rules[at]))
            rules[at] = rule;
    }

    private bool Compare(Located item, Criterion before, Criterion criterion)
    {
        if (before.Hard && (criterion.Role != before.Role || criterion.Group != before.Group || !criterion.Hard))
        {
            json.Refuse(item.Offset, $"{before.Id} is a hard limit: its role, group and hardness can't be changed");
            return false;
        }

        return Tell(item, Strictness.Of(before, criterion), PartOf(before), before.Id, RuleWords.Of(before), RuleWords.Of(criterion));
    }

    private static Loosens PartOf(Criterion criterion) =>
        criterion switch
        {
            { Hard: true } => Loosens.Nothing,
            { Role: Role.Soft } => Loosens.SoftSigns,
            { Role: Role.Asks } => Loosens.Asks,
            { Role: Role.Awaits } => Loosens.Awaits,
            _ => Loosens.Nothing,
        };

    private void Drop(Located item, List<Criterion> criteria, int at)
    {
        json.OnlyKnown(item, "id", "drop");
        if (at < 0)
            json.Refuse(item.Offset, $"there is no criterion {item["id"]?.Text} to drop");
        else if (criteria[at].Hard)
            json.Refuse(item.Offset, $"{criteria[at].Id} is a hard limit and can't be dropped, whoever signs");
        else if (Admit(item, Change.Looser, PartOf(criteria[at]), false, $"{criteria[at].Id} is dropped: {criteria[at].Text}"))
            criteria.RemoveAt(at);
    }

    private ImmutableArray<AttemptStep> Steps(Located root, ProtocolParts parts, ClockLimits clock)
    {
        var steps = under.Steps.ToList();
        foreach (var item in json.Items(root, "steps", required: false))
        {
            var at = steps.FindIndex(s => Wire.Word(s.Id) == item["id"]?.Text);
            if (parts.Step(item, clock, at < 0 ? null : steps[at]) is { } step && at >= 0 && Takes(item, steps[at], step))
                steps[at] = step;
        }

        return [.. steps];
    }

    /// <summary>A step may be made shorter, to half at most; what it waits for, and what makes it longer, stays.</summary>
    private bool Takes(Located item, AttemptStep before, AttemptStep step)
    {
        var (change, what) = (Strictness.Of(before, step), $"the step {Wire.Word(step.Id)}");
        var halved = before.Minimum.Any(m => step.Minimum.GetValueOrDefault(m.Key) < m.Value / 2);
        return Within(item, halved ? Change.Looser : change, false, halved, what)
            && Tell(
                item,
                change,
                Strictness.SameGates(before, step) ? Loosens.StepTimes : Loosens.Nothing,
                what,
                RuleWords.Of(before),
                RuleWords.Of(step)
            );
    }

    private ObservationPlan Watch(Located root, ProtocolParts parts)
    {
        if (root["watch"] is not { } at || parts.Watch() is not { } given || given.Periods is not [.., { Until: null }])
            return under.Watch;
        var watch = given with { AfterMove = given.AfterMove ?? under.Watch.AfterMove };
        return Tell(
            at,
            Strictness.Of(under.Watch, watch),
            Loosens.Nothing,
            "the watch after slackening",
            RuleWords.Of(under.Watch),
            RuleWords.Of(watch)
        )
            ? watch
            : under.Watch;
    }

    private ImmutableArray<CareTask> Tasks(Located root, CareTaskReader reader)
    {
        var tasks = under.Tasks.ToList();
        foreach (var item in json.Items(root, "tasks", required: false))
        {
            var at = tasks.FindIndex(t => t.Id == item["id"]?.Text);
            if (json.Flag(item, "drop"))
            {
                json.OnlyKnown(item, "id", "drop");
                if (at < 0)
                    json.Refuse(item.Offset, $"there is no task {item["id"]?.Text} to drop");
                else if (tasks[at].AfterMove is not null)
                    json.Refuse(item.Offset, $"the task {tasks[at].Id} is due after every move: no local protocol drops it");
                else if (Admit(item, Change.Looser, Loosens.Tasks, false, $"the task {tasks[at].Id} is dropped: {tasks[at].Text}"))
                    tasks.RemoveAt(at);
            }
            else if (reader.Read(item, at < 0 ? null : tasks[at]) is { } task)
                Put(tasks, at, task, $"the task {task.Id}: {RuleWords.Of(task)}", before => Compare(item, before, task));
        }

        return [.. tasks];
    }

    private bool Compare(Located item, CareTask before, CareTask task)
    {
        if (!Tell(item, Strictness.Of(before, task), Loosens.Tasks, $"the task {task.Id}", RuleWords.Of(before), RuleWords.Of(task)))
            return false;
        if (before.Child?.Text is { } childs && task.Child?.Text == childs && task.Text != before.Text)
            Note($"the task {task.Id} keeps its words for a child: {childs}", Bearing.Neither);
        return true;
    }

    /// <summary>Drugs that may be given: by a named clinician, in a file whose signature was verified for now.</summary>
    private ImmutableArray<string> Orders(Located root, Authority? authority)
    {
        var orders = ImmutableArray.CreateBuilder<string>();
        foreach (var item in json.Items(root, "orders", required: false))
        {
            if (item.Kind != JsonValueKind.String || formulary().Drugs.All(d => d.Id != item.Text))
                json.Refuse(
                    item.Offset,
                    $"{item.Text} is no drug of the formulary; there are " + $"{string.Join(", ", formulary().Drugs.Select(d => d.Id))}"
                );
            else if (!orders.Contains(item.Text))
                orders.Add(item.Text);
        }

        if (orders.Count == 0)
            return [];
        var text = $"drugs are ordered: {string.Join(", ", orders)}";
        if (authority is null)
            json.Refuse(root["orders"]!.Offset, $"this needs a named authority: {text}");
        if (standing != Standing.Verified)
        {
            lapsed.Add(text);
            return [];
        }

        foreach (var drug in orders)
            Note($"drug ordered: {drug}", Bearing.Laxer);
        return orders.ToImmutable();
    }

    private Authority? Authority(Located root)
    {
        if (root["authority"] is not { } given || !json.IsObject(given, "authority"))
            return null;
        json.OnlyKnown(given, "name", "role", "date");
        var (name, role) = (json.Text(given, "name"), json.Text(given, "role"));
        foreach (var (member, text) in new[] { ("name", name), ("role", role) })
            if (text.Length > 0 && LegibleName.Fault(text) is { } fault)
                json.Refuse(given[member]!.Offset, $"the {member} {fault}");
        var date = json.Date(given, "date");
        if (date > at.InUtc().Date.PlusDays(1))
            json.Refuse(given["date"]!.Offset, "the date on which it was authorised is still to come");
        return date is null ? null : new(name, role, date.Value);
    }

    /// <summary>Ids and versions are short, of letters that everybody can tell apart.</summary>
    private string Name(Located root, string name)
    {
        var text = json.Text(root, name);
        if (
            text.Length > 0
            && (text.Length > 32 || text.Any(c => !(char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c is '-' or '.')))
        )
            json.RefuseValue(root[name]!, name, "up to 32 of a to z, 0 to 9, dash and point");
        return text;
    }

    /// <summary>No text holds what can't be seen, or turns the writing.</summary>
    private void Legible(Located value)
    {
        foreach (var member in value.Members)
            Legible(member.Value);
        foreach (var item in value.Items)
            Legible(item);
        if (
            value.Kind == JsonValueKind.String
            && value
                .Text.EnumerateRunes()
                .Any(r =>
                    Rune.GetUnicodeCategory(r)
                        is System.Globalization.UnicodeCategory.Control
                            or System.Globalization.UnicodeCategory.Format
                            or System.Globalization.UnicodeCategory.PrivateUse
                            or System.Globalization.UnicodeCategory.OtherNotAssigned
                            or System.Globalization.UnicodeCategory.LineSeparator
                            or System.Globalization.UnicodeCategory.ParagraphSeparator
                )
        )
            json.Refuse(value.Offset, "this text holds a character that can't be seen");
    }

    /// <summary>Whether a change is taken over; it is told in any case.</summary>
    /// <param name="bounded">Whether the protocol underneath names how far it may be tightened: only so without a signature.</param>
    private bool Admit(Located at, Change change, Loosens part, bool bounded, string text)
    {
        if (change == Change.Same)
            return true;
        if (standing == Standing.Unsigned && (change.IsLoosening() || !bounded))
        {
            json.Refuse(at.Offset, $"this needs a signature: {text}");
            return false;
        }

        if (change.IsLoosening())
        {
            if (!under.Overlays.Loosens.Contains(part))
            {
                json.Refuse(at.Offset, $"{text}: this can't be loosened, whoever signs");
                return false;
            }

            if (standing == Standing.Expired)
            {
                lapsed.Add(text);
                return false;
            }

            loosened.Add(text);
        }

        Note(text, change == Change.Tighter ? Bearing.Stricter : Bearing.Laxer);
        return true;
    }

    private void Note(string text, Bearing bearing) => differences.Add(new(text, bearing));

    /// <summary>A rule that would take the place of another: what it changes or, where it is as strict, what it words otherwise.</summary>
    private bool Tell(Located at, Change change, Loosens part, string what, string before, string after)
    {
        if (change != Change.Same)
            return Admit(at, change, part, false, $"{what} is changed: {after} BEFORE: {before}");
        if (before != after)
            Note($"{what} is reworded: {after} BEFORE: {before}", Bearing.Neither);
        return true;
    }

    private static Condition Reclocked(Condition condition, ClockLimits clock) =>
        condition switch
        {
            Condition.All all => new Condition.All([.. all.Parts.Select(p => Reclocked(p, clock))]),
            Condition.Any any => new Condition.Any([.. any.Parts.Select(p => Reclocked(p, clock))]),
            Condition.Not not => new Condition.Not(Reclocked(not.Part, clock)),
            Condition.Compare { Clock: "window" } c => c with { Limit = clock.Window.TotalSeconds },
            Condition.Compare { Clock: "limit" } c => c with { Limit = clock.Limit.TotalSeconds },
            Condition.Compare { Clock: "soon" } c => c with { Limit = clock.Soon.TotalSeconds },
            _ => condition,
        };
}
