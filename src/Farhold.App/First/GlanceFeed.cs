using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.First;

/// <summary>Keeps the picture for the next start up to date; once care has ended there is none.</summary>
/// <remarks>It is written when what was logged is on the screen already, at latest as the app goes out of view.</remarks>
public sealed class GlanceFeed(
    CareDesk desk,
    Session session,
    Glance glance,
    Texts texts,
    IPhone phone,
    PhoneClock clock,
    TimeProvider time
) : IDisposable
{
    /// <summary>Design: after the drawing that a tap waits for, well within the second in which the app could be ended.</summary>
    public static readonly Duration Behind = Duration.FromMilliseconds(200);

    /// <summary>Design: often enough that its age says nothing new, seldom enough to cost nothing.</summary>
    private static readonly Duration Pace = Duration.FromMinutes(1);

    private Instant saved;
    private (string Casualty, int Entries, string Verdicts) shown;
    private (string Casualty, Action Write)? next;
    private ITimer? timer;

    public void Start()
    {
        desk.Changed += Feed;
        phone.Hidden += Write;
    }

    public void Dispose()
    {
        desk.Changed -= Feed;
        phone.Hidden -= Write;
        Write();
    }

    private void Feed()
    {
        if (session.Open is not { } open || desk.Picture is not { } picture || desk.Record is not { } record)
            return;
        var now = (open.Id, record.Count, string.Join(',', picture.Limbs.Select(l => l.Verdict)));
        if (now == shown && picture.At - saved < Pace)
            return;
        (shown, saved) = (now, picture.At);
        var ended = !record.Readings[0].Of(Kind.CareEnded).IsEmpty;
        if (next is { Casualty: var other } && other != open.Id)
            Write();
        next = (open.Id, ended ? () => glance.Forget(open.Id) : () => glance.Save(Of(open.Id, open.Alias, open.Practice, picture)));
        timer ??= time.CreateTimer(_ => Write(), null, Behind.ToTimeSpan(), Timeout.InfiniteTimeSpan);
    }

    private void Write()
    {
        timer?.Dispose();
        var writing = next;
        (timer, next) = (null, null);
        writing?.Write();
    }

    private GlancePicture Of(string casualty, string alias, bool practice, Judgement picture) =>
        new(
            casualty,
            alias,
            practice,
            picture.At,
            [
                .. picture.Limbs.Select(l => new GlanceLimb(
                    Wire.Word(l.Limb),
                    texts.Word(l.Limb),
                    Wire.Word(l.Verdict),
                    Labels.Sentence(VerdictWords.Of(l.Verdict)),
                    l.Clock.FirstTightened,
                    l.Clock.FirstTightened.Earliest + picture.Protocol.Clock.Limit
                )),
                .. picture.Observed.Select(w => new GlanceLimb(
                    Wire.Word(w.Limb),
                    texts.Word(w.Limb),
                    "watch",
                    Labels.Sentence(VerdictWords.Of(w, clock.Zone)),
                    w.Clock.FirstTightened,
                    null
                )),
            ],
            [VerdictWords.Caution, .. Cautions.Of(picture)]
        );
}
