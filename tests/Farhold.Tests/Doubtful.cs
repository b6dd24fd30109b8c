using System.Text;

namespace Farhold.Tests;

/// <summary>A casualty of whom all would be well, with a record in doubt for every reason there is.</summary>
public static class Doubtful
{
    public static CareRecord Record()
    {
        var entries = Chained.Of(Case.Well.Record.Entries).ToList();
        // changed: the chain breaks
        entries[3] = Chained.Read(entries[3].Json.ToString().Replace("\"heartRate\":84", "\"heartRate\":85", StringComparison.Ordinal));
        entries.Add(Read("\"b-1\"", "\"signs.tcken\",\"heartRate\":150"));
        entries.Add(Read("\"b-2\"", "\"signs.taken\",\"heartRbte\":150"));
        entries.Add(Read("\"b-4\"", "\"note\",\"text\":\"one\"")); // a gap before it, and another of its id
        entries.Add(Read("\"b-4\"", "\"note\",\"text\":\"other\""));
        entries.Add(Read("\"b-5\"", "\"entry.amended\",\"target\":\"a-1\",\"replace\":{\"id\":\"a-2\"}")); // not to be amended
        entries.Add(Read("\"b-7\"", "\"casualty.opened\",\"alias\":\"Somebody else\""));
        var record = new CareRecord(entries, [Gens.Damage(Read("\"b-6\"", "\"note\",\"text\":\"cut\""))]);
        record.Add(Read("\"c-1\"", "\"note\",\"text\":\"ahead\""), Case.Ago("01:00"));
        return record;
    }

    private static Entry Read(string id, string rest) =>
        (
            (Read<Entry>.Usable)
                new EntryReader().Read(
                    Encoding.UTF8.GetBytes(
                        $$"""{"id":{{id}},"happened":"2031-05-04T11:58:00Z","recorded":"2031-05-04T11:58:00Z","by":"Tor","kind":{{rest}}}"""
                    ),
                    "line",
                    1
                )
        ).Value;
}
