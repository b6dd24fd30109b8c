using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>The casualty on the screen, its record as stored, and what could not be stored.</summary>
public sealed class Session(ILogStore store, Preferences preferences, TimeProvider time, Background background, Judging judging)
{
    private int forms;
    private string? wanted;
    private int told;
    private (string Casualty, ImmutableArray<StoredLine> Lines, int Told)? ready;
    private Task opened = Task.CompletedTask;

    /// <summary>Something shown has changed: the casualty, its record, or what is not stored.</summary>
    public event Action? Changed;

    public ImmutableArray<CasualtyHead> Casualties { get; private set; } = [];

    /// <summary>Null while the list of casualties is shown.</summary>
    public CasualtyHead? Open { get; private set; }

    /// <summary>Every line of the open casualty's record, exactly as stored.</summary>
    public ImmutableArray<StoredLine> Lines
    {
        get;
        private set
        {
            // One more line is the common case, and the only one that has to be quick.
            var more = value.Length == field.Length + 1 && (field.IsEmpty || ReferenceEquals(value[^2], field[^1]));
            var latest = ClockDoubt.LatestRecorded(more ? [value[^1]] : value, store.Device);
            LatestRecorded = more && LatestRecorded is { } before && (latest is null || latest < before) ? before : latest;
            field = value;
        }
    } = [];

    /// <summary>The latest time this phone has written into the open record.</summary>
    public Instant? LatestRecorded { get; private set; }

    /// <summary>The casualty that was open when the app last ended, until something else is opened; null if none was.</summary>
    public string? Interrupted { get; private set; }

    public ImmutableArray<Appended.NotStored> NotStored { get; private set; } = [];

    public bool FormOpen => forms > 0;

    /// <summary>This phone's id.</summary>
    public string Device => store.Device;

    public bool AlsoOpenElsewhere => store.AlsoOpenElsewhere;

    public int NotCopied => Open is { } open ? Math.Max(0, Lines.Length - preferences.Copied(open.Id)) : 0;

    public Instant Now => Instant.FromDateTimeOffset(time.GetUtcNow());

    public async Task StartAsync()
    {
        store.ChangedElsewhere += OnChangedElsewhere;
        NotStored = await store.ReplayAsync();
        Casualties = await store.ListAsync();
        Interrupted = Casualties.FirstOrDefault(c => c.Id == preferences.OpenCasualty)?.Id;
    }

    /// <summary>Does beforehand what opening this casualty takes, so that the first thing drawn is its picture.</summary>
    public async Task PrepareAsync(string casualty)
    {
        if (Casualties.Any(c => c.Id == casualty))
            ready = (casualty, await TakeInAsync(casualty, () => true), told);
    }

    /// <summary>Reads anew which casualties this phone holds.</summary>
    public async Task ListAgainAsync()
    {
        Casualties = await store.ListAsync();
        Changed?.Invoke();
    }

    /// <summary>Opens a casualty of the list; what was asked for last is what is open in the end.</summary>
    public Task OpenAsync(string casualty)
    {
        if (Open?.Id == casualty || Casualties.FirstOrDefault(c => c.Id == casualty) is not { } head)
        {
            wanted = null;
            return Task.CompletedTask;
        }

        if (wanted == casualty)
            return opened;
        wanted = casualty;
        return opened = OpenAsync(head);
    }

    public void Close()
    {
        (Interrupted, wanted) = (null, null);
        if (Open is null)
            return;
        (Open, Lines) = (null, []);
        preferences.OpenCasualty = "";
        store.Watch(null);
        Changed?.Invoke();
    }

    /// <summary>Opens a new record with its first entry, and answers its id; null if that entry could not be stored.</summary>
    public async Task<string?> NewCasualtyAsync(string alias, bool practice)
    {
        var head = new CasualtyHead(store.NewCasualtyId(), alias, practice, Now);
        var body = Body(new Payload.CasualtyOpened(alias, Casualty: store.NewIdentity()), practice);
        var answer = Take(await store.AppendAsync(head.Id, body, head));
        Casualties = await store.ListAsync();
        return answer is Appended.Stored ? head.Id : null;
    }

    /// <summary>Writes an entry of this casualty, whichever is open by now, by the carer, recorded now.</summary>
    /// <remarks>Places log through the <see cref="Logbook"/>.</remarks>
    public async Task<Appended> AppendAsync(CasualtyHead into, Payload payload, Happened? happened = null)
    {
        ready = null;
        var answer = Take(await store.AppendAsync(into.Id, Body(payload, into.Practice, happened)));
        if (answer is Appended.Stored stored && Open?.Id == into.Id)
        {
            // News from another tab may have brought this line already.
            if (!Lines.Any(l => l.Text == stored.Line))
                Lines = Lines.Add(new(stored.Line, LineState.Kept));
            Changed?.Invoke();
        }

        return answer;
    }

