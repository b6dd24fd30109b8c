using System.Collections.Immutable;
using System.Text.Json;

namespace Farhold.Kit;

/// <summary>Reads a kit list. Nothing is half-read: one fault refuses it.</summary>
/// <remarks>The form is that of <c>protocols/kit.schema.json</c>.</remarks>
public sealed class KitReader
{
    /// <summary>Kinds that can use an item up.</summary>
    internal static readonly ImmutableArray<Kind> Using =
    [
        Kind.WoundPacked,
        Kind.DressingApplied,
        Kind.BleedingChecked,
        Kind.DrugGiven,
        Kind.FluidGiven,
        Kind.UrineMeasured,
        Kind.TaskDone,
    ];

    /// <summary>Kinds that use nothing of an item unless the use says of what.</summary>
    private static readonly ImmutableArray<Kind> Naming = [Kind.DrugGiven, Kind.FluidGiven, Kind.TaskDone];

    private readonly LocatedJson json;

    private KitReader(LocatedJson json) => this.json = json;

    public static Read<KitList> Read(ReadOnlyMemory<byte> utf8, string file) =>
        LocatedFields.Whole(utf8, file, "a kit list", (json, root) => new KitReader(json).Compose(root));

    private KitList Compose(Located root)
    {
        json.OnlyKnown(root, "$schema", "kit", "version", "title", "sources", "items");
        var items = json.Items(root, "items").Select(Item).OfType<KitItem>().ToImmutableArray();
        var sources = new ProtocolParts(json, root).Sources([]);
        foreach (var twice in items.GroupBy(i => i.Id).Where(g => g.Count() > 1))
            json.Refuse(root.Offset, $"item {twice.Key} is given twice");
        json.Listed(root, items.SelectMany(i => i.Sources), sources);
        return new(json.Text(root, "kit"), json.Text(root, "version"), json.Text(root, "title"), sources, items);
    }

    private KitItem? Item(Located item)
    {
        if (!json.IsObject(item, "an item"))
            return null;
        json.OnlyKnown(
            item,
            "id",
            "name",
            "unit",
            "step",
            "uses",
            "planned",
            "water",
            "keep",
            "keepFor",
            "instead",
            "save",
            "carry",
            "sources"
        );
        var keep = item["keep"] is null ? 0 : Whole(item, "keep");
        if (keep > 0 != item["keepFor"] is not null)
            json.Refuse(item.Offset, "keep and keepFor go together");
        return new(
            json.Text(item, "id"),
            json.Text(item, "name"),
            json.Text(item, "unit"),
            Whole(item, "step"),
            [.. json.Items(item, "uses", required: false).Select(Use).OfType<ItemUse>()],
            item["planned"] is { } planned ? Planned(planned) : null,
            json.Flag(item, "water"),
            keep,
            Optional(item, "keepFor"),
            Texts(item, "instead"),
            Optional(item, "save"),
            item["carry"] is { } carry ? Carry(carry) : null,
            new ProtocolParts(json, item).Cited(item)
        );
    }

    private ItemUse? Use(Located use)
    {
        if (!json.IsObject(use, "a use"))
            return null;
        json.OnlyKnown(use, "kind", "of", "each", "pieceMg");
        var accepted = LocatedFields.OneOf(Using.Select(Kinds.Wire));
        var given = json.Required(use, "kind", accepted);
        var named = given?.Text;
        var kind = Using.Where(k => Kinds.Wire(k) == named).Select(k => (Kind?)k).FirstOrDefault();
        if (given is not null && kind is null)
            json.RefuseValue(given, "kind", accepted);
        var piece = use["pieceMg"] is { } mg ? json.Number(mg, "pieceMg") : null;
        if (piece is null == use["each"] is null || (piece is not null && kind != Kind.DrugGiven) || piece <= 0)
            json.Refuse(use.Offset, "a use gives each, or for a drug pieceMg above 0");
        if (kind is { } asks && Naming.Contains(asks) && use["of"] is null)
            json.Refuse(use.Offset, $"a use by {named} says of what");
        return kind is { } known ? new(known, Optional(use, "of"), piece is null ? Range(use) : Between.Exactly(1), piece) : null;
    }

    private PlannedUse? Planned(Located planned)
    {
        if (!json.IsObject(planned, "planned"))
            return null;
        json.OnlyKnown(planned, "each", "every", "per");
        var every = json.Required(planned, "every") is { } span ? json.Span(span, "every") : null;
        return every is { } known ? new(Range(planned), known, json.Word<UsedPer>(planned, "per")) : null;
    }

    private CarryRule? Carry(Located carry)
    {
        if (!json.IsObject(carry, "carry"))
            return null;
        json.OnlyKnown(carry, "party", "day", "personDay", "tripDay");
        return new(Of("party"), Of("day"), Of("personDay"), Of("tripDay"));

        double Of(string name) => carry[name] is { } member ? json.Number(member, name, 0, double.PositiveInfinity) ?? 0 : 0;
    }

    private Between Range(Located value)
    {
        if (
            value["each"] is { Kind: JsonValueKind.Array } each
            && each.Items.Length == 2
            && json.Number(each.Items[0], "each") is { } low
            && json.Number(each.Items[1], "each") is { } high
            && low >= 0
            && high >= low
        )
            return new(low, high);
        json.Refuse(value.Offset, "each has to be a list of the least and the most, from 0 on");
        return default;
    }

    private int Whole(Located value, string name) =>
        json.Required(value, name) is { } member ? (int)(json.Number(member, name, 1, 10_000, whole: true) ?? 1) : 1;

    private string? Optional(Located value, string name) => value[name] is null ? null : json.Text(value, name);

    private ImmutableArray<string> Texts(Located value, string name)
    {
        var texts = json.Items(value, name, required: false);
        foreach (var text in texts.Where(t => t.Kind != JsonValueKind.String || t.Text.Trim().Length == 0))
            json.RefuseValue(text, $"each of {name}", "a text");
        return [.. texts.Select(t => t.Text)];
    }
}
