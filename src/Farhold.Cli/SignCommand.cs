using System.ComponentModel;
using Farhold.Signing;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class SignCommand : Command<SignCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("A local protocol. The signature is written beside it, to FILE.sig; the file itself stays as it is, to the byte.")]
        public string File { get; init; } = "";

        [CommandOption("--key <FILE>", isRequired: true)]
        [Description("The signing key, as farhold keys new made it.")]
        public string Key { get; init; } = "";

        [CommandOption("--serial <NUMBER>", isRequired: true)]
        [Description("One more than that of the last file signed with this key. Phones take nothing older than what they have seen.")]
        public long Serial { get; init; }

        [CommandOption("--from <INSTANT>", isRequired: true)]
        [Description("Valid from then on, such as 2031-01-10T00:00:00Z.")]
        public string From { get; init; } = "";

        [CommandOption("--until <INSTANT>", isRequired: true)]
        [Description("Valid until then, at most 24 months later.")]
        public string Until { get; init; } = "";

        [CommandOption("--protocol <FILE>")]
        [Description("The protocol that it is laid over, in place of the shipped one.")]
        public string? Protocol { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        foreach (var text in new[] { settings.From, settings.Until })
            if (WrittenInstant.TryParse(text) is null)
                return ErrorOutput.Plainly($"{text} is no instant of the years 1900 to 2500; write it like 2031-01-10T00:00:00Z");
        if (Opened.ProtocolOf(settings.Protocol) is not { } under || Opened.WholeOf<Bytes>(settings.File, b => new Read<Bytes>.Usable(new(b))) is not { } file)
            return ErrorOutput.Unusable;
        if (Trust.KeyOf(settings.Key) is not { } opened)
            return ErrorOutput.Unusable;
        using var key = opened;
        var head = new SignatureHead(
            key.Code.Digits, under.Named, settings.Serial, WrittenInstant.TryParse(settings.From)!.Value, WrittenInstant.TryParse(settings.Until)!.Value);
        var signature = key.Sign(head, file.All.Span);
        return Laid(signature, file.All, settings, key.Code, under) is { } laid ? Write(signature, settings, laid) : ErrorOutput.Unusable;
    }

    /// <summary>What a phone would make of it: nothing is signed that is refused there.</summary>
    private static Protocol? Laid(LocalSignature signature, ReadOnlyMemory<byte> file, Settings settings, IssuerCode code, Protocol under)
    {
        var beside = settings.File + LocalSignature.Ending;
        var proving = Proof.OfAsync(file, signature.Write(), beside, Keyring.Empty.Pin(code), under.Named, signature.Head.NotBefore, FrameworkSignatures.CheckAsync)
            .AsTask().GetAwaiter().GetResult();
        if (proving is not Read<Proof>.Usable { Value: var proof })
        {
            ErrorOutput.Of(((Read<Proof>.Refused)proving).Refusals);
            return null;
        }

        var read = LocalReader.Read(file, settings.File, under, proof, signature.Head.NotBefore);
        if (read is Read<Protocol>.Usable { Value: var laid })
            return laid;
        ErrorOutput.Of(((Read<Protocol>.Refused)read).Refusals);
        return null;
    }

    private static int Write(LocalSignature signature, Settings settings, Protocol laid)
    {
        var beside = settings.File + LocalSignature.Ending;
        if (Files.Write(beside, signature.Write()) is { } fault)
            return ErrorOutput.Plainly(fault);
        Console.Out.WriteLine(Plain.Line($"{beside}: written"));
        foreach (var line in RulesWords.Of(laid).Concat(laid.Local!.Changes.Select(c => $"differs: {c}")))
            Console.Out.WriteLine(Plain.Line(line));
        return 0;
    }

    private sealed record Bytes(ReadOnlyMemory<byte> All);
}
