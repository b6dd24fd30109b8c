using System.Collections.Immutable;

namespace Farhold.Sync.Tests;

/// <summary>One exchange of a phone with the hub, cut where it is said to be.</summary>
internal static class Link
{
    /// <param name="up">Bytes of the request that arrive; null: all.</param>
    /// <param name="down">Bytes of the answer that arrive; null: all.</param>
    /// <param name="most">Bytes of lines in a message.</param>
    /// <returns>Bytes sent and, where an answer began to arrive, received.</returns>
    public static (int Up, int Down) Exchange(Side phone, Side hub, int? up = null, int? down = null, int most = SyncLimits.MaxText / 2)
    {
        var request = Bytes(Outgoing.To(phone.Hint, phone.Lines, most));
        var came = Take(hub.Lines, request.AsSpan(0, Math.Min(up ?? request.Length, request.Length)));
        if (up < request.Length || came is null)
            return (request.Length, 0);
        var answer = Bytes(Outgoing.To(came, hub.Lines, most));
        if (Take(phone.Lines, answer.AsSpan(0, Math.Min(down ?? answer.Length, answer.Length))) is { } head)
            phone.Hint = head;
        return (request.Length, answer.Length);
    }

    /// <summary>Exchanges until both are known to hold the same.</summary>
    /// <returns>How many it took.</returns>
    public static int Meet(Side phone, Side hub, int most = SyncLimits.MaxText / 2, int patience = 12)
    {
        for (var round = 1; round <= patience; round++)
        {
            Exchange(phone, hub, most: most);
            if (phone.Hint is { } said && said.Have.Equals(phone.Lines.Vector))
                return round;
        }

        return patience + 1;
    }

    public static byte[] Bytes(Outgoing message)
    {
        using var stream = new MemoryStream();
        message.Write(stream);
        return stream.ToArray();
    }

    /// <summary>Takes in what arrived; lines of it go into <paramref name="lines"/>.</summary>
    /// <returns>Null where not even the head arrived.</returns>
    public static Head? Take(LineSet lines, ReadOnlySpan<byte> message, int piece = 1000)
    {
        var reader = new MessageReader(lines, "message");
        for (; !message.IsEmpty; message = message[Math.Min(piece, message.Length)..])
        {
            Assert.True(reader.Push(message[..Math.Min(piece, message.Length)]), string.Join('\n', reader.Refusals));
            foreach (var line in reader.TakeLines())
                Assert.True(lines.Add(line) is Addition.New or Addition.Held);
        }

        return reader.Head;
    }
}
