using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.Drugs;

/// <summary>Reads a formulary file. Nothing is half-read: one fault refuses it.</summary>
public sealed class FormularyReader
{
    private static readonly string[] Conditions = ["when", "takes", "takesNo", "has", "given"];

    private readonly LocatedJson json;

    private FormularyReader(LocatedJson json) => this.json = json;

    public static Read<Formulary> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LocatedFields.Whole(utf8, file, "a formulary", (json, root) => new FormularyReader(json).Compose(root));

    private Formulary Compose(Located root)
    {
        json.OnlyKnown(root, "$schema", "formulary", "version", "title", "sources", "drugs");
        var drugs = json.Items(root, "drugs").Select(Drug).OfType<Drug>().ToImmutableArray();
        var sources = new ProtocolParts(json, root).Sources([]);
        foreach (
            var twice in drugs
                .SelectMany(d => d.Names.Add(d.Id))
                .GroupBy(n => n, StringComparer.OrdinalIgnoreCase)
                .Where(g => g.Count() > 1)
        )
            json.Refuse(root.Offset, $"the name {twice.Key} is given to two drugs");
        foreach (
            var given in drugs.SelectMany(d => d.Rules).Select(r => r.When).OfType<DrugCondition.Given>().Select(g => g.What).Distinct()
        )
            if (!drugs.Any(d => d.Is(given)) && !Wire.Words<MedicineClass>().Contains(given))
                json.Refuse(root.Offset, $"{given} is given to no drug as its id, group or kind, and is no class of medicines");
        json.Listed(
            root,
            drugs.SelectMany(d =>
                d.Regimens.SelectMany(r => r.Sources).Concat(d.Rules.SelectMany(w => w.Sources)).Concat(d.NotUnder?.Sources ?? [])
            ),
            sources
        );
        return new(json.Text(root, "formulary"), json.Text(root, "version"), json.Text(root, "title"), sources, drugs);
    }

    private Drug? Drug(Located item)
    {
        if (!json.IsObject(item, "a drug"))
            return null;
        json.OnlyKnown(
            item,
            "id",
            "names",
            "kin",
            "group",
            "kinds",
            "notUnder",
            "for",
            "forms",
            "regimens",
            "against",
            "onAdvice",
            "cautions"
        );
        return new(
            json.Text(item, "id"),
            Texts(item, "names", required: false),
            Texts(item, "kin", required: false),
            item["group"] is null ? null : json.Text(item, "group"),
            Texts(item, "kinds", required: false),
            item["notUnder"] is { } least ? LeastAge(least) : null,
            [.. json.Items(item, "forms").Select(Form).OfType<DrugForm>()],
            [.. json.Items(item, "regimens").Select(Regimen).OfType<Regimen>()]
        )
        {
            Indications = Rules(item, "for", canBeAlways: true),
            Contraindications = Rules(item, "against", canBeAlways: false),
            OnAdvice = Rules(item, "onAdvice", canBeAlways: false),
            Cautions = Rules(item, "cautions", canBeAlways: true),
        };
    }

    private LeastAge? LeastAge(Located item)
    {
        if (!json.IsObject(item, "notUnder"))
            return null;
        json.OnlyKnown(item, "years", "sources");
        if (Positive(item, "years") is { } years)
            return new(years, Texts(item, "sources", required: true));
        json.Refuse(item.Offset, "notUnder says years");
        return null;
    }

    private DrugForm? Form(Located item)
    {
        if (!json.IsObject(item, "a form"))
            return null;
        json.OnlyKnown(item, "text", "pieceMg", "halves", "mgPerMl");
        var (piece, perMl) = (Positive(item, "pieceMg"), Positive(item, "mgPerMl"));
        if (piece is null == perMl is null)
            json.Refuse(item.Offset, "a form gives exactly one of pieceMg and mgPerMl");
        return piece is null == perMl is null ? null : new(json.Text(item, "text"), piece, json.Flag(item, "halves"), perMl);
    }

    private Regimen? Regimen(Located item)
    {
        if (!json.IsObject(item, "a regimen"))
            return null;
        json.OnlyKnown(
            item,
            "id",
            "route",
            "text",
            "fromYears",
            "underYears",
            "fromKg",
            "underKg",
            "mg",
            "mgPerKg",
            "mostMg",
            "mostMgPerKg",
            "every",
            "mostDayMg",
            "mostDayMgPerKg",
            "mostDoses",
            "notAfter",
            "then",
            "sources"
        );
        var (fixedMg, perKg) = (Range(item, "mg"), Range(item, "mgPerKg"));
        if (fixedMg is null == perKg is null)
            json.Refuse(item.Offset, "a regimen gives exactly one of mg and mgPerKg");
        var (from, under) = (Number(item, "fromYears"), Number(item, "underYears"));
        if (!(from >= 0 && under > from))
            json.Refuse(item.Offset, "a regimen is for ages from fromYears up to, not including, underYears");
        var (fromKg, underKg) = (Positive(item, "fromKg") ?? 0, Positive(item, "underKg") ?? double.PositiveInfinity);
        if (!(underKg > fromKg))
            json.Refuse(item.Offset, "a regimen is for masses from fromKg up to, not including, underKg");
        var every = json.Required(item, "every") is { } span ? json.Span(span, "every") : null;
        var (most, day) = (Positive(item, "mostMg"), Positive(item, "mostDayMg"));
        if (most is null || day is null)
            json.Refuse(item.Offset, "a regimen says mostMg and mostDayMg");
        if (most is null || day is null || every is null || from is null || under is null)
            return null;
        return new(
            json.Text(item, "id"),
            json.Text(item, "route"),
            json.Text(item, "text"),
            from.Value,
            under.Value,
            fromKg,
            underKg,
            fixedMg,
            perKg,
            most.Value,
            Range(item, "mostMgPerKg"),
            every.Value,
            day.Value,
            Positive(item, "mostDayMgPerKg"),
            Whole(item, "mostDoses"),
            json.OptionalSpan(item, "notAfter"),
            item["then"] is { } then ? FollowOn(then) : null,
            Texts(item, "sources", required: true)
        );
    }

