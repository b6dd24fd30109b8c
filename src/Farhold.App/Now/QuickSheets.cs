using System.Collections.Immutable;
using System.Diagnostics;

namespace Farhold.App.Now;

/// <summary>The choices behind each quick action, from the record as it stands.</summary>
public sealed class QuickSheets(CareRecord record, Judgement picture, Texts texts)
{
    /// <summary>Those of the first minutes, in the order of their buttons, which never changes.</summary>
    public static ImmutableArray<Quick> FirstMinutes { get; } =
    [
        Quick.Tightened,
        Quick.Wound,
        Quick.Bleeding,
        Quick.Signs,
        Quick.LookedOver,
        Quick.Slackened,
        Quick.Attempt,
        Quick.Contact,
        Quick.Help,
        Quick.Hands,
        Quick.Watch,
        Quick.Moved,
        Quick.Supplies,
        Quick.Note,
    ];

    private readonly State state = record.Readings[0];

    public HelpRange HelpRange { get; init; } = new(null, null);

    /// <summary>The sheet that answers to what is asked.</summary>
    public QuickSheet For(Asked asked) =>
        asked switch
        {
            Asked.Quickly(var quick) => Of(quick),
            Asked.OnLimb(var limb) => new(null, texts.Sided(limb), Places.On(limb), "enter"),
            Asked.InRegion(var region, var face) => new(null, texts.RegionWord(region), Places.In(region, face), "enter"),
            _ => throw new UnreachableException(),
        };

    private PlaceChoices Places => new(this, record, picture, texts);

    public QuickSheet Of(Quick quick) =>
        quick switch
        {
            Quick.Tightened => new(
                quick,
                texts.QuickTightened,
                new TightenChoices(record, picture, texts).Groups,
                Form(Kind.TourniquetTightened)
            ),
            Quick.Wound => new(quick, texts.QuickWound, new WoundChoices(record, texts).Groups, Form(Kind.WoundFound)),
            Quick.Bleeding => PerWound(
                quick,
                texts.QuickBleeding,
                Kind.BleedingChecked,
                Enum.GetValues<Bleeding>()
                    .Select(b => (texts.BleedingWord(b), (Func<string, Payload>)(w => new Payload.BleedingChecked(w, b))))
            ),
            Quick.Signs => new(quick, texts.QuickSigns, new SignChoices(texts).Groups, "signs/take"),
            Quick.Slackened => PerTourniquet(
                quick,
                texts.QuickSlackened,
                Kind.TourniquetSlackened,
                t => new Payload.TourniquetSlackened(t)
            ),
            Quick.Removed => PerTourniquet(quick, texts.QuickRemoved, Kind.TourniquetRemoved, t => new Payload.TourniquetRemoved(t)),
            Quick.Attempt => Attempt(),
            Quick.Help => new(quick, texts.QuickHelp, new HelpChoices(HelpRange, texts).Care, Form(Kind.HelpExpected)),
            Quick.Hands => new(quick, texts.QuickHands, new HelpChoices(HelpRange, texts).Hands, Form(Kind.HelpExpected)),
            Quick.Watch => Watch(),
            Quick.LookedOver => new(quick, texts.QuickLookedOver, new RestChoices(state, texts).Groups, Form(Kind.CasualtyLookedOver)),
            Quick.Contact => new(quick, texts.QuickContact, new ContactChoices(texts).Groups, Form(Kind.ContactTried)),
            Quick.Moved => new(quick, texts.QuickMoved, new MoveChoices(texts).Groups, Form(Kind.CasualtyMoved)),
            Quick.Improved => new(quick, texts.QuickImproved, new ImprovedChoices(state, picture, texts).Groups, Form(Kind.TaskDone)),
            Quick.Supplies => new(quick, texts.QuickSupplies, [.. Supplies.Asked.Select(Count)], Form(Kind.SuppliesStated)),
            Quick.Note => new(
                quick,
                texts.QuickNote,
                [new("", [.. texts.ReadyNotes.Select(n => Fixed(n.Shown, new Payload.NoteWritten(n.Recorded)))])],
                Form(Kind.Note)
            ),
            Quick.Packed => PerWound(
                quick,
                texts.QuickPacked,
                Kind.WoundPacked,
                Enum.GetValues<PackingMaterial>().Select(m => (texts.Word(m), (Func<string, Payload>)(w => new Payload.WoundPacked(w, m))))
            ),
            Quick.Held => PerWound(
                quick,
                texts.QuickHeld,
                Kind.PressureHeld,
                HeldMinutes.Select(m => (texts.Minutes(m), (Func<string, Payload>)(w => new Payload.PressureHeld(w, m))))
            ),
            Quick.Dressed => PerWound(
                quick,
                texts.QuickDressed,
                Kind.DressingApplied,
                Enum.GetValues<DressingKind>().Select(d => (texts.Word(d), (Func<string, Payload>)(w => new Payload.DressingApplied(w, d))))
            ),
            Quick.Ended => Ended(),
            Quick.Beyond => Beyond(),
            _ => throw new UnreachableException(),
        };

    /// <summary>The minima of the shipped protocol, and one between.</summary>
    private static ImmutableArray<int> HeldMinutes => [3, 5, 10, 15];

    private static string Form(Kind kind) => "enter/" + Kinds.Wire(kind);

    private static QuickOption Fixed(string text, Payload payload) => new(text, _ => payload);

