using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.Overlays;

/// <summary>
/// Reads what a local protocol says of the service itself: contacts, numbers, who may allow what, names on boxes, words. None of it makes
/// a verdict milder; who may allow what makes it stricter.
/// </summary>
/// <remarks>All of it comes from outside and is shown beside what ships: short, seen by everybody, and never in the place of it.</remarks>
internal sealed class ServiceReader(LocatedJson json, Located root, List<Difference> differences)
{
    private const int LongestName = 60;
    private const int LongestRole = 60;
    private const int LongestStockName = 40;
    private const int LongestWord = 40;
    private const int LongestTaskWords = 200;
    private const int MostListed = 24;

    /// <summary>Contacts, numbers, names and words.</summary>
    /// <param name="lapsed">
    /// Where nobody has proven the file: whom to call and what is in a box is then not shown, and is listed here. Null: it is shown.
    /// </param>
    public LocalService Read(Func<Formulary> formulary, Func<KitList> kit, List<string>? lapsed)
    {
        var before = differences.Count;
        var service = new LocalService(
            Contacts(),
            Emergency(),
            root["names"] is null ? LocalService.None.StockNames : StockNames(formulary(), kit()),
            Words()
        );
        if (lapsed is null)
            return service;
        lapsed.AddRange(differences.Skip(before).Select(d => d.Text));
        differences.RemoveRange(before, differences.Count - before);
        return LocalService.None;
    }

    /// <summary>Whose yes counts for what advice lifts.</summary>
    /// <remarks>Somebody has to be named whose yes counts for all: else a no would never end.</remarks>
    public ImmutableArray<Allowance> Allowances(Protocol laid, Func<Formulary> formulary)
    {
        var list = ImmutableArray.CreateBuilder<Allowance>();
        foreach (var item in Objects("mayAllow", "who may allow what"))
        {
            json.OnlyKnown(item, "role", "allows", "drugs");
            var role = Legible(item, "role", LongestRole);
            var acts = Listed(item, "allows", [AllowedActs.Attempt, .. AllowanceWords.Acts(laid)]);
            var drugs = item["drugs"] is null ? [] : Listed(item, "drugs", formulary().Drugs.Select(d => d.Id));
            if (item["allows"] is null && item["drugs"] is null)
                json.RefuseMissing(item, "allows", "a list of what the role may allow");
            if (role is not null)
                list.Add(new(role, acts, drugs));
        }

        var allowances = list.ToImmutable();
        if (root["mayAllow"] is not { } at)
            return [];
        if (!allowances.Any(a => a.Acts.Contains(AllowedActs.Attempt)))
            json.Refuse(
                at.Offset,
                $"mayAllow has to name a role that may allow {AllowedActs.Attempt}: somebody has to be able to end a no"
            );
        foreach (var acts in AllowanceWords.Acts(laid).GroupBy(act => AllowanceWords.Either(allowances.Offices(act))))
            Note(
                $"a yes counts only from {acts.Key} for: {string.Join("; ", acts.Select(act => AllowanceWords.Act(act, laid)))}",
                Bearing.Stricter
            );
        foreach (var drug in allowances.SelectMany(a => a.Drugs).Distinct())
            Note(
                $"whom to ask about {drug}: {AllowanceWords.Either([.. allowances.Where(a => a.Drugs.Contains(drug)).Select(a => a.Role)])}"
            );
        return allowances;
    }

    /// <summary>Tasks with the service's words before those that ship, which stay.</summary>
    public ImmutableArray<CareTask> Worded(ImmutableArray<CareTask> tasks)
    {
        if (Member(root["words"], "words", "tasks") is not { } given)
            return tasks;
        var own = new Dictionary<string, string>();
        foreach (var member in given.Members)
        {
            if (tasks.FirstOrDefault(t => t.Id == member.Name) is not { } task)
                json.Refuse(member.Offset, $"{member.Name} is no task here; there are {string.Join(", ", tasks.Select(t => t.Id))}");
            else if (json.TextOf(member.Value, $"the words for {member.Name}", LongestTaskWords) is { } words)
            {
                own[member.Name] = Beside(words, task.Text);
                Note($"the task {member.Name} is said in the service's words, the shipped ones beside them: {own[member.Name]}");
            }
        }

        return [.. tasks.Select(t => own.TryGetValue(t.Id, out var text) ? t with { Text = text } : t)];
    }

