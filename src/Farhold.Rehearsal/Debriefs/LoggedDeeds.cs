using System.Collections.Immutable;

namespace Farhold.Rehearsal.Debriefs;

/// <summary>What hands did beside what was logged of it: one deed with one entry, the nearest in time first.</summary>
internal static class LoggedDeeds
{
    /// <summary>Design: a time may be off by so much, in seconds.</summary>
    public const double TimeOff = 120;

    public static IEnumerable<Remark> Remarks(DebriefScene scene)
    {
        var tourniquets = scene
            .Record.Select(e => e.Payload)
            .OfType<Payload.TourniquetTightened>()
            .GroupBy(t => t.Tourniquet, StringComparer.Ordinal)
            .ToDictionary(t => t.Key, t => t.Last().Limb, StringComparer.Ordinal);
        var own = scene.Own.Select(e => e.Id).ToHashSet();
        var logged = new CareRecord(scene.Record, [])
            .Readings[0]
            .All.Where(e => own.Contains(e.Id))
            .Select(e => (Entry: e, Key: Key(e.What, tourniquets)))
            .Where(l => l.Key is not null)
            .ToLookup(l => l.Key!.Value, l => l.Entry);
        var done = scene
            .Session.Truth.OfType<TruthLine.Began>()
            .Select(b => (Began: b, Key: Key(b.Act)))
            .Where(d => d.Key is not null)
            .ToLookup(d => d.Key!.Value, d => d.Began);
        var asked = scene.Deeds.ToHashSet();
        return logged
            .Select(l => l.Key)
            .Union(done.Select(d => d.Key))
            .SelectMany(key => Remarks(scene, asked, [.. done[key]], [.. logged[key]]))
            .Concat(scene.WoundsElsewhere.Select(w => new Remark(Fault.LoggedNotDone, FoundAt(scene, w), DebriefTexts.WoundNotThere(w))));
    }

    private static IEnumerable<Remark> Remarks(
        DebriefScene scene,
        HashSet<TruthLine.Began> asked,
        List<TruthLine.Began> done,
        List<Dated> logged
    )
    {
        var all = done.ToArray();
        while (done.Count > 0 && logged.Count > 0)
        {
            var (deed, entry, off) = (from d in done from l in logged select (d, l, Off: Off(scene, d, l))).MinBy(p => p.Off);
            done.Remove(deed);
            logged.Remove(entry);
            if (off > TimeOff && asked.Contains(deed))
                yield return new(
                    Fault.LoggedAtWrongTime,
                    scene.Session.SecondsAt(entry.Recorded),
                    DebriefTexts.WrongTime(Plain.Line(EntryText.Of(entry.What)), DebriefWords.Span(off))
                );
        }

        // What others did is not the trainee's to log, and who takes off what hangs loose does nothing to the casualty.
        foreach (var deed in done.Where(asked.Contains))
            yield return new(Fault.DoneNotLogged, deed.At, DebriefTexts.NotLogged(What(deed.Act)));
        foreach (var entry in logged.Where(e => e.What is not Payload.TourniquetRemoved || all.Length == 0))
            yield return new(
                Fault.LoggedNotDone,
                scene.Session.SecondsAt(entry.Recorded),
                DebriefTexts.NotDone(Plain.Line(EntryText.Of(entry.What)))
            );
    }

    /// <summary>In seconds: from the nearer end of the deed to the nearer end of when it is said to have been.</summary>
    private static double Off(DebriefScene scene, TruthLine.Began deed, Dated entry)
    {
        var (earliest, latest) = (scene.Session.SecondsAt(entry.When.Earliest), scene.Session.SecondsAt(entry.When.Latest));
        return deed.At > latest ? scene.Apart(latest, deed.At)
            : earliest > deed.Until ? scene.Apart(deed.Until, earliest)
            : 0;
    }

    private static double FoundAt(DebriefScene scene, string wound) =>
        scene.Own.Where(e => e.Payload is Payload.WoundFound w && w.Wound == wound).Select(scene.At).FirstOrDefault();

    /// <summary>The kind of deed, and where; null for what is neither done nor logged as one.</summary>
    private static (DeedKind Kind, string On)? Key(Act act) =>
        act switch
        {
            Act.Tighten { Limb: { } limb } => (DeedKind.Tight, limb),
            Act.Slacken { Limb: { } limb } => (DeedKind.Loose, limb),
            Act.Pack pack => (DeedKind.Packed, pack.Wound),
            Act.Dress dress => (DeedKind.Dressed, dress.Wound),
            _ => null,
        };

    private static (DeedKind Kind, string On)? Key(Payload payload, Dictionary<string, Limb> tourniquets) =>
        payload switch
        {
            Payload.TourniquetTightened tight => (DeedKind.Tight, Wire.Word(tight.Limb)),
            Payload.TourniquetSlackened slack when tourniquets.TryGetValue(slack.Tourniquet, out var limb) => (
                DeedKind.Loose,
                Wire.Word(limb)
            ),
            Payload.TourniquetRemoved removed when tourniquets.TryGetValue(removed.Tourniquet, out var limb) => (
                DeedKind.Loose,
                Wire.Word(limb)
            ),
            Payload.WoundPacked packed => (DeedKind.Packed, packed.Wound),
            Payload.DressingApplied { Dressing: DressingKind.Pressure } dressed => (DeedKind.Dressed, dressed.Wound),
            _ => null,
        };

    private static string What(Act act) =>
        act switch
        {
            Act.Tighten { Limb: { } limb } => DebriefTexts.DeedTight(Name(limb)),
            Act.Slacken { Limb: { } limb } => DebriefTexts.DeedLoose(Name(limb)),
            Act.Pack pack => DebriefTexts.DeedPacked(pack.Wound),
            Act.Dress dress => DebriefTexts.DeedDressed(dress.Wound),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static string Name(string limb) => Wire.Parse<Limb>(limb) is { } known ? Say.Limb(known) : limb;

    private enum DeedKind
    {
        Tight,
        Loose,
        Packed,
        Dressed,
    }
}
