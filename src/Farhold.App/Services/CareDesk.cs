using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>The open casualty's record, judged now. Every screen shows this one picture.</summary>
public sealed class CareDesk : IDisposable
{
    /// <summary>How often the picture is made anew while nothing is logged (a design choice); clocks count in between.</summary>
    private static readonly Duration Pace = Duration.FromSeconds(5);

    /// <summary>The same to save the battery, while no attempt is under way.</summary>
    private static readonly Duration SavingPace = Duration.FromSeconds(30);

    private readonly Session session;
    private readonly Preferences preferences;
    private readonly Ticker ticker;
    private readonly ShiftParty party;
    private readonly RulesInForce rules;
    private readonly Judging judging;
    private readonly KeptElsewhere elsewhere;
    private string casualty = "";
    private ImmutableArray<StoredLine> taken = [];

    public CareDesk(
        Session session,
        Preferences preferences,
        Ticker ticker,
        ShiftParty party,
        RulesInForce rules,
        Judging judging,
        KeptElsewhere elsewhere
    )
    {
        (this.session, this.preferences, this.ticker) = (session, preferences, ticker);
        (this.party, this.rules, this.judging, this.elsewhere) = (party, rules, judging, elsewhere);
        session.Changed += TakeIn;
        ticker.Ticked += Tick;
        party.Changed += Show;
        elsewhere.Changed += LookElsewhere;
    }

    /// <summary>The picture has been made anew.</summary>
    public event Action? Changed;

    /// <summary>The rules in force now.</summary>
    public Rulebook Rules => rules.Of(session.Open?.Id ?? "", Now);

    public Protocol Protocol => Rules.Protocol;

    /// <summary>Null while no casualty is open.</summary>
    public CareRecord? Record { get; private set; }

    /// <summary>Null while no casualty is open.</summary>
    public Judgement? Picture { get; private set; }

    /// <summary>The phone's clock, but never before its own newest entry: a clock set back must not shorten any limb's time.</summary>
    public Instant Now => judging.NowOf(Record);

    /// <summary>Day and night here, and when the watch changes.</summary>
    public Rhythm Rhythm => party.Rhythm(Now);

    /// <summary>The rules have changed.</summary>
    public void JudgeAgain() => Show();

    /// <summary>What in an entry looks like a slip, and is asked back before it is logged.</summary>
    public ImmutableArray<string> Slips(Payload payload) =>
        [
            .. Plausible.Slips(payload, payload as Payload.CasualtyOpened ?? Person, Rules.Formulary),
            .. payload is Payload.CasualtyMoved { Phase: MovePhase.AboutTo } move && Record is { } record && Picture is { } picture
                ? MoveCheck.Against(record.Readings[0], picture, move)
                : [],
        ];

    /// <summary>Fields of an entry that the record asks back until somebody says that they are right.</summary>
    public ImmutableArray<string> Questioned(Payload payload) =>
        [
            .. (
                payload switch
                {
                    Payload.SignsTaken signs => Implausible.Of(signs, Person?.AgeYears),
                    Payload.CasualtyOpened opened => Implausible.Of(opened),
                    _ => [],
                }
            )
                .Where(o => o.BySaying)
                .Select(o => o.Field)
                .Distinct(),
        ];

    private Payload.CasualtyOpened? Person => Record is { } record ? CasualtyProfile.At(record.Readings[0], Now) : null;

    /// <summary>The rules in force, if the record does not say them yet; a record that only ever knew the shipped ones need not.</summary>
    public Payload.RulesStated? UnstatedRules()
    {
        var now = RulesWords.Stated(Protocol);
        var stated = Record?.Readings[0].Of(Kind.RulesStated).LastOrDefault(r => r.Id.Device == session.Device)?.As<Payload.RulesStated>();
        return stated is null
            ? now.Standing is null
                ? null
                : now
            : stated.SameRules(now)
                ? null
                : now;
    }

    public void Dispose()
    {
        session.Changed -= TakeIn;
        ticker.Ticked -= Tick;
        party.Changed -= Show;
        elsewhere.Changed -= LookElsewhere;
    }

    private void LookElsewhere()
    {
        if (Record is { } record && judging.LookElsewhere(record, casualty))
            Show();
    }

    private void TakeIn()
    {
        if (session.Open is not { } open)
        {
            (casualty, taken, Record, Picture) = ("", [], null, null);
            Changed?.Invoke();
            return;
        }

        var lines = session.Lines;
        var goesOn = casualty == open.Id && Record is not null && Judging.GoOn(taken, lines);
        if (goesOn && lines.Length == taken.Length)
            return;
        var prepared = goesOn ? null : judging.Take(open.Id, lines);
        var from = goesOn ? taken.Length : prepared?.Lines.Length ?? 0;
        Record = goesOn ? Record : prepared?.Record ?? judging.Empty(open.Id);
        for (var i = from; i < lines.Length; i++)
            judging.Add(Record!, lines[i], i + 1);
        (casualty, taken) = (open.Id, lines);
        var elsewhereNow = judging.LookElsewhere(Record!, casualty);
        Show(!elsewhereNow && from == lines.Length && ReferenceEquals(prepared?.Picture.Rules, Rules) ? prepared!.Picture : null);
    }

    private void Tick()
    {
        if (Picture is { } picture && (Now - picture.At >= PaceOf(picture) || Now < picture.At))
            Show();
    }

    private Duration PaceOf(Judgement picture) =>
        preferences.Look == Look.Saving && picture.Limbs.All(l => l.Attempt is null) && picture.Observed.All(w => w.Attempt is null)
            ? SavingPace
            : Pace;

    private void Show() => Show(null);

    private void Show(Judgement? judged)
    {
        Picture = Record is null ? null : judged ?? judging.Judge(Record, casualty);
        Changed?.Invoke();
    }
}
