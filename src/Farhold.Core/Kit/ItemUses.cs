using NodaTime;

namespace Farhold.Kit;

/// <summary>How much of an item entries used up.</summary>
internal static class ItemUses
{
    /// <summary>
    /// Pieces used after <paramref name="from"/> and up to <paramref name="now"/>. What may have been within that time counts in
    /// the upper end only; so does an amount nobody can read, as all there may be.
    /// </summary>
    public static Between Within(KitItem item, State state, Happened from, Instant now)
    {
        var (low, high) = (0.0, 0.0);
        foreach (var use in item.Uses)
        foreach (var entry in state.Of(use.Kind))
        {
            if (entry.When.Latest < from.Earliest || entry.When.Earliest > now || Pieces(use, entry.What) is not { } pieces)
                continue;
            high += pieces.High;
            if (entry.When.Earliest > from.Latest && entry.When.Latest <= now)
                low += pieces.Low;
        }

        return new(low, high);
    }

    /// <summary>Null where the entry uses nothing of it.</summary>
    private static Between? Pieces(ItemUse use, Payload what) =>
        what switch
        {
            Payload.WoundPacked p => One(use, Wire.Word(p.Material)),
            Payload.DressingApplied p => One(use, Wire.Word(p.Dressing)),
            Payload.FluidGiven p when use.Of == Wire.Word(p.Fluid) => new(use.Each.Low * p.Millilitres, use.Each.High * p.Millilitres),
            Payload.DrugGiven p when use.IsOf(p.Drug) => DrugUnit.Milligrams(p.Amount, p.Unit) is { } mg
                ? Between.Exactly(mg / use.PieceMg!.Value)
                : new(0, double.PositiveInfinity),
            Payload.TaskDone p => CareTask.Is(use.Of!, p.Task) ? use.Each : null,
            Payload.BleedingChecked or Payload.UrineMeasured => use.Each,
            _ => null,
        };

    private static Between? One(ItemUse use, string word) => use.Of is null || use.Of == word ? use.Each : null;
}
