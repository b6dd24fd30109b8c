namespace Farhold.Values;

/// <summary>A three-valued answer, ordered as in strong Kleene logic; what nobody recorded is unknown.</summary>
public enum Truth
{
    NotMet = -1,
    Unknown = 0,
    Met = 1,
}

/// <summary>Strong Kleene logic (Kleene 1952, Introduction to Metamathematics, section 64).</summary>
public static class Kleene
{
    extension(Truth a)
    {
        public Truth And(Truth b) => a < b ? a : b;

        public Truth Or(Truth b) => a > b ? a : b;

        public Truth Not() => (Truth)(-(int)a);
    }

    public static Truth Of(bool known) => known ? Truth.Met : Truth.NotMet;

    /// <summary>The common value of all, or unknown where they disagree or there are none.</summary>
    public static Truth Agreed(Truth? soFar, Truth next) => soFar is null || soFar == next ? next : Truth.Unknown;
}