    private static string Beside(string own, string shipped) => $"{own.Trim().TrimEnd('.')}. In full: {shipped}";

    private ImmutableArray<Contact> Contacts()
    {
        var contacts = ImmutableArray.CreateBuilder<Contact>();
        foreach (var item in Objects("contacts", "a contact"))
        {
            json.OnlyKnown(item, "name", "role", "ways", "zone", "open");
            var (name, role) = (Legible(item, "name", LongestName), Legible(item, "role", LongestRole));
            var ways = Objects(item, "ways", "a way to reach somebody", required: true).Select(Way).OfType<ContactWay>().ToImmutableArray();
            if (item["ways"] is { Items.IsEmpty: true } none)
                json.Refuse(none.Offset, "ways has to name at least one way to reach them");
            var hours = new ContactHoursReader(json).Read(item);
            if (name is null || role is null)
                continue;
            var contact = new Contact(name, role, ways, hours);
            contacts.Add(contact);
            Note($"contact: {ContactWords.Whole(contact)}");
        }

        return contacts.ToImmutable();
    }

    private ContactWay? Way(Located item)
    {
        var by = json.Word<ContactChannel>(item, "by");
        if (by == ContactChannel.Radio)
        {
            json.OnlyKnown(item, "by", "callSign", "channel");
            return Legible(item, "callSign", LongestWord) is { } call && Legible(item, "channel", LongestWord, 0) is { } channel
                ? new(by, call, channel)
                : null;
        }

        json.OnlyKnown(item, "by", "number");
        return Number(item) is { } number ? new(by, number, null) : null;
    }

    private ImmutableArray<EmergencyNumber> Emergency()
    {
        var numbers = ImmutableArray.CreateBuilder<EmergencyNumber>();
        foreach (var item in Objects("emergency", "an emergency number"))
        {
            json.OnlyKnown(item, "name", "number");
            if (Legible(item, "name", LongestName) is not { } name || Number(item) is not { } number)
                continue;
            numbers.Add(new(name, number));
            Note($"emergency number: {name}, {number}");
        }

        return numbers.ToImmutable();
    }

    /// <summary>Digits, with a plus before them and single spaces among them.</summary>
    private string? Number(Located item)
    {
        const string accepted = "a number of 3 to 15 digits, with + before it and single spaces or dashes in it where wanted";
        if (json.Required(item, "number", accepted) is not { } given)
            return null;
        if (given.Kind == JsonValueKind.String && IsNumber(given.Text))
            return given.Text;
        json.RefuseValue(given, "number", accepted);
        return null;
    }

    private static bool IsNumber(string text)
    {
        var digits = text.Count(char.IsAsciiDigit);
        var after = text.StartsWith('+') ? text[1..] : text;
        return digits is >= 3 and <= 15
            && char.IsAsciiDigit(after[0])
            && char.IsAsciiDigit(after[^1])
            && after.All(c => char.IsAsciiDigit(c) || c is ' ' or '-')
            && !after.Zip(after.Skip(1)).Any(pair => !char.IsAsciiDigit(pair.First) && !char.IsAsciiDigit(pair.Second));
    }

    private ImmutableSortedDictionary<string, string> StockNames(Formulary formulary, KitList kit)
    {
        var names = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        string[] known = [.. kit.Items.Select(i => i.Id), .. formulary.Drugs.Select(d => d.Id)];
        foreach (var member in json.IsObject(root["names"]!, "names") ? root["names"]!.Members : [])
        {
            if (!known.Contains(member.Name))
                json.Refuse(member.Offset, $"{member.Name} is no kit item or drug; there are {string.Join(", ", known)}");
            else if (LegibleOf(member.Value, $"the name of {member.Name}", LongestStockName, 2) is not { } name)
                continue;
            else if (Mistaken(member.Name, name, formulary, kit) is { } other)
                json.Refuse(member.Value.Offset, $"\"{name}\" would be taken for {other}, not for {member.Name}");
            else if (names.FirstOrDefault(n => Same(n.Value, name)) is { Key: { } twice })
                json.Refuse(member.Value.Offset, $"\"{name}\" is the name of {twice} already");
            else
                names[member.Name] = name;
        }

        foreach (var (id, name) in names)
            Note($"{id} has \"{name}\" on its box");
        return names.ToImmutable();
    }

