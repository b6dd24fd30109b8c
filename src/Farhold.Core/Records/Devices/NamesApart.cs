using System.Collections.Immutable;

namespace Farhold.Records;

/// <summary>
/// Keeps apart what two phones called by one name, each in a record that it had begun itself: <c>t1</c> of both is read as
/// <c>t1-a7k</c> and <c>t1-n95</c>, whoever wrote which first.
/// </summary>
/// <remarks>
/// A phone has begun the record itself if its first entry opens the casualty; another one joined it and means what it found there. A name
/// that a third phone uses for what two have named stays as it is: it is neither (docs/decisions/names-on-two-phones.md).
/// </remarks>
internal sealed class NamesApart
{
    private const int MarkLength = 3;
    private static readonly NamesApart Nothing = new([], false);

    /// <summary>By device and name, the name it is read as.</summary>
    private readonly Dictionary<(string Device, string Name), string> read;

    private NamesApart(Dictionary<(string Device, string Name), string> read, bool several) => (this.read, IsAtRisk) = (read, several);

    /// <summary>More than one device has begun the record: the next name that one gives may be another's.</summary>
    public bool IsAtRisk { get; }

    public static NamesApart Of(IReadOnlyDictionary<EntryId, Entry> entries)
    {
        var begun = entries.Values.Where(e => e.Id.Number == 1 && e.Payload is Payload.CasualtyOpened).Select(e => e.Id.Device).ToHashSet();
        if (begun.Count < 2)
            return Nothing;
        var given = entries
            .Values.Where(e => begun.Contains(e.Id.Device))
            .SelectMany(e => Given(e.Payload).Select(name => (e.Id.Device, Name: name)))
            .Distinct()
            .ToArray();
        var several = given.GroupBy(g => g.Name).Where(g => g.Skip(1).Any()).SelectMany(g => g).ToArray();
        var marks = begun
            .GroupBy(Short)
            .SelectMany(g => g.Select(device => (device, Mark: g.Skip(1).Any() ? device : g.Key)))
            .ToDictionary();
        return new(several.ToDictionary(s => s, s => $"{s.Name}-{marks[s.Device]}"), true);
    }

    /// <summary>What is to be seen about it: which names were kept apart.</summary>
    public IEnumerable<Remark> Remarks =>
        read.GroupBy(r => r.Key.Name)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new Remark(
                null,
                RecordTexts.NamesApart(
                    g.Count(),
                    Plain.Line(g.Key),
                    string.Join(RecordTexts.And, g.Select(r => Plain.Line(r.Value)).Order(StringComparer.Ordinal))
                )
            ));

    public Entry Read(Entry entry) => read.Count == 0 ? entry : entry with { Payload = Read(entry.Id.Device, entry.Payload) };

    private Payload Read(string device, Payload payload) =>
        payload switch
        {
            Payload.WoundFound p => p with { Wound = Of(device, p.Wound) },
            Payload.TourniquetTightened p => p with
            {
                Tourniquet = Of(device, p.Tourniquet),
                Wound = p.Wound is { } wound ? Of(device, wound) : null,
            },
            Payload.TourniquetSlackened p => new Payload.TourniquetSlackened(Of(device, p.Tourniquet)),
            Payload.TourniquetRemoved p => new Payload.TourniquetRemoved(Of(device, p.Tourniquet)),
            Payload.WoundPacked p => p with { Wound = Of(device, p.Wound) },
            Payload.PressureHeld p => p with { Wound = Of(device, p.Wound) },
            Payload.DressingApplied p => p with { Wound = Of(device, p.Wound) },
            Payload.BleedingChecked p => p with { Wound = Of(device, p.Wound) },
            Payload.AttemptStarted p => new Payload.AttemptStarted(Of(device, p.Wound), Of(device, p.Tourniquet)),
            Payload.AttemptEnded p => p with { Wound = Of(device, p.Wound), Tourniquet = Of(device, p.Tourniquet) },
            _ => payload,
        };

    private string Of(string device, string name) => read.GetValueOrDefault((device, name), name);

    /// <summary>Whether an entry may give a name to something new.</summary>
    public static bool IsNaming(Payload payload) => Given(payload).Any();

    /// <summary>The names that an entry gives to something new.</summary>
    private static IEnumerable<string> Given(Payload payload) =>
        payload switch
        {
            Payload.WoundFound p => [p.Wound],
            Payload.TourniquetTightened { Wound: { } wound } p => [p.Tourniquet, wound],
            Payload.TourniquetTightened p => [p.Tourniquet],
            _ => [],
        };

    private static string Short(string device) => device[..Math.Min(MarkLength, device.Length)];
}
