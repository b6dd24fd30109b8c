using System.Runtime.InteropServices;

namespace Farhold.Physiology.Lanewise;

public sealed partial class EightCasualties
{
    /// <summary>
    /// Copies one casualty as it stands, with what holds for it, into a lane: two courses that part here share all before it.
    /// </summary>
    /// <exception cref="ArgumentException">The other has another number of wounds, or steps by another step.</exception>
    public void CopyFrom(EightCasualties other, int from, int to)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.wounds.Length != wounds.Length)
            throw new ArgumentException($"{other.wounds.Length} wounds, and here are {wounds.Length}.", nameof(other));
        if (other.step != step)
            throw new ArgumentException($"Steps of {other.step} s, and here of {step} s.", nameof(other));
        each[to] = other.each[from];
        Copy(other.physique, from, physique, to);
        Copy(other.drives, from, drives, to);
        Copy(other.wounds, from, wounds, to);
        Copy(other.state, from, state, to);
        Copy([other.steps], from, MemoryMarshal.CreateSpan(ref steps, 1), to);
    }

    /// <summary>The circulation of one of them has stopped.</summary>
    public bool IsArrested(int lane)
    {
        var now = MemoryMarshal.Cast<Lanes, Levels>(state.AsSpan(0, Slots.BodyCount))[0];
        return now.IschaemiaDose[lane] >= 1 || now.CoreTemperature[lane] < model.Death.ArrestCore;
    }

    private static void Copy<T>(ReadOnlySpan<T> from, int fromLane, Span<T> to, int toLane)
        where T : unmanaged
    {
        var source = MemoryMarshal.Cast<T, double>(from);
        var target = MemoryMarshal.Cast<T, double>(to);
        for (var i = 0; i < source.Length; i += Lanes.Count)
            target[i + toLane] = source[i + fromLane];
    }
}
