using NodaTime;

namespace Farhold.App.Start;

/// <summary>A casualty as the list shows it: the answer that is gravest, its clock, and how old the last look is.</summary>
/// <param name="Rank">The lower, the sooner somebody has to be there.</param>
/// <param name="Since">First tightened, of the limb that may have gone longest; null where no limb is tied or watched.</param>
/// <param name="Looked">When the casualty or a wound was last looked at; null: never.</param>
public sealed record ListedCasualty(CasualtyHead Head, int Rank, Glyph? Shape, string Says, Happened? Since, Instant? Looked, bool Ended)
{
    /// <summary>Before it was judged: by name, where it will not jump over one that was.</summary>
    public static ListedCasualty Plain(CasualtyHead head) => new(head, Unjudged, null, "", null, null, false);

    private const int Unjudged = 8;

    public static ListedCasualty For(CasualtyHead head, CareRecord record, Judgement picture, Texts texts)
    {
        var state = record.Readings[0];
        var ended = !state.Of(Kind.CareEnded).IsEmpty;
        var worst = picture.LongestTied();
        var watched = picture.LastLoosened();
        Instant? looked = null;
        foreach (var kind in (ReadOnlySpan<Kind>)[Kind.SignsTaken, Kind.BleedingChecked, Kind.CasualtyLookedOver])
            if (state.Of(kind) is [.., var last] && !(last.When.Latest <= looked))
                looked = last.When.Latest;
        var (rank, shape, says) =
            ended ? (9, Glyph.Go, texts.ListEnded)
            : picture.Due.FirstOrDefault(d => d.AtOnce) is { } atOnce
                ? (0, Glyph.Alarm, $"{texts.AtOnceTitle}{(atOnce.Limb is { } limb ? $": {texts.Sided(limb)}" : "")}")
            : IsShocked(record, picture) ? (1, Glyph.Alarm, texts.ListShock)
            : worst is not null
                ? (2, VerdictLook.For(worst.Verdict).Shape, $"{texts.Sided(worst.Limb)}: {VerdictWords.Head(worst.Verdict)}")
            : watched is not null ? (3, VerdictLook.For(watched).Shape, $"{texts.Sided(watched.Limb)}: {texts.ListWatched}")
            : (4, (Glyph?)null, texts.ListNoTourniquet);
        return new(head, rank, shape, says, worst?.Clock.FirstTightened ?? watched?.Clock.FirstTightened, looked, ended);
    }

    /// <summary>As Now says it: until it is looked at again, however old the signs are.</summary>
    private static bool IsShocked(CareRecord record, Judgement picture) =>
        picture.Shock.State == Truth.Met || ShockNotice.Standing(record, picture) is not null;
}
