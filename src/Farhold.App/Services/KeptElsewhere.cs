using System.Collections.Immutable;

namespace Farhold.App.Services;

/// <summary>What is known to exist of each casualty's record and is not on this phone.</summary>
/// <remarks>Kept, so that it holds an attempt back from the first judgement after a start on, and not only once the hub is heard again.</remarks>
public sealed class KeptElsewhere(IPhone phone)
{
    private readonly Dictionary<string, KnownElsewhere> known = new(StringComparer.Ordinal);

    public event Action? Changed;

    public KnownElsewhere Of(string casualty) =>
        known.TryGetValue(casualty, out var held) ? held : known[casualty] = Read(phone.Get(Key(casualty)));

    public void Set(string casualty, KnownElsewhere elsewhere)
    {
        var text = elsewhere.IsNothing ? "" : Write(elsewhere);
        if (text == phone.Get(Key(casualty)))
            return;
        phone.Set(Key(casualty), text);
        known[casualty] = elsewhere.IsNothing ? KnownElsewhere.Nothing : elsewhere;
        Changed?.Invoke();
    }

    private static string Key(string casualty) => "elsewhere-" + casualty;

    private static string Write(KnownElsewhere elsewhere) =>
        Json.Text(w =>
        {
            w.WriteStartObject("last");
            foreach (var (device, number) in elsewhere.Last)
                w.WriteNumber(device, number);
            w.WriteEndObject();
            w.WriteStartArray("unnumbered");
            foreach (var name in elsewhere.Unnumbered)
                w.WriteStringValue(name);
            w.WriteEndArray();
        });

    private static KnownElsewhere Read(string text) =>
        Json.Kept(
            text,
            root => new KnownElsewhere(
                root.GetProperty("last")
                    .EnumerateObject()
                    .ToImmutableSortedDictionary(d => d.Name, d => d.Value.GetInt32(), StringComparer.Ordinal),
                root.GetProperty("unnumbered").EnumerateArray().Select(n => n.GetString()!).ToImmutableSortedSet(StringComparer.Ordinal)
            )
        ) ?? KnownElsewhere.Nothing;
}
