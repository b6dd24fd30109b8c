namespace Farhold.Records;

/// <summary>A device as people know it: by who wrote with it.</summary>
internal static class DeviceWords
{
    /// <summary>Design: more names than these say less than the id does.</summary>
    private const int MostNames = 2;

    /// <summary><c>Jon's phone (m2rt)</c>; <c>device m2rt</c> where nobody is named, or too many are.</summary>
    public static string Of(string device, IEnumerable<Entry> entries)
    {
        var names = entries
            .Where(e => e.Id.Device == device && e.By.Length > 0)
            .OrderBy(e => e.Id)
            .Select(e => e.By)
            .Distinct()
            .Take(MostNames + 1)
            .ToArray();
        return names.Length is 0 or > MostNames
            ? RecordTexts.Device(device)
            : Plain.Line(RecordTexts.PhoneOf(string.Join(RecordTexts.And, names), device));
    }
}
