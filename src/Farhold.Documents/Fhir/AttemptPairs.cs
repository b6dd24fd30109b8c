using System.Collections.Immutable;

namespace Farhold.Documents.Fhir;

/// <summary>Which end belongs to which beginning of an attempt: the first of the same wound and tourniquet that may come after.</summary>
internal sealed class AttemptPairs
{
    private readonly Dictionary<string, Counted> ends = [];
    private readonly Dictionary<string, Counted> starts = [];

    public static AttemptPairs Of(ImmutableArray<Counted> standing)
    {
        var pairs = new AttemptPairs();
        var open = standing.Where(e => e.What is Payload.AttemptEnded && e.Standing != Standing.Disputed).ToList();
        var begun = standing.Where(e => e.What is Payload.AttemptStarted && e.Standing != Standing.Disputed).ToArray();
        for (var i = 0; i < begun.Length; i++)
        {
            var start = (Payload.AttemptStarted)begun[i].What;
            var next = begun.Skip(i + 1).FirstOrDefault(b => b.What is Payload.AttemptStarted s && s == start);
            var end = open.FirstOrDefault(e =>
                e.What is Payload.AttemptEnded p
                && p.Wound == start.Wound
                && p.Tourniquet == start.Tourniquet
                && e.When.Latest >= begun[i].When.Earliest
                && (next is null || e.When.Earliest < next.When.Latest)
            );
            if (end is null)
                continue;
            open.Remove(end);
            pairs.ends.Add(begun[i].Name, end);
            pairs.starts.Add(end.Name, begun[i]);
        }

        return pairs;
    }

    public Counted? EndOf(Counted start) => ends.GetValueOrDefault(start.Name);

    public Counted? StartOf(Counted end) => starts.GetValueOrDefault(end.Name);
}
