using System.Collections.Immutable;
using System.Text;

namespace Farhold.App.Enter;

/// <summary>An entry being made: the fields given so far, as they will stand in the record.</summary>
public sealed record EntryDraft(Kind Kind, ImmutableSortedDictionary<string, string> Fields)
{
    private const string Envelope = """ "id":"draft-1","happened":"2000-01-01T00:00:00Z","recorded":"2000-01-01T00:00:00Z","by":"draft" """;

    /// <summary>An empty form, with new names given and what goes with what filled in as it most likely is.</summary>
    public static EntryDraft New(Kind kind, CareRecord record)
    {
        var draft = new EntryDraft(kind, ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));
        var state = record.Readings[0];
        foreach (var field in EntryForms.Of(kind).OfType<FormField.Name>())
            draft = draft.Set(
                field.Wire,
                (
                    field switch
                    {
                        { MayBeNew: true, Wound: true } => NewNames.Wound(record),
                        { MayBeNew: true } => NewNames.Tourniquet(record),
                        { Wound: true } => NewNames.Wounds(state).LastOrDefault(),
                        _ => NewNames.Tourniquets(state).LastOrDefault(),
                    }
                )
                    is { } name
                    ? Raw.Text(name)
                    : null
            );
        return draft;
    }

    public string? this[string wire] => Fields.GetValueOrDefault(wire);

    public EntryDraft Set(string wire, string? raw) => this with { Fields = raw is null ? Fields.Remove(wire) : Fields.SetItem(wire, raw) };

    /// <summary>As it will stand in the record; null while it is no entry yet.</summary>
    public string? Said(NodaTime.DateTimeZone zone) => Read() is Read<Payload>.Usable usable ? EntryText.Of(usable.Value, zone) : null;

    /// <summary>What it says, or every reason why it is no entry yet.</summary>
    public Read<Payload> Read()
    {
        var fields = string.Concat(Fields.Select(f => $",{Raw.Text(f.Key)}:{f.Value}"));
        var line = $"{{{Envelope},\"kind\":{Raw.Text(Kinds.Wire(Kind))}{fields}}}";
        return new EntryReader().Read(Encoding.UTF8.GetBytes(line), "form", 1) switch
        {
            Read<Entry>.Usable usable => new Read<Payload>.Usable(usable.Value.Payload),
            Read<Entry>.Refused refused => new Read<Payload>.Refused(refused.Refusals),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
