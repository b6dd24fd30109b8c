using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>Reads the parts that protocols and local protocols have in common.</summary>
/// <param name="asked">What criteria may ask about; null: what protocols may.</param>
internal sealed class ProtocolParts(LocatedJson json, Located root, ImmutableArray<Input>? asked = null)
{
    private static readonly string[] Known = ["read", "read-2", "memory", "design", "common practice", "local"];

    private readonly ImmutableArray<Input> inputs = asked ?? Input.All;

    /// <summary>The clock's limits; what is not given is taken from <paramref name="under"/>.</summary>
    public ClockLimits? Clock(ClockLimits? under)
    {
        var clock = under is null ? json.Required(root, "clock") : root["clock"];
        if (clock is null)
            return under;
        if (!json.IsObject(clock, "clock"))
            return null;
        json.OnlyKnown(clock, "window", "limit", "soon", "soonProbability");
        Duration? Of(string name, Duration? otherwise) =>
            otherwise is { } kept && clock[name] is null ? kept
            : json.Required(clock, name) is { } given ? json.Span(given, name)
            : null;
        var (window, limit, soon) = (Of("window", under?.Window), Of("limit", under?.Limit), Of("soon", under?.Soon));
        if (window is null || limit is null || soon is null)
            return null;
        if (window > limit)
            json.Refuse(clock.Offset, "the window can't be longer than the limit");
        return new(window.Value, limit.Value, soon.Value, Probability(clock) ?? under?.SoonProbability ?? ClockLimits.UsualSoonProbability);
    }

    /// <summary>The share of forecasts that come true.</summary>
    private double? Probability(Located clock) =>
        clock["soonProbability"] is { } given ? json.Number(given, "soonProbability", 0.5, 0.999) : null;

    public ImmutableSortedDictionary<string, Source> Sources(IEnumerable<KeyValuePair<string, Source>> under)
    {
        var sources = ImmutableSortedDictionary.CreateBuilder<string, Source>(StringComparer.Ordinal);
        sources.AddRange(under);
        foreach (var member in Members("sources", root))
        {
            if (!json.IsObject(member.Value, "a source"))
                continue;
            json.OnlyKnown(member.Value, "title", "known");
            var known = json.Text(member.Value, "known");
            if (known.Length > 0 && !Known.Contains(known))
                json.RefuseValue(member.Value["known"]!, "known", LocatedFields.OneOf(Known));
            sources[member.Name] = new(member.Name, json.Text(member.Value, "title"), known);
        }

        return sources.ToImmutable();
    }

    public OverlayRules Overlays()
    {
        if (root["overlays"] is not { } overlays || !json.IsObject(overlays, "overlays"))
            return OverlayRules.None;
        json.OnlyKnown(overlays, "clock", "freshness", "careFreshness", "loosens");
        (Located? Tightest, Located? Loosest) Bound(string name)
        {
            if (overlays["clock"] is not { } clock || !json.IsObject(clock, "clock"))
                return default;
            json.OnlyKnown(clock, "window", "limit", "soon", "soonProbability");
            if (clock[name] is not { } bound || !json.IsObject(bound, name))
                return default;
            json.OnlyKnown(bound, "tightest", "loosest");
            return (bound["tightest"], bound["loosest"]);
        }

        (Duration?, Duration?) Times(string name) =>
            Bound(name) is var (tightest, loosest)
                ? (tightest is null ? null : json.Span(tightest, "tightest"), loosest is null ? null : json.Span(loosest, "loosest"))
                : default;
        var (surest, least) = Bound("soonProbability");
        return new(
            Times("window"),
            Times("limit"),
            Times("soon"),
            (surest is null ? null : json.Number(surest, "tightest"), least is null ? null : json.Number(least, "loosest")),
            Freshness("freshness", inputs, overlays),
            Freshness("careFreshness", LongInput.All, overlays),
            [.. json.Items(overlays, "loosens").Select(Loosening).OfType<Loosens>()]
        );
    }

    private Loosens? Loosening(Located item)
    {
        if (item.Kind == JsonValueKind.String && Wire.Parse<Loosens>(item.Text) is { } part and not Loosens.Nothing)
            return part;
        json.RefuseValue(item, "each of loosens", LocatedFields.OneOf(Wire.Words<Loosens>().Skip(1)));
        return null;
    }

    public ImmutableSortedDictionary<string, Duration> Freshness() => Freshness("freshness", inputs, root);

    /// <summary>Of what tasks ask about.</summary>
    public ImmutableSortedDictionary<string, Duration> CareFreshness() => Freshness("careFreshness", LongInput.All, root);

