using System.Collections.Immutable;

namespace Farhold.Exchange.Message;

/// <summary>Several short messages, one a line: those that could be read, and why the others could not.</summary>
public sealed record ReceivedMessages(ImmutableArray<ReceivedMessage> Messages, ImmutableArray<Refusal> Refusals)
{
    /// <summary>Empty lines and a byte-order mark are passed over.</summary>
    public static ReceivedMessages Read(string text, string file)
    {
        var messages = ImmutableArray.CreateBuilder<ReceivedMessage>();
        var refusals = ImmutableArray.CreateBuilder<Refusal>();
        var lines = text.TrimStart('\uFEFF').Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(lines[i]))
                continue;
            switch (MessageReader.Read(lines[i].TrimEnd('\r'), file, i + 1))
            {
                case Read<ReceivedMessage>.Usable { Value: var message }:
                    messages.Add(message);
                    break;
                case Read<ReceivedMessage>.Refused refused:
                    refusals.AddRange(refused.Refusals);
                    break;
            }
        }

        return new(messages.ToImmutable(), refusals.ToImmutable());
    }

    /// <summary>The lines of a record that they amount to.</summary>
    public ImmutableArray<Entry> Entries => [.. Messages.SelectMany(m => MessageEntries.Of(m))];
}
