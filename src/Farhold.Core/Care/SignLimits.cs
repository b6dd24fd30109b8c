using System.Collections.Immutable;

namespace Farhold.Care;

/// <summary>What is usual of a sign at an age, and from where a value of it alone is a warning.</summary>
/// <param name="Low">At or below which it warns; null: nothing warns of a low value.</param>
/// <param name="High">At or above which it warns.</param>
/// <param name="Sources">Of all three, as they are known in the rules.</param>
/// <remarks>
/// The nearer of two limits counts: that of any sign of shock or warning sign which one value meets alone, soft ones too, and from
/// 16 years that at which it scores 3 in NEWS2. Where a limit hangs on an age that is not known, there is none.
/// </remarks>
public sealed record SignLimits(UsualRange? Usual, double? Low, double? High, ImmutableArray<string> Sources)
{
    public static SignLimits For(FieldRange sign, double? ageYears, Rulebook rules)
    {
        var usual = UsualRange.For(sign.Field, ageYears);
        var asked = rules
            .Protocol.Criteria.Where(c => c.IsSign)
            .Select(c => (c.Condition, c.Sources))
            .Concat(rules.WarningSigns.Rules.Where(r => r.Scope == TaskScope.Casualty).Select(r => (r.Condition, r.Sources)))
            .SelectMany(c => Alone(c.Condition).Select(compare => (Compare: compare, c.Sources)))
            .Where(c => c.Compare.Input.Name == sign.Field && (c.Compare.Bands.IsEmpty || ageYears is not null))
            .Select(c => (c.Compare.Comparison, Limit: LimitAt(ageYears, c.Compare), c.Sources))
            .Where(c => c.Limit > sign.Min && c.Limit < sign.Max)
            .ToArray();
        var low = asked.Where(c => c.Comparison is Comparison.Below or Comparison.AtMost).ToArray();
        var high = asked.Where(c => c.Comparison is Comparison.Above or Comparison.AtLeast).ToArray();
        return new(
            usual,
            low.Select(c => (double?)c.Limit).Append(usual?.FarLow).Max(),
            high.Select(c => (double?)c.Limit).Append(usual?.FarHigh).Min(),
            [.. low.Concat(high).SelectMany(c => c.Sources).Concat(usual is null ? [] : [usual.Source]).Distinct()]
        );
    }

    /// <summary>Comparisons each of which meets the condition by itself.</summary>
    private static IEnumerable<Condition.Compare> Alone(Condition condition) =>
        condition switch
        {
            Condition.Compare compare => [compare],
            Condition.Any any => any.Parts.SelectMany(Alone),
            _ => [],
        };

    private static double LimitAt(double? ageYears, Condition.Compare compare) =>
        compare.Bands.FirstOrDefault(b => ageYears >= b.FromYears && ageYears < b.UnderYears)?.Limit ?? compare.Limit;
}
