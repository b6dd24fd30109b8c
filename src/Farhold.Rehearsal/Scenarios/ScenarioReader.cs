using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using NodaTime;

namespace Farhold.Rehearsal.Scenarios;

/// <summary>Reads a scenario from JSON, wholly or not at all. Its form is scenarios/scenario.schema.json.</summary>
public static class ScenarioReader
{
    private const int LongestText = 2000;
    private const int LongestTitle = 200;
    private const int MostInjects = 200;
    private const int MostWounds = 8;

    /// <summary>A month of seconds is judged one by one: more would be no rehearsal.</summary>
    private const double LongestInjury = 2 * 86_400;

    public static Read<Scenario> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LocatedFields.Whole(
            utf8,
            file,
            "a scenario",
            (json, root) =>
                new Reading(new LocatedObject(json, root, "a scenario")).Compose(Convert.ToHexStringLower(SHA256.HashData(utf8.Span)))
        );

    /// <summary>One scenario on its way from JSON.</summary>
    private sealed class Reading(LocatedObject fields)
    {
        private ImmutableArray<string> names = [];
        private ImmutableArray<Input> inputs = [];

        public Scenario? Compose(string hash)
        {
            fields.Text("$schema", LongestText);
            Required("scenario", "title", "briefing", "model", "seed", "start", "casualty", "wounds", "surroundings", "end");
            var (id, title) = (fields.Text("scenario", EntryNames.Longest), fields.Text("title", LongestTitle));
            var (briefing, note) = (fields.Text("briefing", LongestText), fields.Text("note", LongestText));
            var model = fields.Whole("model", 1, Models.Newest);
            var seed =
                fields.Number("seed", 0, int.MaxValue) is { } given && given == Math.Floor(given) ? (ulong?)given : Fractional("seed");
            var start = fields.Instant("start");
            var zone = Zone();
            var learn = List("learn", (o, item) => Word<TeachingPoint>(item, "each of learn"));
            var casualty = fields.Object("casualty") is { } person ? Casualty(person) : null;
            var wounds = List("wounds", (o, item) => Wound(new(fields.File, item, "a wound")));
            if (fields.Has("wounds") && (wounds.IsEmpty || wounds.Length > MostWounds))
                fields.Refuse("wounds", $"a casualty has 1 to {MostWounds} wounds");
            if (wounds.GroupBy(w => w.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
                fields.Refuse("wounds", $"two wounds are called {twice.Key}");
            names = [.. wounds.Select(w => w.Name)];
            var limbs = wounds.Select(w => w.Limb).OfType<Limb>().Distinct().ToImmutableArray();
            inputs = SceneInputs.For(limbs, names);
            var injured = SpanFields.Seconds(fields, "injured", -LongestInjury, 0) ?? 0;
            var before = List("before", (o, item) => Earlier(new(fields.File, item, "what was done before"), injured, limbs));
            var surroundings = fields.Object("surroundings") is { } scene ? Around(scene) : null;
            var party = List("party", (o, item) => Member(new(fields.File, item, "one of the party")));
            var kit = List("kit", (o, item) => Count(new(fields.File, item, "an item of the kit")));
            var help = fields.Object("help") is { } coming ? Help(coming) : null;
            var injects = List("injects", (o, item) => Happens(new(fields.File, item, "an inject"), limbs));
            if (injects.Length > MostInjects)
                fields.Refuse("injects", $"more than {MostInjects} injects");
            if (injects.GroupBy(i => i.Id).FirstOrDefault(g => g.Count() > 1) is { } same)
                fields.Refuse("injects", $"two injects are called {same.Key}");
            var end = fields.Object("end") is { } over ? End(over) : null;
            var expect = List("expect", (o, item) => Expected(new(fields.File, item, "what is expected")));
            var limits = List("knownLimits", (o, item) => fields.File.TextOf(item, "each of knownLimits", LongestText));
            var vary = fields.Object("vary") is { } varied ? Vary(varied) : Variation.None;
            fields.Done();
            if (
                id is null
                || title is null
                || briefing is null
                || model is null
                || seed is null
                || start is null
                || casualty is null
                || wounds.IsEmpty
                || surroundings is null
                || end is null
            )
                return null;
            return new()
            {
                Id = id,
                Title = title,
                Briefing = briefing,
                Note = note,
                Hash = hash,
                Model = model.Value,
                Seed = seed.Value,
                Start = start.Value,
                Zone = zone,
                Learn = [.. learn.OfType<TeachingPoint>()],
                Casualty = casualty,
                Wounds = wounds,
                InjuredAt = injured,
                Before = [.. before.OrderBy(b => b.At)],
                Surroundings = surroundings,
                Party = party.IsEmpty ? [new("Trainee", Trained: true)] : party,
                Kit = kit,
                Help = help,
                Injects = injects,
                End = end,
                Expect = expect,
                AuthorsLimits = limits,
                Vary = vary,
            };
        }

        private void Required(params ReadOnlySpan<string> members)
        {
            foreach (var name in members)
                fields.Required(name, Accepted(name));
        }

        private static string Accepted(string name) =>
            name switch
            {
                "scenario" => "a short name without blanks",
                "model" => $"a number of the casualty model, 1 to {Models.Newest}",
                "seed" => "a whole number from 0 on",
                "start" => "an instant such as 2031-05-04T02:00:00Z",
                "wounds" => "a list of wounds",
                "casualty" or "surroundings" or "end" => "an object",
                _ => "a text",
            };

        private ulong? Fractional(string name)
        {
            if (fields.Has(name) && fields.File.Refusals.Count == 0)
                fields.Refuse(name, $"{name} has to be a whole number");
            return null;
        }

        private DateTimeZone? Zone()
        {
            if (fields.Text("timeZone", EntryNames.Longest) is not { } name)
                return null;
            if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(name) is { } zone)
                return zone;
            fields.Refuse("timeZone", $"{Plain.Line(name)} is no time zone; one is Europe/Oslo");
            return null;
        }

        private ImmutableArray<T> List<T>(string name, Func<LocatedObject, Located, T?> read)
        {
            if (fields.Any(name) is not { } member)
                return [];
            if (member.Kind != JsonValueKind.Array)
            {
                fields.File.RefuseValue(member, name, "a list");
                return [];
            }

            return [.. member.Items.Select(item => read(fields, item)).OfType<T>()];
        }

        private T? Word<T>(Located item, string what)
            where T : struct, Enum
        {
            if (item.Kind == JsonValueKind.String && Wire.Parse<T>(item.Text) is { } word)
                return word;
            fields.File.RefuseValue(item, what, LocatedFields.OneOf(Wire.Words<T>()));
            return null;
        }

        /// <remarks>Bounds are those of the model.</remarks>
        private static ScenarioCasualty? Casualty(LocatedObject o)
        {
            o.Required("alias", "a name");
            o.Required("sex", LocatedFields.OneOf(Wire.Words<Sex>()));
            var (alias, sex) = (o.Text("alias", EntryNames.Longest), ActFields.Word<Sex>(o, "sex"));
            var age = ActFields.Needed(o, "ageYears", 8, 100, " years");
            var (mass, height) = (ActFields.Needed(o, "massKg", 30, 250, " kg"), ActFields.Needed(o, "heightM", 1.2, 2.3, " m"));
            var rate = o.Number("heartRate", 30, 120, "/min");
            var (pain, anxiety) = (o.Number("pain", 0, 10) ?? 4, o.Number("anxiety", 0, 1) ?? 0.3);
            var (beta, thin) = (o.Number("betaBlockade", 0, 1) ?? 0, o.Number("anticoagulation", 0, 1) ?? 0);
            var medicines = o.Any("medicines") is { } list ? Texts(o, list) : [];
            o.Done();
            return alias is null || sex is null || age is null || mass is null || height is null
                ? null
                : new(alias, sex.Value, age.Value, mass.Value, height.Value, rate, pain, anxiety, beta, thin, medicines);
        }

        private static ImmutableArray<string> Texts(LocatedObject o, Located list)
        {
            if (list.Kind == JsonValueKind.Array)
                return [.. list.Items.Select(i => o.File.TextOf(i, "a medicine", LongestTitle)).OfType<string>()];
            o.File.RefuseValue(list, "medicines", "a list");
            return [];
        }

        private static ScenarioWound? Wound(LocatedObject o)
        {
            o.Required("wound", "a name, such as w1");
            var name = o.Text("wound", EntryNames.Longest);
            var (limb, region) = (ActFields.Word<Limb>(o, "limb"), ActFields.Word<BodyRegion>(o, "region"));
            if (o.IsObject && o.Has("limb") == o.Has("region"))
                o.Refuse("wound", "a wound is on one limb or in one region: give exactly one of limb and region");
            var nature = ActFields.Word<WoundNature>(o, "nature") ?? WoundNature.Bleeding;
            o.Required("vessel", LocatedFields.OneOf(Wire.Words<Vessel>()));
            var vessel = ActFields.Word<Vessel>(o, "vessel");
            var bleed = ActFields.Needed(o, "bleedMlPerMin", 0, 1_500, " mL/min");
            var needed = o.Flag("needsTourniquet") ?? true;
            // The ends themselves have no quantile.
            var difficulty = o.Number("difficulty", 0.001, 0.999);
            var (looks, found) = (o.Text("looks", LongestText), o.Flag("found") ?? true);
            o.Done();
            if (region is not null && vessel == Vessel.Vein)
                o.Refuse("vessel", "the model has veins in limbs only: give artery");
            return name is null || vessel is null || bleed is null || (limb is null && region is null)
                ? null
                : new(name, limb, region, nature, vessel.Value, bleed.Value, needed, difficulty, looks, found);
        }

        private EarlierAct? Earlier(LocatedObject o, double injured, ImmutableArray<Limb> limbs)
        {
            var at = SpanFields.Needed(o, "at", injured, 0);
            var act = Act(o, limbs);
            var (tourniquet, make) = (o.Text("tourniquet", EntryNames.Longest), ActFields.Word<TourniquetMake>(o, "make"));
            var reported = o.Object("reported");
            var (earliest, latest) = (null as double?, null as double?);
            if (reported is not null)
            {
                (earliest, latest) = (
                    SpanFields.Needed(reported, "earliest", -LongestInjury, 0),
                    SpanFields.Needed(reported, "latest", -LongestInjury, 0)
                );
                if (earliest > latest)
                    reported.Refuse("latest", "latest is before earliest");
                reported.Done();
            }

            o.Done();
            if (act is Farhold.Physiology.Rehearsal.Act.Tighten && tourniquet is null)
                o.Refuse("act", "a tourniquet that was tightened has a name: give tourniquet, such as t1");
            return at is null || act is null
                ? null
                : new(at.Value, act, tourniquet, make, earliest is { } e && latest is { } l ? (e, l) : null);
        }

        private Act? Act(LocatedObject o, ImmutableArray<Limb> limbs)
        {
            if (ActFields.Read(o, names) is not { } act)
                return null;
            var limb = act switch
            {
                Farhold.Physiology.Rehearsal.Act.Tighten tied => tied.Limb,
                Farhold.Physiology.Rehearsal.Act.Slacken let => let.Limb,
                _ => null,
            };
            if (limb is null || limbs.Any(l => Wire.Word(l) == limb))
                return act;
            o.Refuse("limb", $"no wound is on the {limb}; there are wounds on {string.Join(", ", limbs.Select(Wire.Word))}");
            return null;
        }

        private static Surroundings? Around(LocatedObject o)
        {
            var air = ActFields.Needed(o, "airC", -50, 50, " °C");
            var (insulation, wetness) = (o.Number("insulation", 0.05, 2, " m²K/W") ?? 0.2, o.Number("wetness", 0, 1) ?? 0);
            var (dark, wind) = (o.Flag("dark") ?? false, o.Number("windKmh", 0, 250, " km/h"));
            o.Done();
            return air is null ? null : new(air.Value, insulation, wetness, dark, wind);
        }

        private static Companion? Member(LocatedObject o)
        {
            o.Required("name", "a name");
            var (name, trained) = (o.Text("name", EntryNames.Longest), o.Flag("trained") ?? true);
            o.Done();
            return name is null ? null : new(name, trained);
        }

        private static KitCount? Count(LocatedObject o)
        {
            o.Required("item", "an item of the kit list, such as haemostatic-gauze");
            var (item, count) = (o.Text("item", EntryNames.Longest), o.Whole("count", 0, 100_000) ?? 1);
            o.Done();
            return item is null ? null : new(item, count);
        }

        private static ExpectedHelp? Help(LocatedObject o)
        {
            var care = ActFields.Word<HelpCare>(o, "care") ?? HelpCare.Surgery;
            var likely = SpanFields.Needed(o, "likely");
            var (earliest, latest) = (SpanFields.Seconds(o, "earliest"), SpanFields.Seconds(o, "latest"));
            o.Done();
            if (earliest > likely || latest < likely)
                o.Refuse("likely", "the likely time has to lie between earliest and latest");
            return likely is null ? null : new(care, likely.Value, earliest, latest);
        }

        private Inject? Happens(LocatedObject o, ImmutableArray<Limb> limbs)
        {
            o.Required("id", "a short name");
            var (id, at, when) = (o.Text("id", EntryNames.Longest), SpanFields.Seconds(o, "at"), When(o));
            if (o.IsObject && o.Has("at") == o.Has("when"))
                o.Refuse("id", "an inject comes at a time or on a condition: give exactly one of at and when");
            var after = SpanFields.Seconds(o, "after") ?? 0;
            if (o.Has("after") && o.Has("at"))
                o.Refuse("after", "after counts from a condition: it goes with when");
            var once = o.Flag("once") ?? true;
            var say = o.Text("say", LongestText);
            var acts = ImmutableArray.CreateBuilder<Act>();
            if (o.Any("acts") is { } list)
            {
                if (list.Kind != JsonValueKind.Array)
                    o.File.RefuseValue(list, "acts", "a list of acts");
                foreach (var item in list.Items)
                {
                    var one = new LocatedObject(o.File, item, "an act");
                    if (Act(one, limbs) is { } act)
                        acts.Add(act);
                    one.Done();
                }
            }

            var show = o.Object("show") is { } signs ? ShowFields.Read(signs) : SignOverride.None;
            o.Done();
            if (o.IsObject && !o.Has("say") && !o.Has("acts") && !o.Has("show"))
                o.Refuse("id", "an inject says, does or shows something: give say, acts or show");
            return id is null ? null : new(id, at, when, after, once, say, acts.ToImmutable(), show);
        }

        /// <summary>The protocol's own conditions, but for limits by age and for what was measured: the truth is of one casualty.</summary>
        private Condition? When(LocatedObject o)
        {
            if (o.Any("when") is not { } written)
                return null;
            var condition = new ConditionReader(o.File, ShippedRules.Book.Protocol.Clock, inputs).Read(written);
            if (condition is not null && !IsPlain(condition))
                o.Refuse("when", "byAge and measured mean nothing in a scenario: its casualty has one age, and its truth is known");
            return condition;
        }

        private static bool IsPlain(Condition condition) =>
            condition switch
            {
                Condition.All all => all.Parts.All(IsPlain),
                Condition.Any any => any.Parts.All(IsPlain),
                Condition.Not not => IsPlain(not.Part),
                Condition.Compare compare => compare.Bands.IsEmpty && !compare.Measured,
                _ => true,
            };

        private ScenarioEnd? End(LocatedObject o)
        {
            var (at, when) = (SpanFields.Needed(o, "at", 60), When(o));
            o.Done();
            return at is null ? null : new(at.Value, when);
        }

        private Expectation? Expected(LocatedObject o)
        {
            o.Required("text", "a sentence");
            var (text, by) = (o.Text("text", LongestText), SpanFields.Seconds(o, "by"));
            var kind = o.Word("entry", KindWords) is { } wire ? Kinds.Parse(System.Text.Encoding.UTF8.GetBytes(wire)) : null;
            var (verdict, when) = (ActFields.Word<Verdict>(o, "verdict"), When(o));
            o.Done();
            if (o.IsObject && new[] { o.Has("entry"), o.Has("verdict"), o.Has("when") }.Count(given => given) != 1)
                o.Refuse("text", "exactly one of entry, verdict and when is expected");
            return text is null ? null : new(text, by, kind, verdict, when);
        }

        private static IEnumerable<(string, string)> KindWords =>
            Enum.GetValues<Kind>().Where(k => k != Kind.OfNewerVersion).Select(k => (Kinds.Wire(k), Kinds.Wire(k)));

        private static Variation Vary(LocatedObject o)
        {
            var vary = new Variation(
                Bounds(o, "bleedMlPerMin", 0, 1_500),
                Bounds(o, "massKg", 30, 250),
                Bounds(o, "ageYears", 8, 100),
                Bounds(o, "difficulty", 0.001, 0.999),
                Bounds(o, "airC", -50, 50),
                o.Number("needsTourniquet", 0, 1)
            );
            o.Done();
            return vary;
        }

        private static (double From, double To)? Bounds(LocatedObject o, string name, double least, double most)
        {
            if (o.Object(name) is not { } bounds)
                return null;
            var (from, to) = (ActFields.Needed(bounds, "from", least, most), ActFields.Needed(bounds, "to", least, most));
            bounds.Done();
            if (from > to)
                bounds.Refuse("to", "to is below from");
            return from is { } low && to is { } high ? (low, high) : null;
        }
    }
}
