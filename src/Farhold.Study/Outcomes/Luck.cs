using Farhold.WayOut.Chance;

namespace Farhold.Study.Outcomes;

/// <summary>Chance of one bleed that has to be caught.</summary>
internal readonly record struct BleedLuck(double Phase, double Missed, double Reaction, double Dies);

/// <summary>All chance of one casualty; every policy meets the same. Scores are standard normal, the rest even from 0 to 1.</summary>
internal readonly record struct Luck
{
    private static readonly ulong[] Keys =
    [
        .. new[]
        {
            "needed",
            "wound:w1/artery",
            "wound:w1/difficulty",
            "wound:w1/attempt:1/hold",
            "wound:w1/attempt:2/hold",
            "wound:w1/attempt:1/fails",
            "wound:w1/attempt:2/fails",
            "wound:w1/move",
            "wound:w1/rebleed",
            "limb",
            "release",
            "palsy",
            "palsy/lasting",
        }.Select(StudyDraws.Key),
    ];

    private static readonly ulong[] BleedKeys =
    [
        .. new[] { "wound:w1/attempt:1", "wound:w1/attempt:2", "wound:w1/rebleed" }.SelectMany(of =>
            new[] { "phase", "missed", "reaction", "dies" }.Select(what => StudyDraws.Key($"{of}/{what}"))
        ),
    ];

    public Luck(Rng casualty)
    {
        double U(int key) => casualty.Draw(Keys[key]);
        (Needed, Artery) = (U(0), U(1));
        (Difficulty, Hold, SecondHold) = (NormalLaw.Quantile(U(2)), NormalLaw.Quantile(U(3)), NormalLaw.Quantile(U(4)));
        (Fails, SecondFails, Move, Rebleeds) = (U(5), U(6), -Math.Log(U(7)), U(8));
        (Limb, Release, Palsy, Lasting) = (U(9), U(10), U(11), U(12));
        BleedLuck B(int of) =>
            new(
                casualty.Draw(BleedKeys[4 * of]),
                casualty.Draw(BleedKeys[(4 * of) + 1]),
                casualty.Draw(BleedKeys[(4 * of) + 2]),
                casualty.Draw(BleedKeys[(4 * of) + 3])
            );
        (First, Second, Late) = (B(0), B(1), B(2));
    }

    public double Needed { get; }
    public double Artery { get; }
    public double Difficulty { get; }
    public double Hold { get; }
    public double SecondHold { get; }
    public double Fails { get; }
    public double SecondFails { get; }

    /// <summary>Exponential with mean 1.</summary>
    public double Move { get; }
    public double Rebleeds { get; }
    public double Limb { get; }
    public double Release { get; }
    public double Palsy { get; }
    public double Lasting { get; }
    public BleedLuck First { get; }
    public BleedLuck Second { get; }
    public BleedLuck Late { get; }
}
