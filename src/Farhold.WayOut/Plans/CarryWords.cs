using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>Stops and bearers of a carry in short sentences.</summary>
public static class CarryWords
{
    public static ImmutableArray<string> Of(CarryStops carry) =>
        [
            carry.Shortest is { } shortest && carry.Longest is { } longest
                ? PlanTexts.OnTheMove(ArrivalWords.Length(shortest), ArrivalWords.Length(longest))
                : PlanTexts.MoveUnknown,
            carry.Look is { } look ? PlanTexts.LookEvery(Say.Duration(look.Every), Times(look)) : PlanTexts.NoLookDue,
            .. carry.Warmth is { } warmth ? (string[])[PlanTexts.FeelEvery(Say.Duration(warmth.Every), Times(warmth))] : [],
            .. carry.Rota is { } rota ? Of(rota) : [PlanTexts.RotaUnknown],
        ];

    private static IEnumerable<string> Of(BearerRota rota)
    {
        var (carry, minutes, source) = (Say.Number(rota.Turns[0].Carry.Length), Say.Number(rota.Minutes), Source(rota));
        yield return rota.SetsDown ? PlanTexts.AllCarry(carry, minutes, source) : PlanTexts.PairsCarry(carry, minutes, source);
        if (!rota.SetsDown)
            for (var i = 0; i < rota.Turns.Length; i++)
                yield return Turn(rota, i);
        if (rota.Spare is { } spare)
            yield return PlanTexts.Spare(Say.Number(spare));
    }

    private static string Turn(BearerRota rota, int i)
    {
        var (from, until) = (Say.Number(i * rota.Minutes), Say.Number((i + 1) * rota.Minutes));
        var (carry, rest) = (Numbers(rota.Turns[i].Carry), Numbers(rota.Turns[i].Rest));
        return i + 1 == rota.Turns.Length ? PlanTexts.LastTurn(from, until, carry, rest) : PlanTexts.Turn(from, until, carry, rest);
    }

    private static string Source(BearerRota rota) =>
        PlanTexts.Endurance(Say.Number(rota.By.People), rota.By.Means, Say.Number(rota.By.Minutes), Say.Number(rota.By.Sd), rota.By.Source);

    private static string Times(CarryStop stop) =>
        stop switch
        {
            { Most: 0 } => "",
            _ when stop.Fewest == stop.Most => PlanTexts.TimesOnTheWay(Say.Number(stop.Most)),
            _ => PlanTexts.TimesFromTo(Say.Number(stop.Fewest), Say.Number(stop.Most)),
        };

    private static string Numbers(ImmutableArray<int> people) => string.Join(", ", people.Select(p => Say.Number(p)));
}