    private ImmutableSortedDictionary<string, Duration> Freshness(string section, ImmutableArray<Input> inputs, Located from)
    {
        var freshness = ImmutableSortedDictionary.CreateBuilder<string, Duration>(StringComparer.Ordinal);
        foreach (var member in Members(section, from))
        {
            if (Input.Named(member.Name, inputs) is not { Expires: true })
                json.Refuse(member.Offset, $"{member.Name} is no input that goes stale");
            else if (json.Span(member.Value, member.Name) is { } span)
                freshness[member.Name] = span;
        }

        return freshness.ToImmutable();
    }

    public ImmutableArray<Criterion> Criteria(ClockLimits clock) =>
        [.. json.Items(root, "criteria").Select(item => Criterion(item, clock)).OfType<Criterion>()];

    /// <param name="under">The criterion that a local one takes the place of: what the local one does not name stays as it is
    /// there.</param>
    public Criterion? Criterion(Located item, ClockLimits clock, Criterion? under = null)
    {
        if (!json.IsObject(item, "a criterion"))
            return null;
        json.OnlyKnown(
            item,
            "id",
            "role",
            "group",
            "hard",
            "stops",
            "adviceLifts",
            "givesWay",
            "text",
            "acts",
            "look",
            "change",
            "sources",
            "when"
        );
        var condition = json.Required(item, "when") is { } when ? new ConditionReader(json, clock, inputs).Read(when) : null;
        var id = json.Text(item, "id");
        return condition is null
            ? null
            : new(
                id,
                json.Word<Role>(item, "role"),
                Optional(item, "group"),
                json.Flag(item, "hard"),
                json.Text(item, "text"),
                Cited(item),
                condition
            )
            {
                Stops = item["stops"] is null ? under?.Stops ?? false : json.Flag(item, "stops"),
                AdviceLifts = item["adviceLifts"] is null ? under?.AdviceLifts ?? false : json.Flag(item, "adviceLifts"),
                GivesWay = json.OptionalSpan(item, "givesWay") ?? under?.GivesWay,
                Acts = item["acts"] is null ? under?.Acts ?? [] : Texts(item, "acts", clock),
                Look = Optional(item, "look") ?? under?.Look,
                Change = Optional(item, "change") ?? under?.Change,
            };
    }

    /// <summary>A list of texts, each where its condition is met; empty where the list is not given.</summary>
    public ImmutableArray<ConditionalText> Texts(Located value, string name, ClockLimits clock)
    {
        var texts = ImmutableArray.CreateBuilder<ConditionalText>();
        foreach (var item in json.Items(value, name, required: false))
        {
            if (!json.IsObject(item, "a text with its condition"))
                continue;
            json.OnlyKnown(item, "when", "text");
            var when = item["when"] is { } given ? new ConditionReader(json, clock, LongInput.All).Read(given) : null;
            texts.Add(new(when, json.Text(item, "text")));
        }

        return texts.ToImmutable();
    }

    private string? Optional(Located item, string name) => item[name] is null ? null : json.Text(item, name);

    public LookRules Looks(LookRules under)
    {
        if (root["looks"] is not { } looks || !json.IsObject(looks, "looks"))
            return under;
        json.OnlyKnown(looks, "within", "apart", "closing", "softLooks", "softOver", "heartRateUp", "systolicDown");
        double Number(string name, double otherwise) =>
            looks[name] is { } given ? json.Number(given, name, 1, 100) ?? otherwise : otherwise;
        return new(
            json.OptionalSpan(looks, "within") ?? under.Within,
            json.OptionalSpan(looks, "apart") ?? under.Apart,
            json.OptionalSpan(looks, "closing") ?? under.Closing,
            (int)Number("softLooks", under.SoftLooks),
            json.OptionalSpan(looks, "softOver") ?? under.SoftOver,
            Number("heartRateUp", under.HeartRateUp),
            Number("systolicDown", under.SystolicDown)
        );
    }

    public AdviceRules Advice(AdviceRules under)
    {
        if (root["advice"] is not { } advice || !json.IsObject(advice, "advice"))
            return under;
        json.OnlyKnown(advice, "lasts", "unanswered", "tried");
        return new(
            json.OptionalSpan(advice, "lasts") ?? under.Lasts,
            json.OptionalSpan(advice, "unanswered") ?? under.Unanswered,
            json.OptionalSpan(advice, "tried") ?? under.Tried
        );
    }

    public EffectPlan Effect(EffectPlan under)
    {
        if (root["effect"] is not { } effect || !json.IsObject(effect, "effect"))
            return under;
        json.OnlyKnown(effect, "text", "checks", "every", "until", "sources");
        var checks = json.Items(effect, "checks").Select(c => json.Span(c, "a check")).OfType<Duration>().ToImmutableArray();
        if (checks.IsEmpty || !checks.SequenceEqual(checks.Distinct().Order()))
            json.Refuse(effect.Offset, "checks are at least one span, each longer than the one before");
        return new(
            json.Text(effect, "text"),
            checks.IsEmpty ? under.Checks : checks,
            json.OptionalSpan(effect, "every") ?? under.Every,
            json.OptionalSpan(effect, "until") ?? under.Until,
            Cited(effect)
        );
    }

