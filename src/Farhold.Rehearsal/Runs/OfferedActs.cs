using System.Collections.Immutable;

namespace Farhold.Rehearsal.Runs;

/// <summary>What a trainee may do to a casualty, for somebody who leads to confirm: each with the name of its limb or wound.</summary>
public static class OfferedActs
{
    /// <summary>Design: dry clothes, a bag and a mat: about what a winter sleeping bag gives.</summary>
    public static readonly Act Wrapped = new Act.Cover(0.6, 0.1, 0);

    /// <summary>Design: a cup, mL.</summary>
    public const double Cup = 200;

    /// <summary>Limb by limb, then what is of no limb.</summary>
    public static ImmutableArray<Act> For(Scenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return
        [
            .. scenario.Limbs.SelectMany(l =>
                (Act[])[new Act.Tighten(Limb: Wire.Word(l)), .. OnWounds(scenario, l), new Act.Slacken(Wire.Word(l))]
            ),
            .. OnWounds(scenario, null),
            Wrapped,
            new Act.Drink(Cup, Salts: true),
            new Act.Move(),
        ];
    }

    /// <summary>As <see cref="AskedLine.Parse"/> reads it.</summary>
    public static string Write(Act act)
    {
        using var buffer = new MemoryStream();
        using (var w = new System.Text.Json.Utf8JsonWriter(buffer))
        {
            w.WriteStartObject();
            ActFields.Write(w, act);
            w.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(buffer.ToArray());
    }

    /// <summary>The limb or wound that an act is at; null where it is at none.</summary>
    public static string? On(Act act) =>
        act switch
        {
            Act.Tighten t => t.Limb,
            Act.Slacken s => s.Limb,
            Act.Pack p => p.Wound,
            Act.Dress d => d.Wound,
            Act.Press p => p.Wound,
            Act.Release r => r.Wound,
            _ => null,
        };

    private static IEnumerable<Act> OnWounds(Scenario scenario, Limb? limb) =>
        scenario
            .Wounds.Where(w => w.Limb == limb)
            .SelectMany(w =>
                (Act[])
                    [
                        new Act.Pack(w.Name, PackingGauze.Haemostatic),
                        new Act.Pack(w.Name, PackingGauze.Plain),
                        new Act.Press(w.Name),
                        new Act.Release(w.Name),
                        new Act.Dress(w.Name),
                    ]
            );
}