    private QuickSheet PerWound(Quick quick, string title, Kind kind, IEnumerable<(string Text, Func<string, Payload> Of)> says)
    {
        var wounds = NewNames.Wounds(state);
        return new(
            quick,
            title,
            [
                .. wounds.Select(w => new QuickGroup(
                    texts.Wound(w, state),
                    [.. says.Select(s => Fixed(s.Text, s.Of(w)))],
                    Hint: kind == Kind.BleedingChecked && w == wounds[0] ? texts.OozingMeans : null
                )),
            ],
            Form(kind),
            wounds.IsEmpty ? texts.NoWoundYet : null,
            Quick.Wound
        );
    }

    private QuickSheet PerTourniquet(Quick quick, string title, Kind kind, Func<string, Payload> of)
    {
        var limbs = picture
            .Limbs.Select(l => l.Clock)
            .Concat(quick == Quick.Removed ? picture.Observed.Select(w => w.Clock) : [])
            .ToArray();
        return new(
            quick,
            title,
            [.. limbs.Select(c => new QuickGroup(texts.Word(c.Limb), [.. c.Tourniquets.Select(t => Fixed(t, of(t)))]))],
            Form(kind),
            limbs.Length == 0 ? texts.NoTourniquetTight : null,
            Quick.Tightened
        );
    }

    private QuickSheet Attempt()
    {
        var groups = picture
            .Limbs.Select(l => new QuickGroup(
                texts.Word(l.Limb),
                [
                    .. l
                        .Clock.Tourniquets.Where(t => NewNames.WoundOf(t, state, picture.At) is not null)
                        .Select(t =>
                            Fixed(
                                l.Verdict == Verdict.Attempt ? texts.AttemptOf(t) : texts.AttemptAgainst(t),
                                new Payload.AttemptStarted(NewNames.WoundOf(t, state, picture.At)!, t)
                            )
                        ),
                ],
                l.Verdict == Verdict.Attempt
                    ? l.Act.Cautions.IsEmpty
                        ? null
                        : string.Join(" ", l.Act.Cautions)
                    : Labels.Sentence(VerdictWords.Of(l.Verdict))
            ))
            .Where(g => g.Options.Length > 0)
            .ToImmutableArray();
        var noLimb = picture.Limbs.IsEmpty;
        return new(
            Quick.Attempt,
            texts.QuickAttempt,
            groups,
            Form(Kind.AttemptStarted),
            groups.IsEmpty ? (noLimb ? texts.NoTourniquetTight : texts.NoWoundYet) : null,
            noLimb ? Quick.Tightened : Quick.Wound
        );
    }

    private QuickSheet Ended()
    {
        var under = picture
            .Limbs.Select(l => (l.Limb, l.Attempt))
            .Concat(picture.Observed.Select(w => (w.Limb, w.Attempt)))
            .Where(a => a.Attempt is not null)
            .ToArray();
        return new(
            Quick.Ended,
            texts.QuickEnded,
            [
                .. under.Select(a => new QuickGroup(
                    texts.Word(a.Limb),
                    [
                        .. Enum.GetValues<AttemptOutcome>()
                            .Select(o =>
                                Fixed(
                                    texts.OutcomeWord(o),
                                    new Payload.AttemptEnded(a.Attempt!.Attempt.Wound, a.Attempt.Attempt.Tourniquet, o)
                                )
                            ),
                    ]
                )),
            ],
            Form(Kind.AttemptEnded),
            under.Length == 0 ? texts.NoAttempt : null,
            Quick.Attempt
        );
    }

    private QuickSheet Beyond() =>
        new(
            Quick.Beyond,
            texts.QuickBeyond,
            [
                .. picture
                    .Limbs.Select(l => l.Limb)
                    .Concat(picture.Observed.Select(w => w.Limb))
                    .Select(limb => new QuickGroup(
                        texts.Word(limb),
                        [
                            .. Enum.GetValues<DistalPulse>()
                                .Select(p =>
                                    Fixed(
                                        texts.BeyondWord(p),
                                        new Payload.SignsTaken
                                        {
                                            DistalPulse = ImmutableSortedDictionary<Limb, DistalPulse>.Empty.Add(limb, p),
                                        }
                                    )
                                ),
                        ]
                    )),
            ],
            Form(Kind.SignsTaken)
        );

    /// <summary>The casualty alone counts only where nobody else is there and nobody can be reached: that is asked apart.</summary>
    private QuickSheet Watch() =>
        new(
            Quick.Watch,
            texts.QuickWatch,
            [
                new(
                    "",
                    [
                        Fixed(texts.WatchAble, new Payload.WatchStated(true, Watcher.Other)),
                        .. IsChild ? [] : (QuickOption[])[Fixed(texts.WatchCasualty, new Payload.WatchStated(true, Watcher.Casualty))],
                        Fixed(texts.WatchUnable, new Payload.WatchStated(false)),
                    ],
                    Hint: texts.WatchHint
                ),
            ],
            Form(Kind.WatchStated)
        );

    /// <summary>A child keeps no watch over its own wound (design: from 16 years).</summary>
    private bool IsChild => CasualtyProfile.At(state, picture.At)?.AgeYears < 16;

    private QuickGroup Count(string item) =>
        new(
            Labels.Plain(item),
            [.. Enumerable.Range(0, 4).Select(n => Fixed(n == 0 ? texts.CountNone : texts.Number(n), new Payload.SuppliesStated(item, n)))]
        );
}
