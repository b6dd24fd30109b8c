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
        if (
            Opened.RulesOf(settings.Protocol) is not { } under
            || Opened.WholeOf<Bytes>(settings.File, b => new Read<Bytes>.Usable(new(b))) is not { } file
        )
            return ErrorOutput.Unusable;
        if (Trust.KeyOf(settings.Key) is not { } opened)
            return ErrorOutput.Unusable;
        using var key = opened;
        var head = new SignatureHead(
            key.Code.Digits,
            under.Protocol.Named,
            settings.Serial,
            WrittenInstant.TryParse(settings.From)!.Value,
            WrittenInstant.TryParse(settings.Until)!.Value
        );
        var signature = key.Sign(head, file.All.Span);
        return Laid(signature, file.All, settings, key.Code, under) is { } laid ? Write(signature, settings, laid) : ErrorOutput.Unusable;
    }

    /// <summary>What a phone would make of it: nothing is signed that is refused there.</summary>
    private static Rulebook? Laid(LocalSignature signature, ReadOnlyMemory<byte> file, Settings settings, IssuerCode code, Rulebook under)
    {
        var (keyring, at) = (Keyring.Empty.Pin(code), signature.Head.NotBefore);
        var proving = LocalRules.OfAsync(file, signature.Write(), settings.File, keyring, under, at, FrameworkSignatures.CheckAsync);
        var read = proving.AsTask().GetAwaiter().GetResult() switch
        {
            Read<LocalRules>.Usable(var local) => local.At(at),
            Read<LocalRules>.Refused(var why) => new Read<Rulebook>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        if (read is Read<Rulebook>.Usable(var laid))
            return laid;
        ErrorOutput.Of(((Read<Rulebook>.Refused)read).Refusals);
        return null;
    }

    private static int Write(LocalSignature signature, Settings settings, Rulebook laid)
    {
        var beside = settings.File + LocalSignature.Ending;
        if (Files.Write(beside, signature.Write()) is { } fault)
            return ErrorOutput.Plainly(fault);
        Console.Out.WriteLine(Plain.Line($"{beside}: written"));
        foreach (var line in RulesWords.Of(laid).Concat(DifferenceWords.Lines(laid.Protocol.Local!)))
            Console.Out.WriteLine(Plain.Line(line));
        return 0;
    }

    private sealed record Bytes(ReadOnlyMemory<byte> All);
}