    /// <summary>What else a name on a box would be taken for: another drug, by any of its names, or another item of the kit.</summary>
    private static string? Mistaken(string id, string name, Formulary formulary, KitList kit)
    {
        var uses = kit.Named(id)?.Uses.Where(u => u.Kind == Kind.DrugGiven).Select(u => u.Of) ?? [id];
        var own = formulary.Drugs.Where(d => uses.Contains(d.Id)).ToArray();
        return formulary
                .Drugs.Except(own)
                .SelectMany(d => d.Names.Prepend(d.Id))
                .FirstOrDefault(word => name.Contains(word, StringComparison.OrdinalIgnoreCase))
            ?? (own.Length == 0 ? null : MedicineNames.In(name, own.SelectMany(d => d.Names.Prepend(d.Id))))
            ?? kit.Items.Where(i => i.Id != id).SelectMany(i => (string[])[i.Id, i.Name]).FirstOrDefault(word => Same(word, name));
    }

    private ImmutableSortedDictionary<Term, string> Words()
    {
        var words = ImmutableSortedDictionary.CreateBuilder<Term, string>();
        if (root["words"] is { } all && json.IsObject(all, "words"))
            json.OnlyKnown(all, "terms", "tasks");
        foreach (var member in Member(root["words"], "words", "terms")?.Members ?? [])
        {
            if (Wire.Parse<Term>(member.Name) is not { } term)
                json.Refuse(
                    member.Offset,
                    $"{member.Name} is no term that has other words; there are {string.Join(", ", Wire.Words<Term>())}"
                );
            else if (LegibleOf(member.Value, $"the word for {member.Name}", LongestWord, 2) is { } word)
            {
                words[term] = word;
                Note($"for {TermWords.Shipped(term)} the service says \"{word}\"");
            }
        }

        return words.ToImmutable();
    }

    private Located? Member(Located? value, string what, string name) =>
        value is not null && value.Kind == JsonValueKind.Object && value[name] is { } member && json.IsObject(member, $"{name} of {what}")
            ? member
            : null;

    private IEnumerable<Located> Objects(string name, string what) => Objects(root, name, what, required: false);

    private IEnumerable<Located> Objects(Located value, string name, string what, bool required)
    {
        var items = json.Items(value, name, required);
        if (items.Length > MostListed)
            json.Refuse(value[name]!.Offset, $"{name} has {items.Length}; there may be {MostListed} at most");
        return items.Where(i => json.IsObject(i, what));
    }

    private ImmutableArray<string> Listed(Located item, string name, IEnumerable<string> accepted)
    {
        var words = accepted.Distinct().ToArray();
        var found = ImmutableArray.CreateBuilder<string>();
        foreach (var each in json.Items(item, name, required: false))
        {
            if (each.Kind != JsonValueKind.String || !words.Contains(each.Text))
                json.RefuseValue(each, $"each of {name}", LocatedFields.OneOf(words));
            else if (!found.Contains(each.Text))
                found.Add(each.Text);
        }

        return found.ToImmutable();
    }

    private string? Legible(Located item, string name, int longest, int least = 2) =>
        json.Required(item, name, "a text") is { } given ? LegibleOf(given, name, longest, least) : null;

    private string? LegibleOf(Located given, string what, int longest, int least)
    {
        if (given.Kind != JsonValueKind.String)
            json.RefuseValue(given, what, $"a text of 1 to {longest} characters");
        else if (LegibleName.Fault(given.Text, longest, least) is { } fault)
            json.Refuse(given.Offset, $"{what} {fault}");
        else if (given.Text.Contains('"', StringComparison.Ordinal))
            json.Refuse(given.Offset, $"{what} holds a quotation mark, in which it is shown");
        else
            return given.Text;
        return null;
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    private void Note(string text, Bearing bearing = Bearing.Neither) => differences.Add(new(text, bearing));
}
