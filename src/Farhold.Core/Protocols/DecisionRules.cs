using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Protocols;

/// <summary>Looks at the signs of shock, and how a lone soft sign gives way.</summary>
/// <param name="Within">The signs of one look were all taken within this time.</param>
/// <param name="Apart">The least time between the two clear looks.</param>
/// <param name="Closing">With the first window closing within this, one clear look is enough.</param>
/// <param name="SoftLooks">Looks that show one soft sign alone before it gives way where nobody can be reached.</param>
/// <param name="SoftOver">The least time those looks cover.</param>
/// <param name="HeartRateUp">Beats a minute; a rise of this much in them means that the sign does not give way.</param>
/// <param name="SystolicDown">mmHg; a fall of this much in them likewise.</param>
public sealed record LookRules(
    Duration Within,
    Duration Apart,
    Duration Closing,
    int SoftLooks,
    Duration SoftOver,
    double HeartRateUp,
    double SystolicDown
)
{
    /// <summary>Where a protocol says nothing (design).</summary>
    public static readonly LookRules Usual = new(
        Duration.FromMinutes(5),
        Duration.FromMinutes(10),
        Duration.FromMinutes(20),
        3,
        Duration.FromMinutes(30),
        10,
        10
    );
}

/// <summary>How long advice counts, and when nobody can be reached.</summary>
/// <param name="Lasts">How long advice that allows an attempt counts where it names no end.</param>
/// <param name="Unanswered">Reached, but without an answer for this long, counts as not reached.</param>
/// <param name="Tried">How long a try that reached nobody counts.</param>
public sealed record AdviceRules(Duration Lasts, Duration Unanswered, Duration Tried)
{
    /// <summary>Where a protocol says nothing (design).</summary>
    public static readonly AdviceRules Usual = new(Duration.FromHours(2), Duration.FromMinutes(30), Duration.FromHours(1));

    /// <summary>Whose yes counts for what; empty: that of whoever gives advice.</summary>
    public ImmutableArray<Allowance> Allowances { get; init; } = [];
}

/// <summary>How attempts are begun and kept apart.</summary>
/// <param name="Lead">
/// Time that packing, holding, dressing and beginning to slacken take, by what the wound is packed with; the key <c>""</c> is for
/// anything. No attempt begins later than this before the limit.
/// </param>
/// <param name="Held">How long one limb has held before the next is begun.</param>
/// <param name="Loose">After this long without a tight tourniquet, advice may count the time without flow alone.</param>
public sealed record AttemptRules(ImmutableSortedDictionary<string, Duration> Lead, Duration Held, Duration Loose)
{
    /// <summary>Where a protocol says nothing (design): 13 minutes with haemostatic gauze, 20 with anything else.</summary>
    public static readonly AttemptRules Usual = new(
        ImmutableSortedDictionary.CreateRange(
            StringComparer.Ordinal,
            [
                KeyValuePair.Create(Wire.Word(PackingMaterial.HaemostaticGauze), Duration.FromMinutes(13)),
                KeyValuePair.Create("", Duration.FromMinutes(20)),
            ]
        ),
        Duration.FromMinutes(15),
        Duration.FromHours(2)
    );

    /// <summary>The lead with a material, or with whatever takes longest.</summary>
    public Duration LeadWith(string material) => Lead.TryGetValue(material, out var lead) ? lead : Lead.Values.Max();
}

/// <summary>Looks at whether bleeding has stopped, after a limb bled under a tourniquet or after it was let go.</summary>
/// <param name="Checks">Since then, in order; at least one.</param>
/// <param name="Every">After the last of them, up to <paramref name="Until"/>.</param>
public sealed record EffectPlan(
    string Text,
    ImmutableArray<Duration> Checks,
    Duration Every,
    Duration Until,
    ImmutableArray<string> Sources
)
{
    public string Text
    {
        get => RuleTexts.Shown(field);
        init;
    } = Text;

    /// <summary>Where a protocol says nothing (design).</summary>
    public static readonly EffectPlan Usual = new(
        "Has it stopped? Look at the wound and under the limb for blood, and feel for a pulse below the tourniquet.",
        [Duration.FromMinutes(5), Duration.FromMinutes(15), Duration.FromMinutes(30)],
        Duration.FromMinutes(15),
        Duration.FromHours(2),
        []
    );
}