    /// <param name="source">Where the lines came from, in words.</param>
    public async Task<MergeCount> MergeAsync(CasualtyHead into, ImmutableArray<IncomingLine> lines, string source)
    {
        ready = null;
        var count = await store.MergeAsync(into, lines, source);
        Casualties = await store.ListAsync();
        await ReadAgainAsync(into.Id);
        return count;
    }

    /// <summary>Takes back all that one batch added.</summary>
    public async Task TakeBackAsync(CasualtyHead from, string batch)
    {
        ready = null;
        await store.TakeBackAsync(from.Id, batch);
        Casualties = await store.ListAsync();
        if (Open?.Id == from.Id && Casualties.All(c => c.Id != from.Id))
            Close();
        await ReadAgainAsync(from.Id);
    }

    /// <summary>Erases a casualty from this phone.</summary>
    public async Task EraseAsync(CasualtyHead one)
    {
        if (Open?.Id == one.Id)
            Close();
        ready = null;
        await store.EraseAsync(one.Id);
        await ListAgainAsync();
    }

    public async Task TryAgainAsync()
    {
        var lost = NotStored.Where(n => !n.Rescued);
        var left = ImmutableArray.CreateBuilder<Appended.NotStored>();
        foreach (var entry in lost)
            if (await store.AppendAsync(entry.Casualty, entry.Body, entry.Opens) is Appended.NotStored still)
                left.Add(still);
        left.AddRange(await store.ReplayAsync());
        NotStored = [.. left.DistinctBy(n => n.Key)];
        Casualties = await store.ListAsync();
        if (Open is { } open)
            await ReadAgainAsync(open.Id);
        Changed?.Invoke();
    }

    public async Task ExportAsync()
    {
        var open = Open ?? throw new InvalidOperationException("There is no open casualty.");
        await store.ExportAsync(open.Id, IncomingFile.NameFor(open, Now));
        preferences.SetCopied(open.Id, Lines.Length);
        Changed?.Invoke();
    }

    /// <summary>Marks an entry form as open until disposed, so that no newer build is started under it.</summary>
    public IDisposable Editing()
    {
        forms++;
        return new Form(this);
    }

    /// <summary>Another tab, and this page before the app was up, may add to the record meanwhile.</summary>
    private async Task<ImmutableArray<StoredLine>> TakeInAsync(string casualty, Func<bool> goOn)
    {
        ImmutableArray<StoredLine> lines = [];
        int before;
        do
        {
            before = told;
            lines = Known(lines, await store.ReadAsync(casualty));
            if (goOn())
                await judging.PrepareAsync(casualty, lines);
        } while (told != before && goOn());
        return lines;
    }

    private async Task OpenAsync(CasualtyHead head)
    {
        try
        {
            var lines =
                ready is { } r && r.Casualty == head.Id && r.Told == told ? r.Lines : await TakeInAsync(head.Id, () => wanted == head.Id);
            ready = null;
            if (wanted != head.Id)
                return;
            Lines = lines;
            (Open, Interrupted) = (head, null);
            preferences.OpenCasualty = head.Id;
            store.Watch(head.Id);
            Changed?.Invoke();
        }
        finally
        {
            if (wanted == head.Id)
                wanted = null;
        }
    }

    private string Body(Payload payload, bool practice, Happened? happened = null) =>
        EntryWriting.Body(happened ?? Happened.At(Now), Now, preferences.Carer, practice, payload);

    private Appended Take(Appended answer)
    {
        if (answer is Appended.NotStored failed)
        {
            NotStored = NotStored.Add(failed);
            Changed?.Invoke();
        }
        return answer;
    }

    private void OnChangedElsewhere(string casualty)
    {
        told++;
        background.Start(() => ReadAgainAsync(casualty));
    }

    private async Task ReadAgainAsync(string casualty)
    {
        var lines = Open?.Id == casualty ? await store.ReadAsync(casualty) : [];
        if (Open?.Id == casualty)
            Lines = Known(Lines, lines);
        Changed?.Invoke();
    }

    // What was known before stays the same object, so that who has taken it in goes on from there.
    private static ImmutableArray<StoredLine> Known(ImmutableArray<StoredLine> before, ImmutableArray<StoredLine> read)
    {
        if (before.IsEmpty)
            return read;
        var known = before.DistinctBy(l => l.Text).ToDictionary(l => l.Text);
        return [.. read.Select(l => known.TryGetValue(l.Text, out var same) && same == l ? same : l)];
    }

    private sealed class Form(Session session) : IDisposable
    {
        private bool closed;

        public void Dispose()
        {
            if (!closed)
                session.forms--;
            closed = true;
        }
    }
}
