using System.Collections.Immutable;
using System.Text;
using Farhold.Physiology.Rehearsal;
using Farhold.Rehearsal.Debriefs;
using Farhold.Rehearsal.Pictures;
using Farhold.Rehearsal.Runs;
using Farhold.Rehearsal.Scenarios;
using NodaTime;
using Debrief = Farhold.Rehearsal.Debriefs.Debrief;
using WhatIf = Farhold.Rehearsal.Debriefs.WhatIf;

namespace Farhold.App.Rehearse;

/// <summary>A rehearsal on the phone: the model, fed with what the trainee logs and does. Touched only once the model is loaded.</summary>
internal sealed class RunningRehearsal : IRun
{
    private readonly HashSet<string> taken = new(StringComparer.Ordinal);
    private readonly List<Noticed> noticed = [];

    /// <summary>Who leads confirms what is done, and a tap moves nothing.</summary>
    private readonly bool isLed;

    private RunningRehearsal(Scenario scenario, ulong seed, bool isLed)
        : this(new(scenario, seed), isLed) { }

    private RunningRehearsal(RehearsalSession session, bool isLed) => (Session, this.isLed) = (session, isLed);

    public RehearsalSession Session { get; }

    public string Title => Session.Scenario.ShownTitle;

    public string Briefing => Session.Scenario.ShownBriefing;

    public ImmutableArray<string> Wounds => [.. Session.Scenario.Wounds.Select(w => w.Name)];

    public double Time => Session.Time;

    public Instant Now => Session.Now;

    public bool IsOver => Session.IsOver;

    public int LooksDone => Session.Shown.Count;

    public IReadOnlyList<Noticed> Noticed
    {
        get
        {
            foreach (var one in Session.Happenings.Skip(noticed.Count))
                noticed.Add(new(Session.At(one.At), ShownWords.Say(one), ShownWords.IsPressing(one)));
            return noticed;
        }
    }

    public string Share() => SharedRun.Write(Session);

    public bool IsLed => RunClock.Of(Session.Truth) is not null;

    public ILedRun Led => new LedRun(Session);

    public static IRun Begin(KeptRun kept) => New(kept);

    private static RunningRehearsal New(KeptRun kept) => new(Shelf.Find(kept.Scenario, kept.File), kept.Seed, kept.Lesson is not null);

    /// <summary>As it was at a time, made again from what was logged and done up to then.</summary>
    /// <param name="lines">Of the record, this phone's.</param>
    public static async Task<IRun> AgainAsync(KeptRun kept, IEnumerable<string> lines, Func<Task> breathe)
    {
        var run = New(kept);
        var done = lines
            .Select(Parse)
            .OfType<(string Line, Entry Entry)>()
            .Select(l => (At: run.Session.SecondsAt(l.Entry.Recorded), Do: (Action)(() => run.Take(l.Line, l.Entry))))
            .Concat(kept.Deeds.Select(d => (d.At, Do: (Action)(() => run.Do(d)))))
            .OrderBy(d => d.At)
            .ToArray();
        foreach (var (at, act) in done)
        {
            await run.PassAsync(at, breathe);
            act();
        }

        await run.PassAsync(kept.At, breathe);
        return run;
    }

    /// <summary>As another phone had it; see <see cref="RunFactory.TakenAsync"/>.</summary>
    public static async Task<TakenRun> TakenAsync(
        ReadOnlyMemory<byte> text,
        string name,
        IReadOnlyDictionary<string, string> own,
        Func<Task> breathe
    )
    {
        var read = SharedRun.Read(text, name);
        if (read is not Read<SharedRun>.Usable(var shared))
            return new(null, false, ((Read<SharedRun>.Refused)read).Refusals);
        var scenario = Shelf.Find(shared.Of.Scenario, shared.Of.ScenarioHash, own);
        if (shared.Objection(scenario, name) is { } objection)
            return new(null, false, [objection]);
        RehearsalSession? session = null;
        foreach (var so in shared.InPieces(scenario!, Piece))
        {
            session = so;
            await breathe();
        }

        return new(new RunningRehearsal(session!, isLed: false), SharedRun.HashOf(session!) == shared.Of.Truth, []);
    }

    public double SecondsAt(Instant instant) => Session.SecondsAt(instant);

    public void AdvanceTo(double seconds, bool stop = false) => Session.AdvanceTo(seconds, stop);

    public double NextAt(Rulebook rules) => Pace.Next(Session, rules).At;

    public Debriefing Debrief(Rulebook rules, double width) =>
        Shown(Farhold.Rehearsal.Debriefs.Debrief.Of(new(Session, null), [.. Session.Record], rules), width);

