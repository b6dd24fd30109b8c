using System.Collections.Immutable;
using System.Diagnostics;
using System.Text.Json;

namespace Farhold.Rehearsal.Scenarios;

/// <summary>Acts as they stand in scenarios, acts files and truth files: a word and its members.</summary>
/// <remarks>In an act a limb is always named; which one is the modelled one the session knows.</remarks>
public static class ActFields
{
    private static readonly ImmutableArray<string> Words =
    [
        "tighten",
        "slacken",
        "pack",
        "dress",
        "press",
        "release",
        "infuse",
        "drink",
        "cover",
        "air",
        "pain",
        "raise",
        "move",
    ];

    /// <summary>What runs in, by the word of the record.</summary>
    /// <remarks>Composition a millilitre: as in the model's reference, by judgement; red cells from memory.</remarks>
    private static readonly ImmutableArray<(Fluid Word, Infusion Content)> Fluids =
    [
        (Fluid.Crystalloid, new()),
        (Fluid.WholeBlood, new(Haematocrit: 0.38, Protein: 0.0372, ClottingFactor: 0.55)),
        (Fluid.Plasma, new(Protein: 0.058, ClottingFactor: 0.9)),
        (Fluid.RedCells, new(Haematocrit: 0.6)),
    ];

    /// <summary>Null where the model has nothing that would run in so.</summary>
    public static Infusion? Content(Fluid fluid) => Fluids.Where(f => f.Word == fluid).Select(f => f.Content).FirstOrDefault();

    /// <summary>The act named by the member <c>act</c>; null with a refusal. Other members are left to the caller.</summary>
    /// <param name="wounds">Names that an act may give; empty: any.</param>
    public static Act? Read(LocatedObject fields, ImmutableArray<string> wounds)
    {
        fields.Required("act", LocatedFields.OneOf(Words));
        if (fields.Word("act", Words.Select(w => (w, w))) is not { } word)
            return null;
        switch (word)
        {
            case "tighten":
                return Limb(fields) is { } tied ? new Act.Tighten(fields.Flag("loose") == true, tied) : null;
            case "slacken":
                return Limb(fields) is { } let ? new Act.Slacken(let) : null;
            case "pack":
                fields.Required("material", LocatedFields.OneOf(Wire.Words<PackingMaterial>()));
                var material = Word<PackingMaterial>(fields, "material");
                return Wound(fields, wounds) is { } packed && material is { } with ? new Act.Pack(packed, Gauze(with)) : null;
            case "dress":
                return Wound(fields, wounds) is { } dressed ? new Act.Dress(dressed) : null;
            case "press":
                return Wound(fields, wounds) is { } pressed ? new Act.Press(pressed) : null;
            case "release":
                return Wound(fields, wounds) is { } released ? new Act.Release(released) : null;
            case "infuse":
                return Infuse(fields);
            case "drink":
                return Needed(fields, "millilitres", 1, 2_000, " mL") is { } drunk
                    ? new Act.Drink(drunk, fields.Flag("salts") == true)
                    : null;
            case "cover":
                var (insulation, wetness) = (Needed(fields, "insulation", 0.05, 2, " m²K/W"), fields.Number("wetness", 0, 1) ?? 0);
                var warming = fields.Number("warmingW", 0, 200, " W") ?? 0;
                return insulation is { } clothes ? new Act.Cover(clothes, wetness, warming) : null;
            case "air":
                return Needed(fields, "airC", -50, 50, " °C") is { } air ? new Act.Air(air) : null;
            case "pain":
                return Needed(fields, "pain", 0, 10) is { } pain ? new Act.Hurt(pain) : null;
            case "raise":
                return Needed(fields, "headUp", 0, 40, " mmHg") is { } headUp ? new Act.Raise(headUp) : null;
            case "move":
                return new Act.Move(fields.Number("dislodges", 0, 1));
            default:
                throw new UnreachableException();
        }
    }

    /// <summary>An act that somebody sets about; a press may say how long.</summary>
    public static AskedAct? ReadAsked(LocatedObject fields, ImmutableArray<string> wounds) =>
        Read(fields, wounds) switch
        {
            null => null,
            Act.Press press => new(press, fields.Number("minutes", 0.1, 60, " minutes")),
            var act => new AskedAct(act),
        };

