using System.Collections.Immutable;
using System.Text.Json;

namespace Farhold.Prepare;

/// <summary>Reads a trip as the party says it. Nothing is half-read: one fault refuses it; what it leaves out nobody said.</summary>
/// <remarks>The form is that of <c>plans/trip.schema.json</c>.</remarks>
public sealed class TripReader
{
    /// <summary>More pieces of an item are refused (design).</summary>
    public const int MostPieces = 1_000_000;

    /// <summary>Longer texts are refused (design).</summary>
    public const int LongestText = 20_000;

    private readonly LocatedJson json;
    private readonly KitList? kit;

    private TripReader(LocatedJson json, KitList? kit) => (this.json, this.kit) = (json, kit);

    /// <param name="kit">Null: what is packed may name any item.</param>
    public static Read<TripPlan> Read(ReadOnlyMemory<byte> utf8, string file, KitList? kit) =>
        LocatedFields.Whole(utf8, file, "a trip", (json, root) => new TripReader(json, kit).Compose(root));

    private TripPlan Compose(Located root)
    {
        json.OnlyKnown(root, "$schema", "note", "route", "days", "hours", "alarm", "party", "contacts", "packed");
        var party = json.Items(root, "party", required: false).Select(Member).OfType<PartyMember>().ToImmutableArray();
        foreach (var twice in party.GroupBy(m => m.Name).Where(g => g.Count() > 1))
            json.Refuse(root.Offset, $"{twice.Key} is in the party twice");
        return new(
            Said(root, "route"),
            Number(root, "days", 1, TripPlan.MostDays) is { } days ? (int)days : null,
            Number(root, "hours", 0, TripPlan.MostHours, whole: false),
            Said(root, "alarm"),
            party,
            [.. json.Items(root, "contacts", required: false).Select(Line).OfType<string>()],
            Packed(root)
        );
    }

    private PartyMember? Member(Located member)
    {
        if (!json.IsObject(member, "one of the party"))
            return null;
        json.OnlyKnown(member, "name", "role", "practised");
        return new(json.Text(member, "name"), Said(member, "role") ?? "", json.Flag(member, "practised"));
    }

    private ImmutableSortedDictionary<string, int> Packed(Located root)
    {
        var packed = ImmutableSortedDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        if (root["packed"] is { } given && json.IsObject(given, "packed"))
            foreach (var member in given.Members)
            {
                if (kit is not null && kit.Named(member.Name) is null)
                    json.Refuse(member.Offset, $"{member.Name} is no item of the kit list");
                packed[member.Name] = (int)(Number(given, member.Name, 0, MostPieces) ?? 0);
            }

        return packed.ToImmutable();
    }

    /// <summary>Null where nobody said: left out, null or blank.</summary>
    private string? Said(Located value, string name)
    {
        if (value[name] is not { Kind: not JsonValueKind.Null } member)
            return null;
        if (member.Kind == JsonValueKind.String && member.Text.Length <= LongestText)
            return member.Text.Trim().Length == 0 ? null : member.Text;
        json.RefuseValue(member, name, $"a text of at most {LongestText} characters");
        return null;
    }

    private string? Line(Located contact)
    {
        if (contact.Kind == JsonValueKind.String && contact.Text.Trim().Length is > 0 and <= LongestText)
            return contact.Text;
        json.RefuseValue(contact, "a contact", $"a text of 1 to {LongestText} characters, with a number");
        return null;
    }

    private double? Number(Located value, string name, double least, double most, bool whole = true) =>
        value[name] is { } member ? json.Number(member, name, least, most, whole: whole) : null;
}
