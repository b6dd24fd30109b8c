using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Board;

/// <summary>The board of this desk, as the hub's stream tells it.</summary>
public sealed class BoardDesk(IHubLine line, HubDesk hub, Background background, TimeProvider time) : IDisposable
{
    private static readonly TimeSpan Again = TimeSpan.FromSeconds(5);

    /// <summary>The hub gives a sign of life every 20 s.</summary>
    private static readonly Duration Still = Duration.FromSeconds(50);

    private readonly IHubLine line = line;
    private readonly Dictionary<string, BoardRow> rows = new(StringComparer.Ordinal);
    private HashSet<string> told = [];
    private bool whole;
    private int watchers;
    private ITimer? again;

    public event Action? Changed;

    /// <summary>Worst first.</summary>
    public ImmutableArray<BoardRow> Rows =>
        [
            .. rows
                .Values.OrderBy(r => r.Rank)
                .ThenBy(r => r.Worst?.Since.Earliest ?? Instant.MaxValue)
                .ThenBy(r => r.Alias, StringComparer.Ordinal),
        ];

    /// <summary>When the stream last said anything.</summary>
    public Instant? Heard { get; private set; }

    public bool IsLive => Heard is { } heard && Now - heard < Still;

    private Instant Now => Instant.FromDateTimeOffset(time.GetUtcNow());

    /// <summary>Listens until the last who asked for it has gone.</summary>
    public IDisposable Watch()
    {
        if (watchers++ == 0)
            Begin();
        return new Watcher(this);
    }

    public void Dispose() => again?.Dispose();

    private void Begin()
    {
        if (hub.Member is not { IsConfirmed: true, IsOut: false })
            return;
        (whole, told) = (false, []);
        line.Listen("/hub/watch", Take);
    }

    private void Take(string name, string data)
    {
        switch (name)
        {
            case "standing" when BoardRow.Read(data) is { } row:
                rows[row.Id] = row;
                told.Add(row.Id);
                break;
            case "all":
                // What the hub does not tell any more is not for this desk any more.
                foreach (var gone in rows.Keys.Where(id => !told.Contains(id)).ToArray())
                    rows.Remove(gone);
                whole = true;
                break;
            case "ended":
                if (watchers > 0)
                    again = time.CreateTimer(_ => background.Raise(AskAgain), null, Again, Timeout.InfiniteTimeSpan);
                background.Raise(Changed);
                return;
        }

        Heard = Now;
        if (whole)
            background.Raise(Changed);
    }

    private void AskAgain()
    {
        if (watchers > 0)
            Begin();
    }

    private sealed class Watcher(BoardDesk of) : IDisposable
    {
        private bool gone;

        public void Dispose()
        {
            if (gone)
                return;
            gone = true;
            if (--of.watchers == 0)
                of.line.StopListening();
        }
    }
}
