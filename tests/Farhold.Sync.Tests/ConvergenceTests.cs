using System.Text;
using CsCheck;

namespace Farhold.Sync.Tests;

/// <summary>
/// Whatever happened before, phones that meet the hub hold the same lines as it afterwards, and those are all that anybody held.
/// </summary>
public class ConvergenceTests
{
    private const int Phones = 4;

    /// <summary>Rounds of one meeting without faults: to see a difference, to list on either side, to send.</summary>
    private const int MostRounds = 4;

    private static readonly string[] Devices = ["a7k3", "n95q2x", "m2rt", "q8wd7z"];

    /// <param name="What">See <see cref="Play"/>.</param>
    private sealed record Step(int What, int Phone, int Other, int Size, int Cut);

    private static readonly Gen<Step[]> History = Gen.Select(
        Gen.Int[0, 11],
        Gen.Int[0, Phones - 1],
        Gen.Int[0, Phones - 1],
        Gen.Int[0, 5],
        Gen.Int[0, 2_000],
        (what, phone, other, size, cut) => new Step(what, phone, other, size, cut)
    ).Array[1, 60];

    /// <summary>10,000 histories in the longest run; 2,500 by day.</summary>
    [Fact]
    public void Every_history_of_meetings_copies_files_and_broken_transfers_ends_in_equal_records() =>
        History.Sample(
            steps =>
            {
                var (phones, hub) = Play(steps, (phone, to, up, down, most) => Link.Exchange(phone, to, up, down, most));
                var all = phones.Append(hub).SelectMany(s => s.Held).ToHashSet();
                foreach (var phone in phones)
                    Assert.InRange(Link.Meet(phone, hub), 1, MostRounds);
                foreach (var phone in phones)
                    Assert.InRange(Link.Meet(phone, hub), 1, MostRounds);
                foreach (var side in phones.Append(hub))
                {
                    Assert.Equal(all.Count, side.Lines.Count);
                    Assert.Superset(all, side.Held.ToHashSet());
                    Assert.Equal(hub.Lines.Vector, side.Lines.Vector);
                }
            },
            iter: Cases.Long(10_000)
        );

    /// <summary>The law above bites: without lists of the lines in dispute records differ for good.</summary>
    [Fact]
    public void Without_the_step_for_disputes_the_law_fails()
    {
        var failed = 0;
        History.Sample(
            steps =>
            {
                var (phones, hub) = Play(steps, Mute);
                for (var i = 0; i < 2 * MostRounds; i++)
                    foreach (var phone in phones)
                        Mute(phone, hub, null, null, SyncLimits.MaxText / 2);
                if (phones.Any(p => !p.Lines.Vector.Equals(hub.Lines.Vector)))
                    Interlocked.Increment(ref failed);
            },
            iter: 500
        );
        Assert.True(failed > 0);

        static void Mute(Side phone, Side hub, int? up, int? down, int most)
        {
            var request = Link.Bytes(Silenced(Outgoing.To(phone.Hint, phone.Lines, most)));
            var came = Link.Take(hub.Lines, request.AsSpan(0, Math.Min(up ?? request.Length, request.Length)));
            if (up < request.Length || came is null)
                return;
            var answer = Link.Bytes(Silenced(Outgoing.To(came, hub.Lines, most)));
            phone.Hint = Link.Take(phone.Lines, answer.AsSpan(0, Math.Min(down ?? answer.Length, answer.Length))) ?? phone.Hint;
        }

        static Outgoing Silenced(Outgoing message) => message with { Head = message.Head with { Hashes = Head.Empty.Hashes } };
    }

    /// <summary>As above for lines lost on the way that the sender then takes for acknowledged, as an upload queue would.</summary>
    [Fact]
    public void Where_what_was_sent_counts_as_arrived_the_law_fails()
    {
        var failed = 0;
        History.Sample(
            steps =>
            {
                var (phones, hub) = Play(steps, Hopeful);
                foreach (var phone in phones)
                    Hopeful(phone, hub, null, null, SyncLimits.MaxText / 2);
                if (phones.Any(p => p.Held.Except(hub.Held).Any()))
                    Interlocked.Increment(ref failed);
            },
            iter: 500
        );
        Assert.True(failed > 0);

        static void Hopeful(Side phone, Side hub, int? up, int? down, int most)
        {
            Link.Exchange(phone, hub, up, down, most);
            phone.Hint = new Head(phone.Lines.Vector, Head.Empty.Hashes);
        }
    }

    [Fact]
    public void What_was_cut_leaves_a_prefix_that_the_next_request_does_not_repeat()
    {
        var (phone, hub) = (new Side("a7k3"), new Side("hub"));
        for (var i = 0; i < 200; i++)
            phone.Write($"entry {i}");
        phone.Hint = Head.Empty;
        var whole = Link.Bytes(Outgoing.To(phone.Hint, phone.Lines)).Length;
        Link.Exchange(phone, hub, up: whole / 2);
        var arrived = hub.Lines.Vector["a7k3"].Length;
        Assert.InRange(arrived, 80, 120);
        Assert.Equal(arrived, hub.Lines.Count);
        Assert.Equal(Head.Empty, phone.Hint); // nothing was acknowledged
        Link.Exchange(phone, hub, up: 0, down: 0);
        phone.Hint = null; // started anew
        Link.Exchange(phone, hub);
        Assert.InRange(Link.Exchange(phone, hub).Up, 1, whole * 6 / 10);
        Assert.Equal(200, hub.Lines.Count);
    }

