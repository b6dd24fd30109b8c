namespace Farhold.Physiology.Rehearsal;

public enum PackingGauze
{
    Plain,
    Haemostatic,
}

/// <summary>What somebody does to the casualty. It takes its time, and works bit by bit while it is done.</summary>
public abstract record Act
{
    private Act() { }

    /// <param name="Loose">Closes the veins and not the arteries.</param>
    /// <param name="Limb">A limb that wounds name; null is the one whose muscle and veins are modelled.</param>
    public sealed record Tighten(bool Loose = false, string? Limb = null) : Act;

    /// <summary>Lets the tourniquet out, and leaves it where it is.</summary>
    public sealed record Slacken(string? Limb = null) : Act;

    public sealed record Pack(string Wound, PackingGauze Gauze) : Act;

    /// <summary>A tight dressing, over packing or alone.</summary>
    public sealed record Dress(string Wound) : Act;

    /// <summary>A hand on the wound, until <see cref="Release"/>.</summary>
    public sealed record Press(string Wound) : Act;

    public sealed record Release(string Wound) : Act;

    /// <param name="Fluid">Its rate is set by volume and time.</param>
    public sealed record Infuse(Infusion Fluid, double Millilitres, double Minutes) : Act;

    /// <param name="Salts">Rehydration salts, or water.</param>
    public sealed record Drink(double Millilitres, bool Salts) : Act;

    /// <summary>Clothing, blankets and warmth from now on.</summary>
    public sealed record Cover(double Insulation, double Wetness, double Warming) : Act;

    /// <summary>Air from now on, °C.</summary>
    public sealed record Air(double Celsius) : Act;

    /// <summary>Pain from now on, 0 to 10: what relieved it is not modelled.</summary>
    public sealed record Hurt(double Pain) : Act;

    /// <summary>Fall of pressure from heart to brain from now on, mmHg.</summary>
    public sealed record Raise(double HeadUp) : Act;

    /// <summary>The casualty is turned, lifted or carried. What lies on a wound without a tight tourniquet may come off.</summary>
    /// <param name="Dislodges">
    /// Chance for a wound that needs a tourniquet, in the first hour; null is the usual one. See <see cref="Dislodgement"/>.
    /// </param>
    public sealed record Move(double? Dislodges = null) : Act;
}
