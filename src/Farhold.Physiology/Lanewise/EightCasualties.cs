using System.Runtime.InteropServices;

namespace Farhold.Physiology.Lanewise;

/// <summary>Eight casualties stepped at once, for studies: each to the bit as <see cref="CasualtySimulation"/> steps it alone.</summary>
/// <remarks>Needs 512-bit vectors to be fast; without them it is right, and slower than one after another.</remarks>
public sealed partial class EightCasualties
{
    private readonly ModelConstants model;
    private readonly Body.Physique[] each = new Body.Physique[Lanes.Count];
    private readonly Physique[] physique = new Physique[1];
    private readonly Drives[] drives = new Drives[1];
    private readonly WoundDrives[] wounds;
    private readonly Lanes[] state;
    private readonly Lanes[] before;
    private readonly Lanes[] work;
    private Lanes steps;
    private readonly double step;

    /// <param name="people">Eight.</param>
    /// <exception cref="ArgumentException">They are not eight, or something is out of range.</exception>
    public EightCasualties(ModelConstants model, ReadOnlySpan<Person> people, int wounds = 1, double step = 0.5)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentOutOfRangeException.ThrowIfNegative(wounds);
        if (people.Length != Lanes.Count)
            throw new ArgumentException($"{people.Length} people; it takes {Lanes.Count}.", nameof(people));
        if (!(step > 0 && step <= 3))
            throw new ArgumentOutOfRangeException(nameof(step), step, "Above 0 and at most 3 s.");
        this.model = model;
        this.step = step;
        this.wounds = new WoundDrives[wounds];
        state = new Lanes[Slots.BodyCount + (Slots.WoundCount * wounds)];
        before = new Lanes[state.Length];
        work = new Lanes[RungeKutta.Work(state.Length)];
        for (var lane = 0; lane < Lanes.Count; lane++)
        {
            Ranges.Check(people[lane]);
            each[lane] = new(model, people[lane]);
            Put(each[lane], physique, lane);
            Put(each[lane].AtRest(model), MemoryMarshal.Cast<Lanes, Levels>(state.AsSpan(0, Slots.BodyCount)), lane);
            SetConditions(lane, new());
        }
    }

    /// <summary>What holds for one of them from the next step on.</summary>
    /// <exception cref="ArgumentException">It names more wounds than there can be, or something out of range.</exception>
    public void SetConditions(int lane, Conditions conditions)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        if (conditions.Wounds.Length > wounds.Length)
            throw new ArgumentException($"{conditions.Wounds.Length} wounds, and there can be {wounds.Length}.", nameof(conditions));
        Ranges.Check(conditions);
        Put(new Body.Drives(model, conditions), drives, lane);
        for (var i = 0; i < wounds.Length; i++)
        {
            var wound = i < conditions.Wounds.Length ? conditions.Wounds[i] : new();
            Put(new Body.WoundDrives(model, each[lane], wound), wounds.AsSpan(i, 1), lane);
        }
    }

    /// <summary>One number of one casualty's state, as <see cref="CasualtySimulation.State"/> has it.</summary>
    public double State(int lane, int slot) => state[slot][lane];

    /// <summary>Seconds since the start, fewer where the circulation stopped.</summary>
    public double Time(int lane) => steps[lane] * step;

    /// <summary>Makes as many steps for each whose circulation has not stopped.</summary>
    public void Advance(int count)
    {
        for (var i = 0; i < count; i++)
        {
            var alive = Alive();
            if (!LaneMath.Any(alive))
                return;
            state.CopyTo(before, 0);
            RungeKutta.Step(model, physique[0], drives[0], wounds, state, work, step);
            for (var j = 0; j < state.Length; j++)
                state[j] = LaneMath.Select(alive, state[j], before[j]);
            steps += LaneMath.Select(alive, 1, 0);
        }
    }

    private LaneMask Alive()
    {
        ref readonly var now = ref MemoryMarshal.Cast<Lanes, Levels>(state.AsSpan(0, Slots.BodyCount))[0];
        var warm = LaneMath.Select(now.CoreTemperature < model.Death.ArrestCore, 0, 1);
        return LaneMath.Select(now.IschaemiaDose < 1, warm, 0) > 0;
    }

    /// <summary>Lays the numbers of one casualty into its lane. Both structs hold nothing but numbers, in the same order.</summary>
    private static void Put<TOne, TEight>(in TOne one, Span<TEight> eight, int lane)
        where TOne : unmanaged
        where TEight : unmanaged
    {
        var from = MemoryMarshal.Cast<TOne, double>(MemoryMarshal.CreateReadOnlySpan(in one, 1));
        var to = MemoryMarshal.Cast<TEight, double>(eight);
        for (var i = 0; i < from.Length; i++)
            to[(i * Lanes.Count) + lane] = from[i];
    }
}
