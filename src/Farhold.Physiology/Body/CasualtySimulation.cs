using System.Runtime.InteropServices;

namespace Farhold.Physiology.Body;

/// <summary>One invented casualty in time, stepped by a fixed step.</summary>
/// <remarks>
/// For rehearsal and study. Never shown as a prediction for somebody who is hurt: single numbers of a single run are not one.
/// No clock and no chance: the same person, conditions and steps give the same bits, however the steps are chunked.
/// </remarks>
public sealed class CasualtySimulation
{
    private readonly ModelConstants model;
    private readonly Physique physique;
    private readonly double[] state;
    private readonly double[] work;
    private readonly WoundDrives[] wounds;
    private Drives drives;

    /// <param name="wounds">How many wounds there can be; each adds two numbers to the state.</param>
    /// <param name="step">In seconds. 0.5 is what the checks hold; 2 will do where nothing bleeds.</param>
    /// <exception cref="ArgumentOutOfRangeException">Step, count of wounds, or something of the person is out of range.</exception>
    public CasualtySimulation(ModelConstants model, Person person, int wounds = 1, double step = 0.5)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(person);
        ArgumentOutOfRangeException.ThrowIfNegative(wounds);
        if (!(step > 0 && step <= 3))
            throw new ArgumentOutOfRangeException(nameof(step), step, "Above 0 and at most 3 s.");
        Ranges.Check(person);
        this.model = model;
        Person = person;
        Step = step;
        physique = new(model, person);
        state = new double[Slots.BodyCount + (Slots.WoundCount * wounds)];
        work = new double[RungeKutta.Work(state.Length)];
        this.wounds = new WoundDrives[wounds];
        MemoryMarshal.Cast<double, Levels>(state.AsSpan(0, Slots.BodyCount))[0] = physique.AtRest(model);
        Conditions = new();
    }

    public Person Person { get; }

    /// <summary>In seconds.</summary>
    public double Step { get; }

    /// <summary>Steps made so far.</summary>
    public long Steps { get; private set; }

    /// <summary>Seconds since the start.</summary>
    public double Time => Steps * Step;

    /// <summary>The circulation has stopped; time goes no further.</summary>
    public bool IsArrested => Levels.IschaemiaDose >= 1 || Levels.CoreTemperature < model.Death.ArrestCore;

    /// <summary>What holds from the next step on.</summary>
    /// <exception cref="ArgumentException">It names more wounds than there can be, or something out of range.</exception>
    public Conditions Conditions
    {
        get;
        set
        {
            ArgumentNullException.ThrowIfNull(value);
            if (value.Wounds.Length > wounds.Length)
                throw new ArgumentException($"{value.Wounds.Length} wounds, and there can be {wounds.Length}.", nameof(value));
            Ranges.Check(value);
            field = value;
            drives = new(model, value);
            for (var i = 0; i < wounds.Length; i++)
                wounds[i] = new(model, physique, i < value.Wounds.Length ? value.Wounds[i] : new());
        }
    }

    /// <summary>The numbers named by <see cref="Slots.Body"/>, then <see cref="Slots.Wound"/> for each wound.</summary>
    public ReadOnlySpan<double> State => state;

    /// <summary>Makes as many steps, or fewer where the circulation stops. Allocates nothing.</summary>
    public void Advance(int steps)
    {
        for (var i = 0; i < steps && !IsArrested; i++)
        {
            RungeKutta.Step(model, physique, drives, wounds, state, work, Step);
            Steps++;
        }
    }

    /// <summary>What somebody could see and measure now, without any error of theirs.</summary>
    public Vitals Vitals() => new(model, physique, Levels, Now());

    /// <summary>The clot of a wound comes off.</summary>
    internal void Dislodge(int wound) => state.AsSpan(Slots.BodyCount + (Slots.WoundCount * wound), Slots.WoundCount).Clear();

    /// <summary>Out of one wound, mL/min.</summary>
    internal double WoundFlow(int wound)
    {
        var clots = MemoryMarshal.Cast<double, WoundLevels>(state.AsSpan(Slots.BodyCount));
        return 60 * Equations.WoundFlow(wounds[wound], drives, clots[wound], Now());
    }

    internal ref readonly Levels Levels => ref MemoryMarshal.Cast<double, Levels>(state.AsSpan(0, Slots.BodyCount))[0];

    internal ref readonly Physique Physique => ref physique;

    internal Signals Now()
    {
        Equations.Derivatives(model, physique, drives, wounds, state, work.AsSpan(0, state.Length), out var now);
        return now;
    }

    /// <summary>How fast the body's numbers change now, a second.</summary>
    internal Levels Rates()
    {
        var rates = work.AsSpan(0, state.Length);
        Equations.Derivatives(model, physique, drives, wounds, state, rates, out _);
        return MemoryMarshal.Cast<double, Levels>(rates[..Slots.BodyCount])[0];
    }
}
