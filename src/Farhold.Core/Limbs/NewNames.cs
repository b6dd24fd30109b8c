using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.Limbs;

/// <summary>Names for wounds and tourniquets that are new to a record, and what goes with what unless someone says otherwise.</summary>
public static class NewNames
{
    /// <summary>Design: letters of its id that a second device adds; two devices share them once in 29,791 times.</summary>
    private const int MarkLength = 3;

    /// <summary>
    /// <c>t3</c> where t2 is the highest there ever was, withdrawn entries included; <c>t3-n95</c> on a device that did not
    /// open the record, since another one may be giving out t3 at the same time.
    /// </summary>
    public static string Tourniquet(CareRecord record) => Next('t', record, TourniquetOf);

    /// <summary><c>w3</c> likewise.</summary>
    public static string Wound(CareRecord record) => Next('w', record, WoundOf);

    /// <summary>The wound that a new tourniquet on the limb is most likely for: the last one found there that can bleed.</summary>
    public static string? WoundFor(Limb limb, State state) =>
        state
            .Of(Kind.WoundFound)
            .Select(w => w.As<Payload.WoundFound>())
            .LastOrDefault(w =>
                w.Limb == limb
                && w.Nature is WoundNature.Bleeding or WoundNature.Amputation or WoundNature.PartialAmputation or WoundNature.Other
            )
            ?.Wound;

    /// <summary>Wounds found, in order; names used elsewhere without having been found come last.</summary>
    public static ImmutableArray<string> Wounds(State state) =>
        [
            .. state
                .Of(Kind.WoundFound)
                .Select(w => w.As<Payload.WoundFound>().Wound)
                .Concat(state.All.Select(d => WoundOf(d.What)).OfType<string>())
                .Distinct(),
        ];

    /// <summary>Tourniquets in the order in which they were first tightened.</summary>
    public static ImmutableArray<string> Tourniquets(State state) =>
        [.. state.Of(Kind.TourniquetTightened).Select(t => t.As<Payload.TourniquetTightened>().Tourniquet).Distinct()];

    /// <summary>The wound a tourniquet is about: as said when it was tightened, else as it stands on the limb.</summary>
    public static string? WoundOf(string tourniquet, State state, Instant now)
    {
        var last = state
            .Of(Kind.TourniquetTightened)
            .LastOrDefault(t => t.As<Payload.TourniquetTightened>().Tourniquet == tourniquet)
            ?.As<Payload.TourniquetTightened>();
        if (last is null or { Wound: not null })
            return last?.Wound;
        var treated = LimbWounds.Treated(last.Limb, state, now);
        return treated.IsEmpty ? null : treated[^1];
    }

    private static string Next(char letter, CareRecord record, Func<Payload, string?> nameOf)
    {
        var highest = 0;
        EntryId? opened = null;
        foreach (var entry in record.Entries)
        {
            highest = Math.Max(highest, NumberOf(letter, nameOf(entry.Payload)));
            if (entry.Payload is Payload.CasualtyOpened)
                opened ??= entry.Id;
        }

        var mark =
            record.Writer is { Length: > 0 } writer && opened is { } o && o.Device != writer
                ? "-" + writer[..Math.Min(MarkLength, writer.Length)]
                : "";
        return string.Create(CultureInfo.InvariantCulture, $"{letter}{highest + 1}{mark}");
    }

    /// <summary>3 of <c>t3</c> and of <c>t3-n95</c>; 0 of a name that someone made up.</summary>
    private static int NumberOf(char letter, string? name)
    {
        if (name is not { Length: > 1 } || name[0] != letter)
            return 0;
        var end = name.IndexOf('-', StringComparison.Ordinal);
        return
            int.TryParse(name.AsSpan(1, (end < 0 ? name.Length : end) - 1), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number < int.MaxValue
            ? number
            : 0;
    }

    private static string? TourniquetOf(Payload payload) =>
        payload switch
        {
            Payload.TourniquetTightened p => p.Tourniquet,
            Payload.TourniquetSlackened p => p.Tourniquet,
            Payload.TourniquetRemoved p => p.Tourniquet,
            Payload.AttemptStarted p => p.Tourniquet,
            Payload.AttemptEnded p => p.Tourniquet,
            _ => null,
        };

    private static string? WoundOf(Payload payload) =>
        payload switch
        {
            Payload.WoundFound p => p.Wound,
            Payload.TourniquetTightened p => p.Wound,
            Payload.WoundPacked p => p.Wound,
            Payload.PressureHeld p => p.Wound,
            Payload.DressingApplied p => p.Wound,
            Payload.BleedingChecked p => p.Wound,
            Payload.AttemptStarted p => p.Wound,
            Payload.AttemptEnded p => p.Wound,
            _ => null,
        };
}
