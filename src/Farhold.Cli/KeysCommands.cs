using System.ComponentModel;
using System.Text;
using Farhold.Exchange.Qr;
using Farhold.Signing;
using Spectre.Console.Cli;

namespace Farhold.Cli;

/// <summary>Keys of those who issue local protocols: the ones a service signs with, and the ones trusted here.</summary>
internal static class Keys
{
    public static void Add(IConfigurator config) =>
        config.AddBranch(
            "keys",
            keys =>
            {
                keys.SetDescription("Make and show signing keys for local protocols, and say whose are trusted here.");
                keys.AddCommand<KeysNewCommand>("new").WithDescription("Make a signing key for a service.");
                keys.AddCommand<KeysShowCommand>("show")
                    .WithDescription("Print the issuer's code of a key, with the twenty digits to compare by voice.");
                keys.AddCommand<KeysRotateCommand>("rotate").WithDescription("Let an old key say that a new one takes its place.");
                keys.AddCommand<KeysTrustCommand>("trust")
                    .WithDescription(
                        "Trust an issuer whose twenty digits were compared by voice, or a rotation signed by one that is trusted."
                    );
                keys.AddCommand<KeysListCommand>("list").WithDescription("List the issuers trusted here.");
                keys.AddCommand<KeysDropCommand>("drop").WithDescription("Trust an issuer no more.");
            }
        );

    public static int Write(string path, string text)
    {
        if (Files.Write(path, Encoding.UTF8.GetBytes(text)) is { } fault)
            return ErrorOutput.Plainly(fault);
        Console.Out.WriteLine(Plain.Line($"{path}: written"));
        return 0;
    }

    public static void Show(IssuerCode code)
    {
        Console.Out.Write(Encoding.UTF8.GetString(code.Write()));
        Console.Out.WriteLine();
        Console.Out.WriteLine($"digits to compare by voice: {code.Digits}");
    }
}

internal sealed class KeysNewCommand : Command<KeysNewCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandOption("--name <NAME>", isRequired: true)]
        [Description("Who issues: the service or person, as carers know it.")]
        public string Name { get; init; } = "";

        [CommandOption("--role <ROLE>", isRequired: true)]
        [Description("In what role.")]
        public string Role { get; init; } = "";

        [CommandOption("-o|--output <FILE>", isRequired: true)]
        [Description("Where the key goes. Whoever has this file can sign: keep it on one machine, with a copy locked away.")]
        public string Output { get; init; } = "";
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (File.Exists(settings.Output))
            return ErrorOutput.Plainly($"{settings.Output} is there already; a key is never overwritten");
        var read = SigningKey.New(settings.Name, settings.Role, settings.Output);
        if (read is not Read<SigningKey>.Usable { Value: var made })
            return ErrorOutput.Plainly(((Read<SigningKey>.Refused)read).Refusals[0].Reason);
        using var key = made;
        try
        {
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            using var file = new FileStream(settings.Output, options);
            file.Write(Encoding.UTF8.GetBytes(key.Write()));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return ErrorOutput.Plainly($"{settings.Output} can't be written: {e.Message}");
        }

        ErrorOutput.Say($"{settings.Output}: a secret key. Whoever has it can sign as {key.Code.Name}.");
        Keys.Show(key.Code);
        return 0;
    }
}

internal sealed class KeysShowCommand : Command<KeysShowCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("A signing key, or an issuer's code.")]
        public string File { get; init; } = "";

        [CommandOption("--qr <FILE>")]
        [Description("Draw the code as a QR code too (SVG).")]
        public string? Qr { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Files.Read(settings.File) is not Read<ReadOnlyMemory<byte>>.Usable { Value: var bytes })
            return ErrorOutput.Of(((Read<ReadOnlyMemory<byte>>.Refused)Files.Read(settings.File)).Refusals);
        // Only the code above the private key is read here, so that showing it needs no secret.
        var at = bytes.Span.IndexOf("-----BEGIN"u8);
        var read = IssuerCode.Read(at < 0 ? bytes.Span : bytes.Span[..at], settings.File);
        if (read is not Read<IssuerCode>.Usable { Value: var code })
            return ErrorOutput.Of(((Read<IssuerCode>.Refused)read).Refusals);
        Keys.Show(code);
        if (settings.Qr is not { } to)
            return 0;
        var picture = QrPicture.Of(Encoding.UTF8.GetString(code.Write()), robust: true);
        return Keys.Write(
            to,
            $"""
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {picture.Side} {picture.Side}"><rect width="100%" height="100%" fill="#fff"/><path d="{picture.Path()}"/></svg>

            """
        );
    }
}

