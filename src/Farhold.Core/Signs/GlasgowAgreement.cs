namespace Farhold.Signs;

/// <summary>Whether a coma scale and a level of consciousness can belong to one look at one casualty.</summary>
/// <param name="State">Met: they agree. Not met: look again. Unknown: can't be told, and why.</param>
/// <param name="Reason">A sentence for a person.</param>
/// <remarks>A check on the record, not a conversion: one is never filled in from the other.</remarks>
public sealed record GlasgowAgreement(Truth State, string Reason)
{
    /// <summary>With a part that can't be tested, agrees or not only if it would whatever that part were.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A part or the level is outside its scale.</exception>
    /// <remarks>
    /// Median totals of 15 alert, 13 voice, 8 pain, 3 unresponsive: McNarry and Goldhill 2004, Anaesthesia 59:34 (from
    /// memory). The bands reach half-way to the neighbouring median, shared ends in both (design); new confusion, which
    /// that study did not have, takes voice's band (design). The plain contradictions follow from what the words of the
    /// two scales mean.
    /// </remarks>
    public static GlasgowAgreement Between(Mental mental, GlasgowParts parts)
    {
        var total = Glasgow.Bounds(parts);
        var all = Completions(parts).Select(whole => OfWhole(mental, whole)).ToList();
        if (total.IsExact)
            return all[0];
        var word = Word(mental);
        var text = SignTexts.ComaTotalRange(total.Min, total.Max);
        return all.Select(a => a.State).Aggregate<Truth, Truth?>(null, (soFar, next) => Kleene.Agreed(soFar, next)) switch
        {
            Truth.Met => new(Truth.Met, SignTexts.ComaAlwaysAgrees(text, word)),
            Truth.NotMet => new(Truth.NotMet, SignTexts.ComaNeverAgrees(text, word)),
            _ => new(Truth.Unknown, SignTexts.ComaMayAgree(text, word)),
        };
    }

    private static GlasgowAgreement OfWhole(Mental mental, GlasgowParts parts)
    {
        if (Contradiction(mental, parts) is { } contradiction)
            return new(Truth.NotMet, SignTexts.LookAtBoth(contradiction));
        var band = BandOf(mental);
        var total = Glasgow.Bounds(parts).Min;
        var text = SignTexts.ComaExpected(band.Min, band.Max, Word(mental), total);
        if (total < band.Min || total > band.Max)
            return new(Truth.NotMet, SignTexts.LookAtBoth(text));
        return mental == Mental.Alert && parts.Verbal < 5 ? new(Truth.Unknown, SignTexts.ComaNotOriented) : new(Truth.Met, text);
    }

    private static IEnumerable<GlasgowParts> Completions(GlasgowParts parts) =>
        from eye in Choices(parts.Eye, 4)
        from verbal in Choices(parts.Verbal, 5)
        from motor in Choices(parts.Motor, 6)
        select new GlasgowParts(eye, verbal, motor);

    private static IEnumerable<int> Choices(int? score, int greatest) => score is { } known ? [known] : Enumerable.Range(1, greatest);

    private static ScoreBounds BandOf(Mental mental) =>
        mental switch
        {
            Mental.Alert => new(14, 15),
            Mental.Confused => new(11, 14),
            Mental.Voice => new(11, 14),
            Mental.Pain => new(6, 10),
            Mental.Unresponsive => new(3, 5),
            _ => throw new ArgumentOutOfRangeException(nameof(mental), mental, "Not a level of consciousness."),
        };

    private static string? Contradiction(Mental mental, GlasgowParts parts) =>
        (mental, parts) switch
        {
            (Mental.Alert, { Eye: <= 2 }) => SignTexts.ComaAlertEyes,
            (Mental.Confused, { Verbal: 5 }) => SignTexts.ComaConfusedOriented,
            (Mental.Pain, { Eye: >= 3 }) => SignTexts.ComaPainEyes,
            (Mental.Pain, { Motor: 6 }) => SignTexts.ComaPainObeys,
            (Mental.Unresponsive, { Eye: >= 2 }) => SignTexts.ComaUnresponsiveEyes,
            _ => null,
        };

    private static string Word(Mental mental) =>
        mental switch
        {
            Mental.Alert => SignTexts.LevelAlert,
            Mental.Confused => SignTexts.LevelConfused,
            Mental.Voice => SignTexts.LevelVoice,
            Mental.Pain => SignTexts.LevelPain,
            _ => SignTexts.LevelUnresponsive,
        };
}
