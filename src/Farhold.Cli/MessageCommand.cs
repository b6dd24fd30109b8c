using System.ComponentModel;
using System.Text;
using Farhold.Exchange.HandOver;
using Farhold.Exchange.Message;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class MessageCommand(TimeProvider clock) : Command<MessageCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandOption("--parts")]
        [Description("Say all that a message can say, in as many numbered parts as it takes.")]
        public bool Parts { get; init; }

        [CommandOption("--read")]
        [Description("The file holds short messages, one a line: print the entries they amount to.")]
        public bool Read { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Read)
            return Received(settings.Record);
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        var facts = CareFacts.Of(opened.Record, opened.Rules, opened.At);
        foreach (var message in settings.Parts ? ShortMessage.Parts(facts) : [ShortMessage.Of(facts)])
            Console.Out.WriteLine(message.Text);
        return 0;
    }

    /// <summary>Entries of the messages that can be read; those that can't make it fail, and are said.</summary>
    private static int Received(string path)
    {
        var read = Files.Read(path);
        if (read is not Read<ReadOnlyMemory<byte>>.Usable { Value: var utf8 })
            return ErrorOutput.Of(((Read<ReadOnlyMemory<byte>>.Refused)read).Refusals);
        var received = ReceivedMessages.Read(Encoding.UTF8.GetString(utf8.Span), path);
        foreach (var entry in received.Entries)
            Console.Out.WriteLine(entry.Json.ToString());
        foreach (var message in received.Messages.Where(m => m.LeftOut is { IsEmpty: false }))
            ErrorOutput.Say(
                $"{path}: the sender left out: {string.Join(' ', message.LeftOut!)}, in the message of "
                    + $"{Farhold.Text.Say.Time(message.AsOf)}"
            );
        if (!received.Refusals.IsEmpty)
            return ErrorOutput.Of(received.Refusals);
        return received.Messages.IsEmpty ? ErrorOutput.Of([new Refusal(path, 1, 1, "there is no message in the file")]) : 0;
    }
}
