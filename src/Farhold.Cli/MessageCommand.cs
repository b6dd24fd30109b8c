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
            return Refusing.Unusable;
        if (opened.ClockNote is { } note)
            Refusing.Say(note);
        var facts = CareFacts.Of(opened.Record, opened.Protocol, opened.At);
        foreach (var message in settings.Parts ? ShortMessage.Parts(facts) : [ShortMessage.Of(facts)])
            Console.Out.WriteLine(message.Text);
        return 0;
    }

    /// <summary>Entries of the messages that can be read; those that can't make it fail, and are said.</summary>
    private static int Received(string path)
    {
        if (Files.Read(path) is not Read<ReadOnlyMemory<byte>>.Usable { Value: var utf8 })
            return Refusing.Of(((Read<ReadOnlyMemory<byte>>.Refused)Files.Read(path)).Refusals);
        var lines = Encoding.UTF8.GetString(utf8.Span).TrimStart('\uFEFF').Split('\n');
        var (status, any) = (0, false);
        for (var i = 0; i < lines.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(lines[i]))
                continue;
            any = true;
            switch (MessageReader.Read(lines[i].TrimEnd('\r'), path, i + 1))
            {
                case Read<ReceivedMessage>.Usable { Value: var message }:
                    foreach (var entry in MessageEntries.Of(message))
                        Console.Out.WriteLine(entry.Json.ToString());
                    if (message.LeftOut is { IsEmpty: false } left)
                        Refusing.Say($"{path}:{i + 1}: the sender left out: {string.Join(' ', left)}");
                    break;
                case Read<ReceivedMessage>.Refused refused:
                    status = Refusing.Of(refused.Refusals);
                    break;
            }
        }

        return any ? status : Refusing.Of([new Refusal(path, 1, 1, "there is no message in the file")]);
    }
}
