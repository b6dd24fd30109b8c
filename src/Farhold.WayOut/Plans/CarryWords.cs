using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>Stops and bearers of a carry in short sentences.</summary>
public static class CarryWords
{
    public static ImmutableArray<string> Of(CarryStops carry) =>
        [
            carry.Shortest is { } shortest && carry.Longest is { } longest
                ? $"On the move {ArrivalWords.Length(shortest)} to {ArrivalWords.Length(longest)}; slower in the dark."
                : "How long this carry takes is not known: count the stops by the clock.",
            carry.Look is { } look
                ? $"Stop and look at tourniquet and dressing at least every {Say.Duration(look.Every)}{Times(look)}, and after every lift."
                : "No look is due of a tourniquet, or a wound needs eyes without a break: don't set out before that is settled.",
            .. carry.Warmth is { } warmth
                ? (string[])
                    [$"Feel chest, hands and feet every {Say.Duration(warmth.Every)}{Times(warmth)}: whoever lies still on a litter cools."]
                : [],
            .. carry.Rota is { } rota
                ? Of(rota)
                : ["Who carries when: say how many bearers there are (with a wheel: change at every stop)."],
        ];

    private static IEnumerable<string> Of(BearerRota rota)
    {
        yield return rota.SetsDown
            ? $"All {Say.Number(rota.Turns[0].Carry.Length)} carry: set the litter down every {Say.Number(rota.Minutes)} min, before hands "
                + $"or backs give out. {Source(rota)}"
            : $"{Say.Number(rota.Turns[0].Carry.Length)} carry at a time; every {Say.Number(rota.Minutes)} min a rested pair takes over. "
                + Source(rota);
        if (!rota.SetsDown)
            for (var i = 0; i < rota.Turns.Length; i++)
                yield return $"{Say.Number(i * rota.Minutes)} to {Say.Number((i + 1) * rota.Minutes)} min: "
                    + $"{Numbers(rota.Turns[i].Carry)} carry, {Numbers(rota.Turns[i].Rest)} rest"
                    + (i + 1 == rota.Turns.Length ? "; then from the beginning." : ".");
        if (rota.Spare is { } spare)
            yield return $"{Say.Number(spare)} belongs to no pair: takes the place of whoever tires, or watches the casualty.";
    }

    private static string Source(BearerRota rota) =>
        $"({Say.Number(rota.By.People)} {rota.By.Means} lasted {Say.Number(rota.By.Minutes)} min, SD {Say.Number(rota.By.Sd)}, "
        + $"on the level: {rota.By.Source}.)";

    private static string Times(CarryStop stop) =>
        stop switch
        {
            { Most: 0 } => "",
            _ when stop.Fewest == stop.Most => $" ({Say.Number(stop.Most)} on the way)",
            _ => $" ({Say.Number(stop.Fewest)} to {Say.Number(stop.Most)} on the way)",
        };

    private static string Numbers(ImmutableArray<int> people) => string.Join(", ", people.Select(p => Say.Number(p)));
}
