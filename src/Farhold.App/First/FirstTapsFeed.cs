using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.First;

/// <summary>Keeps ready what the next start can log before the app is up: facts only, nothing that hangs on the verdict of now.</summary>
public sealed class FirstTapsFeed(
    CareDesk desk,
    Session session,
    Preferences preferences,
    Ticker ticker,
    IPhone phone,
    Texts texts,
    PhoneClock clock
) : IDisposable
{
    private const string KeptFor = "first-taps-for";

    private static readonly ImmutableArray<Quick> Facts =
    [
        .. QuickSheets.FirstMinutes.Where(q =>
            q is Quick.Tightened or Quick.Wound or Quick.Bleeding or Quick.Signs or Quick.Slackened or Quick.Note
        ),
    ];

    private (CareRecord? Record, int Entries) seen;

    public void Start() => ticker.Ticked += Feed;

    public void Dispose() => ticker.Ticked -= Feed;

    // A second after the entry, when nobody waits for the screen.
    private void Feed()
    {
        var now = (desk.Record, desk.Record?.Count ?? 0);
        if (now == seen)
            return;
        seen = now;
        if (
            session.Open is not { } open
            || desk.Picture is not { } picture
            || desk.Record is not { } record
            || !record.Readings[0].Of(Kind.CareEnded).IsEmpty
        )
        {
            FirstTaps.Forget(phone);
            phone.Set(KeptFor, "");
            return;
        }

        // The choices hang on names and on little else; they are made anew only when those change.
        var key = Key(open.Id, open.Practice, record, picture);
        if (phone.Get(KeptFor) == key)
            return;
        var kept = Of(open.Id, open.Practice, record, picture).Save(phone, texts);
        phone.Set(KeptFor, kept ? key : "");
        if (!kept)
            FirstTaps.Forget(phone);
    }

    private string Key(string casualty, bool practice, CareRecord record, Judgement picture) =>
        string.Join(
            '|',
            typeof(FirstTaps).Module.ModuleVersionId,
            texts.Language,
            casualty,
            practice,
            preferences.Carer,
            NewNames.Tourniquet(record),
            NewNames.Wound(record),
            string.Join(',', NewNames.Wounds(record.Readings[0])),
            string.Join(
                ',',
                picture
                    .Limbs.Select(l => l.Clock)
                    .Concat(picture.Observed.Select(w => w.Clock))
                    .Select(c => $"{c.Limb}:{string.Join('+', c.Tourniquets)}")
            ),
            string.Join(',', picture.Limbs.Select(l => l.Limb))
        );

    private FirstTaps Of(string casualty, bool practice, CareRecord record, Judgement picture)
    {
        var sheets = new QuickSheets(record, picture, texts);
        var (tourniquet, wound) = (NewNames.Tourniquet(record), NewNames.Wound(record));
        return new(
            casualty,
            Entry(new Payload.EntryWithdrawn(new(session.Device, 1), texts.Recorded.UndoneReason), practice, picture.At),
            [
                .. Facts
                    .Select(sheets.Of)
                    .Where(s => s.Missing is null && s.Groups.Any(g => g.Options.Length > 0))
                    .Select(sheet => new FirstQuick(
                        sheet.Title,
                        [
                            .. sheet.Groups.Select(g => new FirstGroup(
                                g.Label,
                                [.. g.Options.Select(o => Option(o, practice, picture.At, tourniquet, wound))]
                            )),
                        ]
                    )),
            ]
        );
    }

    private FirstOption Option(QuickOption option, bool practice, Instant at, string tourniquet, string wound)
    {
        var payload = option.Says(at);
        return new(
            option.Text,
            EntryText.Of(payload, clock.Zone),
            Entry(payload, practice, at),
            payload switch
            {
                Payload.TourniquetTightened tightened when tightened.Tourniquet == tourniquet => tourniquet,
                Payload.WoundFound => wound,
                _ => null,
            },
            payload is Payload.BleedingChecked { Bleeding: Bleeding.Active } ? texts.FirstTapBleeding : null
        );
    }

    private string Entry(Payload payload, bool practice, Instant at) =>
        EntryWriting.Body(Happened.At(at), at, preferences.Carer, practice, payload);
}
