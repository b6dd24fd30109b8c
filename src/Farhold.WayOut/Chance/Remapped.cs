namespace Farhold.WayOut.Chance;

/// <summary>Standard normal scores given another law on an even grid, each kept at its place: the lowest stays the lowest.</summary>
/// <remarks>Prior score to share, share to posterior score; the density between nodes is taken as straight.</remarks>
internal sealed class Remapped
{
    public const double Last = 6;
    public const int Nodes = 241;
    private const double Step = 2 * Last / (Nodes - 1);

    private readonly double[] cdf;

    /// <param name="logLikelihood">Of what was seen, given the score.</param>
    public Remapped(Func<double, double> logLikelihood)
    {
        var logs = new double[Nodes];
        for (var i = 0; i < Nodes; i++)
            logs[i] = logLikelihood(Score(i)) - (Score(i) * Score(i) / 2);
        var most = logs.Max();
        LogEvidence = most;
        // Where nothing fits what was seen, the prior stands: a forecast that cannot learn is better than none.
        if (!double.IsFinite(most))
            for (var i = 0; i < Nodes; i++)
                logs[i] = -(Score(i) * Score(i) / 2);
        most = logs.Max();
        cdf = new double[Nodes];
        for (var i = 1; i < Nodes; i++)
            cdf[i] = cdf[i - 1] + ((Math.Exp(logs[i] - most) + Math.Exp(logs[i - 1] - most)) / 2);
        LogEvidence += Math.Log(cdf[^1] * Step / Math.Sqrt(2 * Math.PI));
        for (var i = 0; i < Nodes; i++)
            cdf[i] /= cdf[^1];
    }

    /// <summary>The logarithm of how likely it was, all scores considered, to see what was seen.</summary>
    public double LogEvidence { get; }

    public static double Score(int node) => -Last + (node * Step);

    public double At(double score)
    {
        var share = NormalLaw.Cdf(score);
        int low = 0,
            high = Nodes - 1;
        while (high - low > 1)
        {
            var middle = (low + high) >>> 1;
            (low, high) = cdf[middle] < share ? (middle, high) : (low, middle);
        }

        var rise = cdf[high] - cdf[low];
        return Score(low) + (rise > 0 ? Step * Math.Clamp((share - cdf[low]) / rise, 0, 1) : 0);
    }
}