    /// <summary>The members of an act, into an object that is open.</summary>
    public static void Write(Utf8JsonWriter w, Act act)
    {
        w.WriteString("act", Word(act));
        switch (act)
        {
            case Act.Tighten(var loose, var limb):
                w.WriteString("limb", limb);
                if (loose)
                    w.WriteBoolean("loose", true);
                break;
            case Act.Slacken(var limb):
                w.WriteString("limb", limb);
                break;
            case Act.Pack(var wound, var gauze):
                w.WriteString("wound", wound);
                w.WriteString(
                    "material",
                    Wire.Word(gauze == PackingGauze.Haemostatic ? PackingMaterial.HaemostaticGauze : PackingMaterial.PlainGauze)
                );
                break;
            case Act.Dress(var wound):
                w.WriteString("wound", wound);
                break;
            case Act.Press(var wound):
                w.WriteString("wound", wound);
                break;
            case Act.Release(var wound):
                w.WriteString("wound", wound);
                break;
            case Act.Infuse(var fluid, var volume, var minutes):
                w.WriteString("fluid", Wire.Word(Fluids.First(f => f.Content == fluid).Word));
                w.WriteNumber("millilitres", volume);
                w.WriteNumber("minutes", minutes);
                break;
            case Act.Drink(var volume, var salts):
                w.WriteNumber("millilitres", volume);
                w.WriteBoolean("salts", salts);
                break;
            case Act.Cover(var insulation, var wetness, var warming):
                w.WriteNumber("insulation", insulation);
                w.WriteNumber("wetness", wetness);
                w.WriteNumber("warmingW", warming);
                break;
            case Act.Air(var celsius):
                w.WriteNumber("airC", celsius);
                break;
            case Act.Hurt(var pain):
                w.WriteNumber("pain", pain);
                break;
            case Act.Raise(var headUp):
                w.WriteNumber("headUp", headUp);
                break;
            case Act.Move(var dislodges):
                if (dislodges is { } chance)
                    w.WriteNumber("dislodges", chance);
                break;
            default:
                throw new UnreachableException();
        }
    }

    public static string Word(Act act) =>
        act switch
        {
            Act.Tighten => "tighten",
            Act.Slacken => "slacken",
            Act.Pack => "pack",
            Act.Dress => "dress",
            Act.Press => "press",
            Act.Release => "release",
            Act.Infuse => "infuse",
            Act.Drink => "drink",
            Act.Cover => "cover",
            Act.Air => "air",
            Act.Hurt => "pain",
            Act.Raise => "raise",
            Act.Move => "move",
            _ => throw new UnreachableException(),
        };

    /// <summary>Cloth does no more than plain gauze.</summary>
    public static PackingGauze Gauze(PackingMaterial material) =>
        material == PackingMaterial.HaemostaticGauze ? PackingGauze.Haemostatic : PackingGauze.Plain;

    /// <summary>A word of the record's own; null where it is left out or refused.</summary>
    internal static T? Word<T>(LocatedObject fields, string name)
        where T : struct, Enum => fields.Word(name, Wire.Words<T>().Select(w => (w, w))) is { } word ? Wire.Parse<T>(word) : null;

    /// <summary>A number that may not be left out; null with a refusal.</summary>
    internal static double? Needed(LocatedObject fields, string name, double least, double most, string unit = "")
    {
        fields.Required(name, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"a number from {least} to {most}{unit}"));
        return fields.Number(name, least, most, unit);
    }

    private static string? Limb(LocatedObject fields)
    {
        fields.Required("limb", LocatedFields.OneOf(Wire.Words<Limb>()));
        return Word<Limb>(fields, "limb") is { } limb ? Wire.Word(limb) : null;
    }

    private static string? Wound(LocatedObject fields, ImmutableArray<string> wounds)
    {
        fields.Required("wound", "the name of a wound");
        var name = fields.Text("wound", EntryNames.Longest);
        if (name is null || wounds.IsEmpty || wounds.Contains(name))
            return name;
        fields.Refuse("wound", $"there is no wound {Plain.Line(name)}; there are {string.Join(", ", wounds)}");
        return null;
    }

    private static Act.Infuse? Infuse(LocatedObject fields)
    {
        fields.Required("fluid", LocatedFields.OneOf(Fluids.Select(f => Wire.Word(f.Word))));
        var content = fields.Word("fluid", Fluids.Select(f => (Wire.Word(f.Word), f.Content)));
        var (volume, minutes) = (Needed(fields, "millilitres", 1, 5_000, " mL"), Needed(fields, "minutes", 1, 1_440, " minutes"));
        if (content is null || volume is not { } ml || minutes is not { } over)
            return null;
        if (ml / over / 60 <= MostPerSecond)
            return new(content, ml, over);
        fields.Refuse("minutes", "that is more than 500 mL a minute: give it more time");
        return null;
    }

    /// <summary>mL/s.</summary>
    private const double MostPerSecond = 500.0 / 60;
}

/// <summary>An act as somebody sets about it.</summary>
/// <param name="Minutes">Of a press: how long, after which the hand comes off. Null: until it is let go.</param>
public sealed record AskedAct(Act Act, double? Minutes = null);

/// <summary>Names as entries of a record have them.</summary>
internal static class EntryNames
{
    public const int Longest = 64;
}