    public AttemptRules Attempts(AttemptRules under)
    {
        if (root["attempts"] is not { } attempts || !json.IsObject(attempts, "attempts"))
            return under;
        json.OnlyKnown(attempts, "lead", "held", "loose");
        var lead = attempts["lead"] is { } given && json.IsObject(given, "lead") ? ByMaterial(given, "lead") : under.Lead;
        if (!lead.ContainsKey(""))
            json.Refuse(attempts.Offset, "lead has to say how long anything takes, under \"\"");
        return new(
            lead.Count == 0 ? under.Lead : lead,
            json.OptionalSpan(attempts, "held") ?? under.Held,
            json.OptionalSpan(attempts, "loose") ?? under.Loose
        );
    }

    private ImmutableSortedDictionary<string, Duration> ByMaterial(Located times, string what)
    {
        var byMaterial = ImmutableSortedDictionary.CreateBuilder<string, Duration>(StringComparer.Ordinal);
        foreach (var member in times.Members)
        {
            if (member.Name.Length > 0 && !Wire.Words<PackingMaterial>().Contains(member.Name))
                json.Refuse(
                    member.Offset,
                    $"{what} has to be by {string.Join(", ", Wire.Words<PackingMaterial>())} or \"\" for any, not by {member.Name}"
                );
            else if (json.Span(member.Value, what) is { } span)
                byMaterial[member.Name] = span;
        }

        return byMaterial.ToImmutable();
    }

    public ImmutableArray<AttemptStep> Steps(ClockLimits clock) =>
        [.. json.Items(root, "steps").Select(i => Step(i, clock)).OfType<AttemptStep>()];

    /// <param name="under">The step that a local one takes the place of: what the local one does not name stays as it is there.</param>
    public AttemptStep? Step(Located item, ClockLimits clock, AttemptStep? under = null)
    {
        if (!json.IsObject(item, "a step"))
            return null;
        json.OnlyKnown(item, "id", "brief", "text", "before", "minimum", "twice", "gate", "sources");
        var minimum =
            json.Required(item, "minimum") is { } times && json.IsObject(times, "minimum")
                ? ByMaterial(times, "minimum")
                : ImmutableSortedDictionary<string, Duration>.Empty;
        var text = json.Text(item, "text");
        return new(json.Word<StepId>(item, "id"), text, minimum, Cited(item))
        {
            // Few words for another text would say something else than it does.
            Brief =
                item["brief"] is { } brief ? json.TextOf(brief, "brief", AttemptStep.BriefLength)
                : text == under?.Text ? under.Brief
                : null,
            Before = item["before"] is null ? under?.Before ?? [] : Texts(item, "before", clock),
            Twice = item["twice"] is { } twice ? new ConditionReader(json, clock, LongInput.All).Read(twice) : under?.Twice,
            Gate = Optional(item, "gate") ?? under?.Gate,
        };
    }

    public ObservationPlan? Watch()
    {
        if (json.Required(root, "watch") is not { } watch || !json.IsObject(watch, "watch"))
            return null;
        json.OnlyKnown(watch, "text", "periods", "afterMove", "sources");
        var periods = ImmutableArray.CreateBuilder<ObservationPeriod>();
        foreach (var item in json.Items(watch, "periods"))
        {
            if (!json.IsObject(item, "a period"))
                continue;
            json.OnlyKnown(item, "until", "every");
            var period = new ObservationPeriod(json.OptionalSpan(item, "until"), json.OptionalSpan(item, "every"));
            if (periods is [.., { Until: var before }] && (before is null || period.Until <= before))
                json.Refuse(item.Offset, "periods run on: each ends later than the one before");
            if (period is { Until: null, Every: null })
                json.Refuse(item.Offset, "the last period needs an every");
            periods.Add(period);
        }

        if (periods is not [.., { Until: null }] && watch["periods"] is { } given)
            json.Refuse(given.Offset, "the last period of the watch has no until, all others have one");
        return new(json.Text(watch, "text"), periods.ToImmutable(), Cited(watch), json.OptionalSpan(watch, "afterMove"));
    }

    public ImmutableArray<string> Cited(Located item)
    {
        var sources = json.Items(item, "sources");
        if (sources.IsEmpty && item["sources"] is { } empty)
            json.Refuse(empty.Offset, "at least one source has to be named");
        foreach (var source in sources.Where(s => s.Kind != JsonValueKind.String))
            json.RefuseValue(source, "a source", "a text, the key it has under sources");
        return [.. sources.Select(s => s.Text)];
    }

    private ImmutableArray<LocatedMember> Members(string name, Located from) =>
        from[name] is not { } value ? []
        : json.IsObject(value, name) ? value.Members
        : [];
}
