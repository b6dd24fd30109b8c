using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>One wound by its name in the record.</summary>
/// <param name="Found">What was said of place and nature; empty where the record names a wound nobody described.</param>
/// <param name="Care">Packing, pressure and dressings, in order of time.</param>
/// <param name="LastLook">The last look at its bleeding; empty if nobody looked, several where it is not known which came last.</param>
public sealed record WoundFact(string Name, ImmutableArray<Stated> Found, ImmutableArray<Stated> Care, ImmutableArray<Stated> LastLook)
{
    /// <summary>Actively, by one at least of what may be the last looks.</summary>
    public bool Bleeds => LastLook.Any(l => l.As<Payload.BleedingChecked>().Bleeding == Bleeding.Active);

    /// <summary><c>wound w1, left leg</c>.</summary>
    public string Placed =>
        Plain.Line(
            string.Join(
                ", ",
                [
                    HandOverTexts.WoundPlaced(Name),
                    .. Found
                        .Select(f => f.As<Payload.WoundFound>())
                        .Select(f =>
                            f.Limb is { } limb ? Say.Limb(limb)
                            : f.Region is { } region ? Say.Word(region)
                            : null
                        )
                        .OfType<string>()
                        .Distinct(),
                ]
            )
        );

    /// <summary>Found there, or what a tourniquet there was tightened for.</summary>
    public bool IsOn(LimbFact limb) =>
        Found.Any(f => f.As<Payload.WoundFound>().Limb == limb.Limb)
        || limb.Events.Any(e => e.What is Payload.TourniquetTightened { Wound: { } wound } && wound == Name);

    internal static ImmutableArray<WoundFact> All(Source source)
    {
        var names = source.Readings.SelectMany(r => NewNames.Wounds(r)).Distinct();
        return [.. names.Select(n => Of(n, source)).Where(w => !(w.Found.IsEmpty && w.Care.IsEmpty && w.LastLook.IsEmpty))];
    }

    private static WoundFact Of(string name, Source source) =>
        new(
            name,
            [.. source.Of(Kind.WoundFound).Where(s => s.As<Payload.WoundFound>().Wound == name)],
            [
                .. source
                    .Of(Kind.WoundPacked)
                    .Where(s => s.As<Payload.WoundPacked>().Wound == name)
                    .Concat(source.Of(Kind.PressureHeld).Where(s => s.As<Payload.PressureHeld>().Wound == name))
                    .Concat(source.Of(Kind.DressingApplied).Where(s => s.As<Payload.DressingApplied>().Wound == name))
                    .OrderBy(s => s.When.Latest)
                    .ThenBy(s => s.When.Earliest)
                    .ThenBy(s => s.Id),
            ],
            source.Last(Kind.BleedingChecked, p => ((Payload.BleedingChecked)p).Wound == name)
        );
}