internal sealed class KeysRotateCommand : Command<KeysRotateCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<OLD>")]
        [Description("The signing key that is trusted so far.")]
        public string Old { get; init; } = "";

        [CommandArgument(1, "<NEW>")]
        [Description("The issuer's code of the new key, or the new key itself.")]
        public string New { get; init; } = "";

        [CommandOption("-o|--output <FILE>", isRequired: true)]
        [Description("Where the rotation goes, which is given out as the code was.")]
        public string Output { get; init; } = "";
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Trust.KeyOf(settings.Old) is not { } opened)
            return ErrorOutput.Unusable;
        using var old = opened;
        if (Files.Read(settings.New) is not Read<ReadOnlyMemory<byte>>.Usable { Value: var bytes })
            return ErrorOutput.Of(((Read<ReadOnlyMemory<byte>>.Refused)Files.Read(settings.New)).Refusals);
        var at = bytes.Span.IndexOf("-----BEGIN"u8);
        var read = IssuerCode.Read(at < 0 ? bytes.Span : bytes.Span[..at], settings.New);
        return read is Read<IssuerCode>.Usable { Value: var code }
            ? Keys.Write(settings.Output, Encoding.UTF8.GetString(old.Rotate(code).Write()))
            : ErrorOutput.Of(((Read<IssuerCode>.Refused)read).Refusals);
    }
}

internal sealed class KeysTrustCommand : Command<KeysTrustCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("An issuer's code, or a rotation.")]
        public string File { get; init; } = "";

        [CommandOption("--digits <DIGITS>")]
        [Description("For a code: the twenty digits as the issuer read them out, spaces or not.")]
        public string? Digits { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Files.Read(settings.File) is not Read<ReadOnlyMemory<byte>>.Usable { Value: var bytes })
            return ErrorOutput.Of(((Read<ReadOnlyMemory<byte>>.Refused)Files.Read(settings.File)).Refusals);
        if (Trust.Kept() is not Read<Keyring>.Usable { Value: var kept })
            return ErrorOutput.Of(((Read<Keyring>.Refused)Trust.Kept()).Refusals);
        return bytes.Span.StartsWith(Encoding.UTF8.GetBytes(KeyRotation.First))
            ? Rotate(kept, bytes, settings.File)
            : Pin(kept, bytes, settings);
    }

    private static int Pin(Keyring kept, ReadOnlyMemory<byte> bytes, Settings settings)
    {
        var read = IssuerCode.Read(bytes.Span, settings.File);
        if (read is not Read<IssuerCode>.Usable { Value: var code })
            return ErrorOutput.Of(((Read<IssuerCode>.Refused)read).Refusals);
        if (settings.Digits is not { } said)
            return ErrorOutput.Plainly("have the issuer read out the twenty digits of its code, and give what you hear with --digits");
        return said.Replace(" ", "", StringComparison.Ordinal) == code.Digits.Replace(" ", "", StringComparison.Ordinal)
            ? Keep(kept.Pin(code), code)
            : ErrorOutput.Plainly("these are not the digits of this code: it may be somebody else's. Nothing is trusted");
    }

    private static int Rotate(Keyring kept, ReadOnlyMemory<byte> bytes, string file)
    {
        var read = KeyRotation.Read(bytes.Span, file);
        if (read is not Read<KeyRotation>.Usable { Value: var rotation })
            return ErrorOutput.Of(((Read<KeyRotation>.Refused)read).Refusals);
        var rotated = kept.RotateAsync(rotation, file, FrameworkSignatures.CheckAsync).AsTask().GetAwaiter().GetResult();
        return rotated is Read<Keyring>.Usable { Value: var keyring }
            ? Keep(keyring, rotation.To)
            : ErrorOutput.Of(((Read<Keyring>.Refused)rotated).Refusals);
    }

    private static int Keep(Keyring keyring, IssuerCode code)
    {
        if (Trust.Keep(keyring) is { } fault)
            return ErrorOutput.Plainly(fault);
        Console.Out.WriteLine($"trusted: {code.Name}, {code.Role}, {code.Digits}");
        return 0;
    }
}

internal sealed class KeysListCommand : Command<EmptyCommandSettings>
{
    public override int Execute(CommandContext context, EmptyCommandSettings settings, CancellationToken cancellationToken)
    {
        if (Trust.Kept() is not Read<Keyring>.Usable { Value: var kept })
            return ErrorOutput.Of(((Read<Keyring>.Refused)Trust.Kept()).Refusals);
        if (kept.Issuers.IsEmpty)
            Console.Out.WriteLine("no issuer is trusted here");
        foreach (var issuer in kept.Issuers)
            Console.Out.WriteLine(
                $"{issuer.Code.Digits}  {issuer.Code.Name}, "
                    + $"{issuer.Code.Role}{(issuer.Serial > 0 ? $"; newest imported: serial {issuer.Serial}" : "")}"
            );
        return 0;
    }
}

internal sealed class KeysDropCommand : Command<KeysDropCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<DIGITS>")]
        [Description("The issuer's digits, as farhold keys list prints them, in quotes.")]
        public string Digits { get; init; } = "";
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Trust.Kept() is not Read<Keyring>.Usable { Value: var kept })
            return ErrorOutput.Of(((Read<Keyring>.Refused)Trust.Kept()).Refusals);
        if (kept.Named(settings.Digits) is not { } issuer)
            return ErrorOutput.Plainly($"nobody with the digits {settings.Digits} is trusted here");
        if (Trust.Keep(kept.Without(settings.Digits)) is { } fault)
            return ErrorOutput.Plainly(fault);
        Console.Out.WriteLine($"trusted no more: {issuer.Code.Name}");
        return 0;
    }
}