    private FollowOn? FollowOn(Located item)
    {
        if (!json.IsObject(item, "then"))
            return null;
        json.OnlyKnown(item, "mgPerKgHour", "text");
        if (Positive(item, "mgPerKgHour") is { } rate)
            return new(rate, json.Text(item, "text"));
        json.Refuse(item.Offset, "then says mgPerKgHour");
        return null;
    }

    /// <param name="canBeAlways">Whether a rule may ask nothing: it is said whatever the record holds.</param>
    private ImmutableArray<DrugRule> Rules(Located drug, string name, bool canBeAlways)
    {
        var rules = ImmutableArray.CreateBuilder<DrugRule>();
        foreach (var item in json.Items(drug, name, required: false))
        {
            if (!json.IsObject(item, "a rule"))
                continue;
            json.OnlyKnown(item, "when", "takes", "takesNo", "has", "given", "within", "text", "sources");
            if (Asked(item, canBeAlways) is { Valid: true } asked)
                rules.Add(new(asked.Condition, json.Text(item, "text"), Texts(item, "sources", required: true)));
        }

        return rules.ToImmutable();
    }

    private (bool Valid, DrugCondition? Condition) Asked(Located item, bool canBeAlways)
    {
        var asked = Conditions.Where(name => item[name] is not null).ToArray();
        if (asked.Length > 1 || (asked.Length == 0 && !canBeAlways))
        {
            json.Refuse(item.Offset, $"a rule asks exactly one of {string.Join(", ", Conditions)}");
            return (false, null);
        }

        if (item["within"] is { } within && asked is not ["given"])
            json.Refuse(within.Offset, "within goes with given");
        return asked switch
        {
            ["when"] => (true, new DrugCondition.Holds(json.Word<Circumstance>(item, "when"))),
            ["takes"] => (true, new DrugCondition.Takes(json.Word<MedicineClass>(item, "takes"))),
            ["takesNo"] => (true, new DrugCondition.TakesNo(json.Word<MedicineClass>(item, "takesNo"))),
            ["has"] => (true, new DrugCondition.Has(json.Word<Illness>(item, "has"))),
            ["given"] => Given(item),
            _ => (true, null),
        };
    }

    private (bool Valid, DrugCondition? Condition) Given(Located item) =>
        json.Required(item, "within") is { } at && json.Span(at, "within") is { } within
            ? (true, new DrugCondition.Given(json.Text(item, "given"), within))
            : (false, null);

    private ImmutableArray<string> Texts(Located value, string name, bool required)
    {
        var texts = json.Items(value, name, required);
        foreach (var text in texts.Where(t => t.Kind != JsonValueKind.String || t.Text.Trim().Length == 0))
            json.RefuseValue(text, $"each of {name}", "a text");
        if (required && texts.IsEmpty && value[name] is { } at)
            json.Refuse(at.Offset, $"{name} needs at least one text");
        return [.. texts.Select(t => t.Text)];
    }

    /// <summary>One number, or a list of the lower and the upper.</summary>
    private Between? Range(Located value, string name)
    {
        if (value[name] is not { } member)
            return null;
        var ends =
            member.Kind == JsonValueKind.Array
                ? [.. member.Items.Select(i => json.Number(i, name))]
                : (double?[])[json.Number(member, name)];
        if (ends is [{ } low, .. { Length: <= 1 } rest] && low > 0 && (rest is [] || rest[0] >= low))
            return new(low, rest is [{ } high] ? high : low);
        json.RefuseValue(member, name, "a number above 0, or a list of a lower and an upper");
        return null;
    }

    private int? Whole(Located value, string name)
    {
        if (Positive(value, name) is not { } number)
            return null;
        if (number % 1 == 0 && number <= 1000)
            return (int)number;
        json.Refuse(value[name]!.Offset, $"{name} is a whole number");
        return null;
    }

    private double? Number(Located value, string name) => json.Required(value, name) is { } member ? json.Number(member, name) : null;

    private double? Positive(Located value, string name)
    {
        if (value[name] is not { } member || json.Number(member, name) is not { } number)
            return null;
        if (number > 0)
            return number;
        json.RefuseValue(member, name, "a number above 0");
        return null;
    }
}
