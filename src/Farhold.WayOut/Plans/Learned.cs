namespace Farhold.WayOut.Plans;

/// <summary>What has happened so far, as far as it tells of the luck of the rest.</summary>
/// <remarks>
/// All luck hangs together through one shared score, so what is known of it is one law on a grid, found from every leg that took a known
/// time, every leg still under way, and everything that came or did not (Bayes 1763). A party's pace is a second score: for each shared
/// score it has a law of its own. Given the shared score the parts are independent, which makes their likelihoods products.
/// </remarks>
internal sealed class Learned
{
    private readonly Remapped shared;
    private readonly Dictionary<(int Slot, int Place), Remapped[]> paces;

    private Learned(Remapped shared, Dictionary<(int, int), Remapped[]> paces) => (this.shared, this.paces) = (shared, paces);

    public double Shared(double score) => shared.At(score);

    /// <summary>The party's own luck in its pace, given the luck that all share.</summary>
    public bool Pace(int slot, int place, ReadOnlySpan<int> who, ReadOnlySpan<double> all, Span<double> own)
    {
        if (!paces.TryGetValue((slot, place), out var by))
            return false;
        for (var k = 0; k < who.Length; k++)
        {
            // Between two nodes of the shared score, so that nothing jumps from one to the next.
            var spot = Math.Clamp((all[who[k]] + Remapped.Last) / (2 * Remapped.Last) * (Remapped.Nodes - 1), 0, Remapped.Nodes - 1.001);
            var (node, part) = ((int)spot, spot - (int)spot);
            own[k] = ((1 - part) * by[node].At(own[k])) + (part * by[node + 1].At(own[k]));
        }

        return true;
    }

    public static Learned Of(Clues clues)
    {
        var paces = clues.Paces.ToDictionary(
            pair => pair.Key,
            pair =>
                Enumerable
                    .Range(0, Remapped.Nodes)
                    .Select(node => new Remapped(own => pair.Value.Sum(seen => seen(Remapped.Score(node), own))))
                    .ToArray()
        );
        return new(new(score => clues.Shared.Sum(seen => seen(score)) + paces.Values.Sum(by => by[Node(score)].LogEvidence)), paces);
    }

    private static int Node(double score) =>
        Math.Clamp((int)Math.Round((score + Remapped.Last) / (2 * Remapped.Last) * (Remapped.Nodes - 1)), 0, Remapped.Nodes - 1);
}

/// <summary>Logarithms of how likely each thing seen was.</summary>
internal sealed class Clues(Copula times, Copula weather)
{
    /// <summary>With all luck shared a single leg would settle everything to the second; nobody notes times that well (design).</summary>
    private const double LeastOwn = 0.15;

    private static readonly double Ahead = PriorTable.Figure("pace-ahead-spread").Value;

    private static readonly double[] OwnScores = [.. Enumerable.Range(0, 15).Select(i => NormalLaw.Quantile((i + 0.5) / 15))];

    public List<Func<double, double>> Shared { get; } = [];

    /// <summary>By slot and place of a party's pace: of the shared and its own score.</summary>
    public Dictionary<(int Slot, int Place), List<Func<double, double, double>>> Paces { get; } = [];

    public bool IsEmpty => Shared.Count == 0 && Paces.Count == 0;

    private double Own => Math.Max(LeastOwn, times.Own);

    /// <summary>A leg with a time of its own took so long, or has taken so long and goes on.</summary>
    public void Time(Distribution law, double seconds, bool done)
    {
        var (score, part, own) = (Score(law, seconds), times.Shared, Own);
        Shared.Add(z => done ? LogDensity((score - (part * z)) / own) : LogCdf(((part * z) - score) / own));
    }

    /// <summary>A party covered ground in so long, or has been under way for so long and goes on.</summary>
    /// <param name="law">Of the moving, seconds by day.</param>
    /// <param name="first">What comes before the moving, such as packaging.</param>
    public void Pace(Part pace, IReadOnlyList<Distribution> first, Distribution law, double seconds, bool done)
    {
        var key = (pace.Slot, pace.Place);
        if (!Paces.TryGetValue(key, out var seen))
            Paces[key] = seen = [];
        var (part, rest) = (times.Shared, times.Own);
        seen.Add(
            (z, own) =>
            {
                var moving = law.AtScore((part * z) + (rest * own));
                var sum = 0.0;
                var nodes = first.Count == 0 ? [0.0] : OwnScores;
                foreach (var luck in nodes)
                {
                    var left = seconds - first.Sum(f => f.AtScore((part * z) + (rest * luck)));
                    sum +=
                        done ? (left > 0 ? Math.Exp(LogDensity(Math.Log(left / moving) / Ahead)) : 0)
                        : left > 0 ? NormalLaw.Cdf(Math.Log(moving / left) / Ahead)
                        : 1;
                }

                return Math.Log(sum / nodes.Length);
            }
        );
    }

    /// <summary>An event's own score given the weather that all share: it lay between these.</summary>
    public void Weather(double above, double upTo, bool outdoors)
    {
        if (!outdoors)
            return;
        var (part, own) = (weather.Shared, Math.Max(LeastOwn, weather.Own));
        Shared.Add(z => Math.Log(Math.Max(1e-300, NormalLaw.Cdf((upTo - (part * z)) / own) - NormalLaw.Cdf((above - (part * z)) / own))));
    }

    /// <summary>How far out a time lies in its law; within what the grid holds.</summary>
    public static double Score(Distribution law, double seconds)
    {
        var share = law.Cdf(seconds);
        return share <= 0 ? -5
            : share >= 1 ? 5
            : Math.Clamp(NormalLaw.Quantile(share), -5, 5);
    }

    private static double LogDensity(double z) => -(z * z / 2);

    private static double LogCdf(double z) => Math.Log(Math.Max(1e-300, NormalLaw.Cdf(z)));
}
