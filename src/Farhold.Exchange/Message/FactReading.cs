using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.Exchange.Message;

/// <summary>Reads one statement of a short message. Letters' case does not matter where there is a list of words.</summary>
internal static class FactReading
{
    /// <returns>The fact, or null with a sentence that says what was expected.</returns>
    public static MessageFact? Read(string statement, Instant asOf, out string objection)
    {
        var words = statement.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        objection = $"a word is longer than {FactCode.LongestWord} characters";
        if (words.Any(w => w.Length > FactCode.LongestWord))
            return null;
        objection = "";
        var (fact, expected) = words[0].ToUpperInvariant() switch
        {
            "TQ" => ((MessageFact?)Tourniquet(words, asOf), "TQ, a limb (LA RA LL RL), ON, ON? or OFF, and the time of first tightening"),
            "DOUBT" => (words.Length == 1 ? new MessageFact.Doubt() : null, "DOUBT alone"),
            "SHOCK" => (Shock(words), "SHOCK and yes, no or ?"),
            "WOUND" => (Wound(words, asOf), "WOUND, its name, a limb or region, its nature and a time"),
            "BLEED" => (
                words is [_, var w, var b, var t] && Word<Bleeding>(b) is { } bleeding && At(t, asOf) is { } at
                    ? new MessageFact.Bleeds(Text(w), bleeding, at)
                    : null,
                "BLEED, a wound's name, none, oozing or active, and a time"
            ),
            "TRY" => (
                words is [_, var l, var w, var r, var t]
                && FactCode.Limb(l) is { } limb
                && Word<AttemptResult>(r) is { } result
                && At(t, asOf) is { } at
                    ? new MessageFact.Tried(limb, Text(w), result, at)
                    : null,
                "TRY, a limb, a wound's name, under-way, held, bled or abandoned, and a time"
            ),
            "SIGNS" => (Signs(words, asOf), "SIGNS, the signs, and a time (DIA not above SYS)"),
            "REST" => (Rest(words, asOf), "REST, what was looked at with + or -, and a time"),
            "POS" => (
                words is [_, var n, var e, var t]
                && Degrees(n, FieldRange.Lat) is { } lat
                && Degrees(e, FieldRange.Lon) is { } lon
                && At(t, asOf) is { } at
                    ? new MessageFact.Position(lat, lon, at)
                    : null,
                "POS, degrees north and degrees east, and a time"
            ),
            "HELP" => (
                Help(words, asOf),
                "HELP, a time, and perhaps hands, clinic or surgery, from/ with an earlier and by/ with a later time"
            ),
            "DRUG" => (
                words is [_, var n, var a, var u, var r, var t] && Number(a, FieldRange.Amount) is { } amount && At(t, asOf) is { } at
                    ? new MessageFact.Drug(Text(n), amount, Text(u), Text(r), at)
                    : null,
                "DRUG, its name, amount, unit, route and a time"
            ),
            "FLUID" => (
                words is [_, var f, var m, var r, var t]
                && Word<Fluid>(f) is { } fluid
                && Number(m, FieldRange.Millilitres) is { } ml
                && At(t, asOf) is { } at
                    ? new MessageFact.Given(fluid, ml, Text(r), at)
                    : null,
                "FLUID, which one, millilitres, route and a time"
            ),
            "URINE" => (
                words is [_, var m, var t] && Number(m, FieldRange.Millilitres) is { } ml && At(t, asOf) is { } at
                    ? new MessageFact.Urine(ml, at)
                    : null,
                "URINE, millilitres and a time"
            ),
            "WHO" => (Who(words), "WHO, a name or a dash, F or M, years with y, kilograms with kg"),
            "ALLERGY" => (
                words is [_, "NONE"] ? new MessageFact.Allergies([])
                : words.Length > 1 ? new MessageFact.Allergies([.. words[1..].Select(Text)])
                : null,
                "ALLERGY and NONE, or names"
            ),
            "ENDED" => (
                words is [_, var h, var t] && Word<CareEnd>(h) is { } how && At(t, asOf) is { } at ? new MessageFact.Ended(how, at) : null,
                "ENDED, handed-over, died or stopped, and a time"
            ),
            _ => (
                (MessageFact?)null,
                "one of TQ, DOUBT, SHOCK, WOUND, BLEED, TRY, SIGNS, REST, POS, HELP, DRUG, FLUID, URINE, WHO, ALLERGY, ENDED"
            ),
        };
        if (fact is null)
            objection = $"expected {expected}";
        return fact;
    }