    public (Debriefing? Shown, ImmutableArray<Refusal> Refusals) Debrief(
        ReadOnlyMemory<byte> record,
        string name,
        Rulebook rules,
        double width
    )
    {
        var read = RecordReader.Read(record, name);
        if (read is not Read<RecordFile>.Usable(var file))
            return (null, ((Read<RecordFile>.Refused)read).Refusals);
        return TraineeRecord.On(Session, file.Entries, name) switch
        {
            Read<TraineeRecord>.Usable(var joined) => (
                Shown(Farhold.Rehearsal.Debriefs.Debrief.Of(new(Session, null), joined, rules), width),
                []
            ),
            Read<TraineeRecord>.Refused(var why) => (null, why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    internal static Debriefing Shown(Debrief debrief, double width)
    {
        return new(
            [.. DebriefText.Intro(debrief)],
            [.. DebriefText.Parts(debrief).Select(p => (p.Title, p.Lines.Select(l => l.Trim()).ToImmutableArray()))],
            [.. DebriefPictures.Draw(debrief, Math.Floor(width)).Select(Shown)],
            [.. WhatIf.Offered.Select(w => (w, Labels.Sentence(WhatIf.Parse(w)!.Title)))],
            debrief.Remarks.IsEmpty && debrief.Session.IsOver
        );
    }

    private static PictureShown Shown(DebriefPicture p) => new(p.Title, p.Svg, p.Key, p.Table.Heads, p.Table.Rows);

    public async Task WhatIfAsync(string change, int count, Action<WhatIfShown> show, Func<Task> breathe)
    {
        var with = WhatIf.Parse(change)!;
        var other = await CourseAsync(with, null, breathe);
        ImmutableArray<string> courses = [.. DebriefText.Courses(CasualtyCourse.Of(Session), other)];
        List<CasualtyCourse> same = [],
            others = [];
        show(new(with.Title, courses, [], 0, count));
        for (var n = 1; n <= count; n++)
        {
            same.Add(await CourseAsync(null, n, breathe));
            others.Add(await CourseAsync(with, n, breathe));
            show(
                new(with.Title, courses, [.. DebriefText.Counts(same, others)], n, count)
                {
                    Dots = Shown(DotsPicture.Of(same, others).Draw()),
                }
            );
        }
    }

    private async Task<CasualtyCourse> CourseAsync(WhatIf? change, int? redraw, Func<Task> breathe)
    {
        RehearsalSession? last = null;
        foreach (var session in WhatIf.InPieces(Session, change, redraw, Piece))
        {
            last = session;
            await breathe();
        }

        return CasualtyCourse.Of(last!);
    }

    /// <summary>What the record holds when the trainee takes the phone.</summary>
    public byte[] Opening() => [.. Session.Record.SelectMany(e => (byte[])[.. e.Json.Utf8.Span, (byte)'\n'])];

    /// <summary>Takes over what the trainee logged; true where it was new.</summary>
    public bool Take(string line)
    {
        if (taken.Contains(line) || Parse(line) is not var (_, entry))
            return false;
        Session.AdvanceTo(Session.SecondsAt(entry.Recorded));
        Take(line, entry);
        return true;
    }

    /// <returns>Why nothing comes of it, or null.</returns>
    public string? Do(KeptDeed deed) =>
        Session.IsOver ? null
        : deed.What == Deeds.Wrap ? Session.Do(new(OfferedActs.Wrapped), deed.By)
        : Wire.Parse<LookKind>(deed.What) is { } look ? Session.Look(look, deed.Wound, deed.By)
        : AskedLine.Parse(deed.What) is { } asked ? AskedLine.Do(Session, asked, deed.By)
        : null;

    /// <summary>Lets time pass, in pieces that let touches through.</summary>
    private async Task PassAsync(double to, Func<Task> breathe)
    {
        while (!Session.IsOver && Session.Time < to)
        {
            Session.AdvanceTo(Math.Min(to, Session.Time + Piece));
            await breathe();
        }
    }

    /// <summary>Design: seconds of the scene between two breaths, a few milliseconds on a slow phone.</summary>
    private const double Piece = RehearsalDesk.Piece;

    private void Take(string line, Entry entry)
    {
        taken.Add(line);
        if (!Session.IsOver)
            Session.Take(entry, acts: !isLed);
    }

    private static (string Line, Entry Entry)? Parse(string line) =>
        new EntryReader().Read(Encoding.UTF8.GetBytes(line), "practice", 1) is Read<Entry>.Usable usable ? (line, usable.Value) : null;
}
