using System.Collections.Immutable;

namespace Farhold.WayOut.Plans;

/// <summary>Where legs stand one after another: the plan itself, or one way of a choice.</summary>
/// <param name="Choice">Slot of the choice; 0 is the plan itself.</param>
public readonly record struct LegRow(int Choice, int Way)
{
    public static LegRow Plan => default;
}

/// <summary>Changes to a plan by hand. Legs are named by their slots.</summary>
public static class PlanEdits
{
    /// <summary>A slot that no leg of the plan has.</summary>
    public static int NextSlot(this Plan plan) => plan.All.Select(leg => leg.Slot).DefaultIfEmpty().Max() + 1;

    public static Plan Added(this Plan plan, LegRow to, Leg leg) => plan.Rowed(to, legs => legs.Add(leg));

    public static Plan Replaced(this Plan plan, Leg leg) => plan.Mapped(old => old.Slot == leg.Slot ? leg : old);

    public static Plan Without(this Plan plan, int slot) => plan.Mapped(old => old.Slot == slot ? null : old);

    /// <summary>One place earlier among its neighbours; the first stays.</summary>
    public static Plan Earlier(this Plan plan, int slot) => plan with { Legs = Earlier(plan.Legs, slot) };

    /// <summary>The chance of one way; of two branches the other takes what is left.</summary>
    public static Plan WithChance(this Plan plan, LegRow way, double probability) =>
        plan.Mapped(leg =>
            leg is Choice choice && choice.Slot == way.Choice
                ? choice with
                {
                    Ways =
                    [
                        .. choice.Ways.Select(
                            (w, i) =>
                                i == way.Way ? w with { Probability = probability }
                                : choice is { Kind: ChoiceKind.Branches, Ways.Length: 2 } ? w with { Probability = 1 - probability }
                                : w
                        ),
                    ],
                }
                : leg
        );

    /// <param name="choice">Slot of the choice in which something is tried.</param>
    /// <param name="closes">From the plan's start; null never.</param>
    public static Plan Closing(this Plan plan, int choice, Extent? closes) =>
        plan.Mapped(leg => leg is Choice tried && tried.Slot == choice ? tried with { Closes = closes } : leg);

    /// <summary>As it would be read back: slots in the order written, or why it is no plan yet.</summary>
    public static Read<Plan> Settled(this Plan plan)
    {
        var name = plan.Title ?? "plan";
        return plan.NeedsLight && plan.From is null
            ? new Read<Plan>.Refused([new(name, 1, 1, PlanTexts.WaitsForDaylight)])
            : PlanReader.Read(PlanWriter.Write(plan).Utf8, name);
    }

    private static Plan Rowed(this Plan plan, LegRow row, Func<ImmutableArray<Leg>, ImmutableArray<Leg>> change) =>
        row.Choice == 0
            ? plan with
            {
                Legs = change(plan.Legs),
            }
            : plan.Mapped(leg =>
                leg is Choice choice && choice.Slot == row.Choice
                    ? choice with
                    {
                        Ways = [.. choice.Ways.Select((w, i) => i == row.Way ? w with { Legs = change(w.Legs) } : w)],
                    }
                    : leg
            );

    private static ImmutableArray<Leg> Earlier(ImmutableArray<Leg> legs, int slot)
    {
        for (var i = 1; i < legs.Length; i++)
            if (legs[i].Slot == slot)
                return legs.SetItem(i, legs[i - 1]).SetItem(i - 1, legs[i]);
        return
        [
            .. legs.Select(leg =>
                leg is Choice choice ? choice with { Ways = [.. choice.Ways.Select(w => w with { Legs = Earlier(w.Legs, slot) })] } : leg
            ),
        ];
    }
}