    private static MessageFact.Tourniquet? Tourniquet(string[] words, Instant asOf)
    {
        if (words is not [_, var code, var state, var time] || FactCode.Limb(code) is not { } limb || At(time, asOf) is not { } first)
            return null;
        var slash = state.IndexOf('/', StringComparison.Ordinal);
        var loosened = slash < 0 ? null : At(state[(slash + 1)..], asOf);
        Truth? tight = (slash < 0 ? state : state[..slash]).ToUpperInvariant() switch
        {
            "ON" when slash < 0 => Truth.Met,
            "ON?" when slash < 0 => Truth.Unknown,
            "OFF" when slash < 0 || loosened is not null => Truth.NotMet,
            _ => null,
        };
        return tight is { } known ? new MessageFact.Tourniquet(limb, known, first, loosened) : null;
    }

    private static MessageFact.Shock? Shock(string[] words) =>
        words is not [_, var word]
            ? null
            : word.ToUpperInvariant() switch
            {
                "YES" => new MessageFact.Shock(Truth.Met),
                "NO" => new MessageFact.Shock(Truth.NotMet),
                "?" => new MessageFact.Shock(Truth.Unknown),
                _ => null,
            };

    private static MessageFact.Wound? Wound(string[] words, Instant asOf)
    {
        if (
            words is not [_, var name, var place, var nature, var time]
            || Word<WoundNature>(nature) is not { } kind
            || At(time, asOf) is not { } at
        )
            return null;
        var limb = FactCode.Limb(place);
        var region = limb is null ? Word<BodyRegion>(place) : null;
        return limb is null && region is null ? null : new MessageFact.Wound(Text(name), limb, region, kind, at);
    }

    private static MessageFact.Signs? Signs(string[] words, Instant asOf)
    {
        if (words.Length < 3 || At(words[^1], asOf) is not { } at)
            return null;
        var signs = new Payload.SignsTaken();
        foreach (var word in words[1..^1])
        {
            if (Sign(signs, word) is not { } more)
                return null;
            signs = more;
        }

        return signs.Diastolic > signs.Systolic ? null : new MessageFact.Signs(signs, at);
    }

    private static Payload.SignsTaken? Sign(Payload.SignsTaken s, string word)
    {
        var digits = word.AsSpan().IndexOfAnyInRange('0', '9');
        if (digits > 0)
        {
            var number = word[digits..];
            return word[..digits].ToUpperInvariant() switch
            {
                "HR" when Number(number, FieldRange.HeartRate) is { } n => s with { HeartRate = n },
                "BR" when Number(number, FieldRange.RespiratoryRate) is { } n => s with { RespiratoryRate = n },
                "SYS" when Number(number, FieldRange.Systolic) is { } n => s with { Systolic = n },
                "DIA" when Number(number, FieldRange.Diastolic) is { } n => s with { Diastolic = n },
                "OX" when Number(number, FieldRange.Spo2) is { } n => s with { Spo2 = n },
                "TEMP" when Number(number, FieldRange.TemperatureC) is { } n => s with { TemperatureC = n },
                "REFILL" when Number(number, FieldRange.CapillaryRefillS) is { } n => s with { CapillaryRefillS = n },
                _ => null,
            };
        }

        bool? flag = word[^1] switch
        {
            '+' => true,
            '-' => false,
            _ => null,
        };
        return word.ToUpperInvariant().TrimEnd('+', '-') switch
        {
            "DIZZY" when flag is not null => s with { Dizzy = flag },
            "PALE" when flag is not null => s with { Pale = flag },
            "COOL" when flag is not null => s with { Cool = flag },
            "CLAMMY" when flag is not null => s with { Clammy = flag },
            "OXYGEN" when flag is not null => s with { OnOxygen = flag },
            "NOCUFF" when flag is null => s with { NoPressureCuff = true },
            ['W', 'R', 'I', 'S', 'T', '-', .. var pulse] when Word<RadialPulse>(pulse) is { } radial => s with { RadialPulse = radial },
            var state when flag is null && Word<Mental>(state) is { } mental => s with { Mental = mental },
            _ => null,
        };
    }

