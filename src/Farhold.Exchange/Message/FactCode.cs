using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using NodaTime;

namespace Farhold.Exchange.Message;

/// <summary>Writes facts as the words of a short message; <see cref="FactReading"/> reads them.</summary>
internal static class FactCode
{
    /// <summary>Longer ones are neither written nor read.</summary>
    public const int LongestWord = 60;

    private static readonly ImmutableArray<(string Code, string Limb)> LimbCodes =
    [
        ("LA", "left-arm"),
        ("RA", "right-arm"),
        ("LL", "left-leg"),
        ("RL", "right-leg"),
    ];

    /// <summary>Signs by word, with their numbers.</summary>
    public static readonly ImmutableArray<(string Word, Func<Payload.SignsTaken, double?> Of)> Numbers =
    [
        ("HR", s => s.HeartRate),
        ("BR", s => s.RespiratoryRate),
        ("SYS", s => s.Systolic),
        ("DIA", s => s.Diastolic),
        ("OX", s => s.Spo2),
        ("TEMP", s => s.TemperatureC),
        ("REFILL", s => s.CapillaryRefillS),
    ];

    public static readonly ImmutableArray<(string Word, Func<Payload.SignsTaken, bool?> Of)> Flags =
    [
        ("dizzy", s => s.Dizzy),
        ("pale", s => s.Pale),
        ("cool", s => s.Cool),
        ("clammy", s => s.Clammy),
        ("oxygen", s => s.OnOxygen),
    ];

    /// <summary>The rest of the casualty, by word.</summary>
    public static readonly ImmutableArray<(string Word, Func<Payload.CasualtyLookedOver, bool?> Of)> RestFlags =
    [
        ("bleeding", p => p.BleedingElsewhere),
        ("trunk", p => p.TrunkWound),
        ("breathing", p => p.BreathingHard),
        ("cold", p => p.VeryCold),
        ("thinner", p => p.BloodThinner),
    ];

    /// <summary>The word a fact begins with.</summary>
    public static string Word(MessageFact fact) =>
        fact switch
        {
            MessageFact.Tourniquet => "TQ",
            MessageFact.Doubt => "DOUBT",
            MessageFact.Shock => "SHOCK",
            MessageFact.Wound => "WOUND",
            MessageFact.Bleeds => "BLEED",
            MessageFact.Tried => "TRY",
            MessageFact.Signs => "SIGNS",
            MessageFact.Rest => "REST",
            MessageFact.Position => "POS",
            MessageFact.Help => "HELP",
            MessageFact.Drug => "DRUG",
            MessageFact.Given => "FLUID",
            MessageFact.Urine => "URINE",
            MessageFact.Who => "WHO",
            MessageFact.Allergies => "ALLERGY",
            MessageFact.Ended => "ENDED",
            _ => throw new UnreachableException(),
        };

