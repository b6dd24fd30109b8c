using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.Drugs;

/// <summary>Reads a formulary file. Nothing is half-read: one fault refuses it.</summary>
public sealed class FormularyReader
{
    private readonly LocatedJson json;

    private FormularyReader(LocatedJson json) => this.json = json;

    public static Read<Formulary> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LocatedFields.Whole(utf8, file, "a formulary", (json, root) => new FormularyReader(json).Compose(root));

    private Formulary Compose(Located root)
    {
        json.OnlyKnown(root, "$schema", "formulary", "version", "title", "sources", "drugs");
        var drugs = json.Items(root, "drugs").Select(Drug).OfType<Drug>().ToImmutableArray();
        var sources = new ProtocolParts(json, root).Sources([]);
        foreach (var twice in drugs.SelectMany(d => d.Names.Add(d.Id)).GroupBy(n => n, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
            json.Refuse(root.Offset, $"the name {twice.Key} is given to two drugs");
        json.Listed(root, drugs.SelectMany(d => d.Regimens.SelectMany(r => r.Sources).Concat(d.Warnings.SelectMany(w => w.Sources))), sources);
        return new(json.Text(root, "formulary"), json.Text(root, "version"), json.Text(root, "title"), sources, drugs);
    }

    private Drug? Drug(Located item)
    {
        if (!json.IsObject(item, "a drug"))
            return null;
        json.OnlyKnown(item, "id", "names", "kin", "group", "forms", "regimens", "against");
        return new(
            json.Text(item, "id"),
            Texts(item, "names", required: false),
            Texts(item, "kin", required: false),
            item["group"] is null ? null : json.Text(item, "group"),
            [.. json.Items(item, "forms").Select(Form).OfType<DrugForm>()],
            [.. json.Items(item, "regimens").Select(Regimen).OfType<Regimen>()],
            [.. json.Items(item, "against", required: false).Select(Warning).OfType<DrugWarning>()]);
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
            item, "id", "route", "text", "fromYears", "underYears", "mg", "mgPerKg", "mostMg", "every", "mostDayMg", "mostDayMgPerKg", "mostDoses", "notAfter", "sources");
        var (fixedMg, perKg) = (Range(item, "mg"), Range(item, "mgPerKg"));
        if (fixedMg is null == perKg is null)
            json.Refuse(item.Offset, "a regimen gives exactly one of mg and mgPerKg");
        var (from, under) = (Number(item, "fromYears"), Number(item, "underYears"));
        if (!(from >= 0 && under > from))
            json.Refuse(item.Offset, "a regimen is for ages from fromYears up to, not including, underYears");
        var every = json.Required(item, "every") is { } span ? json.Span(span, "every") : null;
        var (most, day) = (Positive(item, "mostMg"), Positive(item, "mostDayMg"));
        if (most is null || day is null)
            json.Refuse(item.Offset, "a regimen says mostMg and mostDayMg");
        if (most is null || day is null || every is null || from is null || under is null)
            return null;
        return new(
            json.Text(item, "id"), json.Text(item, "route"), json.Text(item, "text"), from.Value, under.Value, fixedMg, perKg,
            most.Value, every.Value, day.Value, Positive(item, "mostDayMgPerKg"), (int?)Positive(item, "mostDoses"),
            json.OptionalSpan(item, "notAfter"), Texts(item, "sources", required: true));
    }

    private DrugWarning? Warning(Located item)
    {
        if (!json.IsObject(item, "a warning"))
            return null;
        json.OnlyKnown(item, "when", "text", "sources");
        return new(json.Word<Circumstance>(item, "when"), json.Text(item, "text"), Texts(item, "sources", required: true));
    }

    private ImmutableArray<string> Texts(Located value, string name, bool required)
    {
        var texts = json.Items(value, name, required);
        foreach (var text in texts.Where(t => t.Kind != JsonValueKind.String || t.Text.Trim().Length == 0))
            json.Refuse(text.Offset, $"{name} is a list of texts");
        if (required && texts.IsEmpty && value[name] is { } at)
            json.Refuse(at.Offset, $"{name} needs at least one text");
        return [.. texts.Select(t => t.Text)];
    }

    /// <summary>One number, or a list of the lower and the upper.</summary>
    private Between? Range(Located value, string name)
    {
        if (value[name] is not { } member)
            return null;
        var ends = member.Kind == JsonValueKind.Array ? [.. member.Items.Select(i => json.Number(i, name))] : (double?[])[json.Number(member, name)];
        if (ends is [{ } low, .. { Length: <= 1 } rest] && low > 0 && (rest is [] || rest[0] >= low))
            return new(low, rest is [{ } high] ? high : low);
        json.Refuse(member.Offset, $"{name} is a number above 0, or a list of a lower and an upper");
        return null;
    }

    private double? Number(Located value, string name) => json.Required(value, name) is { } member ? json.Number(member, name) : null;

    private double? Positive(Located value, string name)
    {
        if (value[name] is not { } member || json.Number(member, name) is not { } number)
            return null;
        if (number > 0)
            return number;
        json.Refuse(member.Offset, $"{name} has to be above 0");
        return null;
    }
}