    private static MessageFact.Help? Help(string[] words, Instant asOf)
    {
        if (words.Length is < 2 or > 5 || MessageTime.Read(words[1], asOf, ahead: true) is not { } likely)
            return null;
        Instant? earliest = null,
            latest = null;
        HelpCare? care = null;
        foreach (var word in words[2..])
        {
            if (care is null && Word<HelpCare>(word) is { } kind)
            {
                care = kind;
                continue;
            }

            var slash = word.IndexOf('/', StringComparison.Ordinal);
            if (slash < 0 || MessageTime.Read(word.AsSpan(slash + 1), asOf, ahead: true) is not { } at)
                return null;
            switch (word[..slash].ToUpperInvariant())
            {
                case "FROM":
                    earliest = at;
                    break;
                case "BY":
                    latest = at;
                    break;
                default:
                    return null;
            }
        }

        return earliest > likely || latest < likely ? null : new MessageFact.Help(likely, earliest, latest, care);
    }

    private static MessageFact.Rest? Rest(string[] words, Instant asOf)
    {
        if (words.Length < 3 || At(words[^1], asOf) is not { } at)
            return null;
        var seen = new Payload.CasualtyLookedOver();
        foreach (var word in words[1..^1])
        {
            bool? flag = word[^1] switch
            {
                '+' => true,
                '-' => false,
                _ => null,
            };
            var more = flag is null
                ? null
                : word[..^1].ToUpperInvariant() switch
                {
                    "BLEEDING" => seen with { BleedingElsewhere = flag },
                    "TRUNK" => seen with { TrunkWound = flag },
                    "BREATHING" => seen with { BreathingHard = flag },
                    "COLD" => seen with { VeryCold = flag },
                    "THINNER" => seen with { BloodThinner = flag },
                    _ => null,
                };
            if (more is null)
                return null;
            seen = more;
        }

        return new(seen, at);
    }

    private static MessageFact.Who? Who(string[] words)
    {
        if (words.Length is < 2 or > 5)
            return null;
        var who = new MessageFact.Who(words[1] == "-" ? null : Text(words[1]), null, null, null);
        foreach (var word in words[2..])
        {
            MessageFact.Who? more = word.ToUpperInvariant() switch
            {
                "F" => who with { Sex = Sex.Female },
                "M" => who with { Sex = Sex.Male },
                [.. var kg, 'K', 'G'] when Number(kg, FieldRange.MassKg) is { } mass => who with { MassKg = mass },
                [.. var years, 'Y'] when Number(years, FieldRange.AgeYears) is { } age => who with { AgeYears = age },
                _ => null,
            };
            if (more is null)
                return null;
            who = more;
        }

        return who;
    }

    private static Happened? At(string time, Instant asOf) => MessageTime.ReadRange(time, asOf);

    private static T? Word<T>(string word)
        where T : struct, Enum => Farhold.Text.Wire.Parse<T>(word.ToLowerInvariant());

    private static string Text(string word) => word.Replace('_', ' ');

    private static double? Degrees(string text, FieldRange range) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
        && range.Holds(value)
            ? value
            : null;

    private static double? Number(string text, FieldRange range) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && range.Holds(value)
            ? value
            : null;
}