    /// <summary>The fact in the alphabet of short messages, or null where one of its texts can't be told in it letter for letter.</summary>
    /// <param name="open">Ends of ranges are left open, times that can be spared are left out.</param>
    public static string? Write(MessageFact fact, Instant asOf, bool open = false)
    {
        string At(Happened when) => MessageTime.Write(when, asOf, open);
        var words = fact switch
        {
            MessageFact.Tourniquet t => [Limb(t.Limb), Tight(t, asOf, open), At(t.First)],
            MessageFact.Doubt => [],
            MessageFact.Shock s =>
            [
                s.State switch
                {
                    Truth.Met => "yes",
                    Truth.NotMet => "no",
                    _ => "?",
                },
            ],
            MessageFact.Wound w =>
            [
                Text(w.Name),
                w.Limb is { } limb ? Limb(limb) : Farhold.Text.Wire.Word(w.Region!.Value),
                Farhold.Text.Wire.Word(w.Nature),
                At(w.When),
            ],
            MessageFact.Bleeds b => [Text(b.Place), Farhold.Text.Wire.Word(b.Bleeding), At(b.When)],
            MessageFact.Tried t => [Limb(t.Limb), Text(t.Place), Farhold.Text.Wire.Word(t.Result), At(t.When)],
            MessageFact.Signs s => [.. Signs(s.Taken), At(s.When)],
            MessageFact.Rest r =>
            [
                .. RestFlags.Where(f => f.Of(r.Seen) is not null).Select(f => f.Word + (f.Of(r.Seen) == true ? "+" : "-")),
                At(r.When),
            ],
            MessageFact.Position p => [Degrees(p.Lat), Degrees(p.Lon), At(p.When)],
            MessageFact.Help h => [MessageTime.Write(h.Likely, asOf, ahead: true), .. Window(h, asOf)],
            MessageFact.Drug d => [Text(d.Name), Number(d.Amount), Text(d.Unit), Text(d.Route), At(d.When)],
            MessageFact.Given g => [Farhold.Text.Wire.Word(g.Fluid), Number(g.Millilitres), Text(g.Route), At(g.When)],
            MessageFact.Urine u => [Number(u.Millilitres), At(u.When)],
            MessageFact.Who w =>
            [
                w.Alias is null ? "-" : Text(w.Alias),
                Letter(w.Sex),
                w.AgeYears is { } y ? Tenths(y) + "y" : null,
                w.MassKg is { } m ? Tenths(m) + "kg" : null,
            ],
            MessageFact.Allergies a => a.Names.IsEmpty ? ["NONE"] : [.. a.Names.Select(n => n == "NONE" ? null : Text(n))],
            MessageFact.Ended e => new string?[] { Farhold.Text.Wire.Word(e.How), At(e.When) },
            _ => throw new UnreachableException(),
        };
        var needed = fact is MessageFact.Who ? words.Where((w, i) => i == 0 || w is not null).ToArray() : words;
        return needed.Contains(null) ? null : string.Join(' ', [Word(fact), .. needed]);
    }

    public static string Limb(Limb limb) => LimbCodes[(int)limb].Code;

    public static Limb? Limb(string code)
    {
        for (var i = 0; i < LimbCodes.Length; i++)
            if (string.Equals(LimbCodes[i].Code, code, StringComparison.OrdinalIgnoreCase))
                return (Limb)i;
        return null;
    }

    /// <summary>Spaces become underscores; what holds an underscore, a separator or a letter the alphabet lacks can't be told.</summary>
    private static string? Text(string text) =>
        text.Length is > 0 and <= LongestWord
        && text is not "-"
        && text.Trim() == text
        && text.IndexOfAny(['_', ';', '\n', '\r', '\f']) < 0
        && Gsm7.Septets(text) is not null
            ? text.Replace(' ', '_')
            : null;

    /// <summary>Exact, or null where that is long.</summary>
    private static string? Number(double value) =>
        value.ToString("R", CultureInfo.InvariantCulture) is { Length: <= 9 } exact && !exact.Contains('E') ? exact : null;

    /// <summary>Age and mass are no finer than this.</summary>
    private static string Tenths(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Degrees(double value) => value.ToString("0.#####", CultureInfo.InvariantCulture);

    private static string? Letter(Sex? sex) =>
        sex switch
        {
            Sex.Female => "F",
            Sex.Male => "M",
            _ => null,
        };

    private static string Tight(MessageFact.Tourniquet t, Instant asOf, bool open) =>
        t.Tight switch
        {
            Truth.Met => "ON",
            Truth.NotMet => t.Loosened is { } at && !open ? "OFF/" + MessageTime.Write(at, asOf) : "OFF",
            _ => "ON?",
        };

    private static IEnumerable<string?> Window(MessageFact.Help h, Instant asOf)
    {
        if (h.Care is { } care)
            yield return Farhold.Text.Wire.Word(care);
        if (h.Earliest is { } e)
            yield return "from/" + MessageTime.Write(e, asOf, ahead: true);
        if (h.Latest is { } l)
            yield return "by/" + MessageTime.Write(l, asOf, ahead: true);
    }

    private static IEnumerable<string?> Signs(Payload.SignsTaken s)
    {
        foreach (var (word, of) in Numbers)
            if (of(s) is { } value)
                yield return Number(value) is { } number ? word + number : null;
        if (s.NoPressureCuff == true)
            yield return "nocuff";
        if (s.Mental is { } mental)
            yield return Farhold.Text.Wire.Word(mental);
        if (s.RadialPulse is { } radial)
            yield return "wrist-" + Farhold.Text.Wire.Word(radial);
        foreach (var (word, of) in Flags)
            if (of(s) is { } flag)
                yield return word + (flag ? "+" : "-");
    }
}
