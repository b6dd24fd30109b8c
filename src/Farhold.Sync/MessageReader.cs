using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.Sync;

/// <summary>Reads a message piece by piece, as it comes in; what was whole before it broke off counts.</summary>
/// <remarks>A line is whole once its line feed has come: what follows the last one is dropped. Not thread-safe.</remarks>
/// <param name="mine">What is held here; the reader adds nothing to it, and looks links up in it.</param>
/// <param name="file">Named in refusals.</param>
public sealed class MessageReader(LineSet mine, string file)
{
    private readonly WireLinks.Restoring restoring = new(mine);
    private readonly List<ReadOnlyMemory<byte>> ready = [];
    private readonly ArrayBufferWriter<byte> piece = new();
    private int number;
    private long size;

    /// <summary>Null until its line has come.</summary>
    public Head? Head { get; private set; }

    /// <summary>The line of the head as it came, without its end; empty until it has.</summary>
    public ReadOnlyMemory<byte> HeadLine { get; private set; }

    /// <summary>Why the message is not read any further; empty as long as it is.</summary>
    public ImmutableArray<Refusal> Refusals { get; private set; } = [];

    /// <summary>Whether it is refused for its size.</summary>
    public bool IsTooLarge { get; private set; }

    /// <summary>Lines that could not be taken, since what they follow from is not held here; the sender will see that.</summary>
    public int Unrestored { get; private set; }

    /// <summary>Takes the next bytes of the message.</summary>
    /// <returns>False once the message is refused; what came of it before stays.</returns>
    public bool Push(ReadOnlySpan<byte> bytes)
    {
        while (Refusals.IsEmpty && !bytes.IsEmpty)
        {
            var end = bytes.IndexOf((byte)'\n');
            var part = end < 0 ? bytes : bytes[..end];
            bytes = end < 0 ? default : bytes[(end + 1)..];
            size += part.Length + (end < 0 ? 0 : 1);
            if (size > SyncLimits.MaxText)
                Refuse($"the message is longer than {SyncLimits.MaxText} bytes");
            else if (piece.WrittenCount + part.Length > SyncLimits.MaxLine + 1)
                Refuse($"the line is longer than {SyncLimits.MaxLine} bytes");
            else
            {
                piece.Write(part);
                if (end >= 0)
                    EndLine();
            }
        }

        return Refusals.IsEmpty;
    }

    /// <summary>The lines that have come whole since this was last asked, with their links.</summary>
    public ImmutableArray<ReadOnlyMemory<byte>> TakeLines()
    {
        var lines = ready.ToImmutableArray();
        ready.Clear();
        return lines;
    }

    private void EndLine()
    {
        var line = piece.WrittenSpan.ToArray();
        piece.ResetWrittenCount();
        number++;
        if (Head is null)
        {
            HeadLine = line;
            switch (Head.Read(line, file))
            {
                case Read<Head>.Usable(var head):
                    Head = head;
                    break;
                case Read<Head>.Refused(var why):
                    Refusals = why;
                    break;
            }
        }
        else if (restoring.Restore(line) is { } whole)
            ready.Add(whole);
        else
            Unrestored++;
    }

    private void Refuse(FormattableString reason)
    {
        IsTooLarge = true;
        Refusals = [new(file, number + 1, 1, reason.ToString(CultureInfo.InvariantCulture))];
    }
}