    [Fact]
    public void Asking_twice_changes_nothing_and_sends_no_line_again()
    {
        var (phone, hub) = (new Side("a7k3"), new Side("hub"));
        phone.Write("one");
        phone.Hint = Head.Empty;
        var request = Link.Bytes(Outgoing.To(phone.Hint, phone.Lines));
        Link.Take(hub.Lines, request);
        Link.Take(hub.Lines, request);
        Assert.Equal(1, hub.Lines.Count);
        Link.Exchange(phone, hub);
        Assert.Empty(Outgoing.To(phone.Hint, phone.Lines).Lines);
        Assert.Equal(hub.Lines.Vector, phone.Lines.Vector);
    }

    /// <summary>The hub came back from an old backup: what the phone remembers of it is not true any more.</summary>
    [Fact]
    public void A_hint_that_is_not_true_costs_a_round_and_no_line()
    {
        var (phone, hub, restored) = (new Side("a7k3"), new Side("hub"), new Side("hub"));
        for (var i = 0; i < 10; i++)
            phone.Write($"entry {i}");
        phone.Hint = Head.Empty;
        Link.Meet(phone, hub);
        foreach (var line in hub.Lines.Lines.Take(3))
            restored.Lines.Add(line.Bytes);
        phone.Write("one more"); // its link is shortened to what the hub no longer holds
        Assert.Equal(2, Link.Meet(phone, restored));
        Assert.Equal(11, restored.Lines.Count);
    }

    /// <summary>
    /// What may happen: entries, meetings whole and cut, answers lost, files with gaps, copied phones, an old backup, torn lines, lost
    /// hints.
    /// </summary>
    private static (Side[] Phones, Side Hub) Play(Step[] steps, Action<Side, Side, int?, int?, int> exchange)
    {
        var hub = new Side("hub");
        var phones = Devices.Select(d => new Side(d)).ToArray();
        var written = 0;
        foreach (var s in steps)
        {
            var (phone, other) = (phones[s.Phone], phones[s.Other]);
            switch (s.What)
            {
                case <= 3:
                    for (var i = 0; i <= s.Size; i++)
                        phone.Write($"{written++} på {phone.Device}");
                    break;
                case 4:
                    exchange(phone, hub, null, null, SyncLimits.MaxText / 2);
                    break;
                case 5:
                    exchange(phone, hub, s.Cut, null, SyncLimits.MaxText / 2);
                    break;
                case 6:
                    exchange(phone, hub, null, s.Cut, SyncLimits.MaxText / 2);
                    break;
                case 7: // small messages
                    exchange(phone, hub, null, null, 1 + (s.Cut / 10));
                    break;
                case 8: // a file of the other phone, of which some lines were left out
                    foreach (var line in other.Lines.Lines.Where((_, i) => (i + s.Cut) % 3 > 0).ToArray())
                        phone.Lines.Add(line.Bytes);
                    break;
                case 9 when s.Cut % 4 == 0: // restored from the backup of another phone, it goes on as that one
                    phone.CopyOf(other);
                    break;
                case 9 when s.Cut % 4 == 1: // the hub came back from an old backup
                    var kept = hub.Lines.Lines.Take(hub.Lines.Count * s.Size / 6).ToArray();
                    hub.Lines = new();
                    foreach (var line in kept)
                        hub.Lines.Add(line.Bytes);
                    break;
                case 10: // a line cut short in the file, and what is no line of ours at all
                    if (phone.Lines.Lines.LastOrDefault() is { } torn)
                        phone.Lines.Add(torn.Bytes[..Math.Max(1, torn.Bytes.Length * (s.Size + 1) / 7)]);
                    phone.Lines.Add(Encoding.UTF8.GetBytes(Odd[s.Cut % Odd.Length]));
                    phone.Lines.Add(
                        new byte[] { 0xFF, 0xFE, (byte)s.Size, (byte)'"' }
                            .Where(b => b != '\n')
                            .ToArray()
                    );
                    break;
                case 11: // the phone forgets what the hub said
                    phone.Hint = s.Size == 0 ? Head.Empty : null;
                    break;
            }
        }

        return (phones, hub);
    }

    /// <summary>What the form on the wire could take for something else.</summary>
    private static readonly string[] Odd =
    [
        "={\"id\":\"a7k3-2\"}",
        "==",
        "{\"id\":\"a7k3-2\",\"previous\":\"\",\"kind\":\"note\"}",
        "{\"id\":\"m2rt-3\",\"previous\":\"0123abcd\",\"kind\":\"note\"}",
        "{\"id\":\"m2rt-4\",\"previous\":\"",
        "{\"kind\":\"note\",\"id\" : \"n95q2x-7\"}",
        "{\"sync\":1,\"have\":{}}",
        "{\"id\":\"a7k3-2147483647\",\"previous\":\"x\"}",
        "é",
    ];
}
