using System.Text;
using Farhold.Signing;
using NodaTime;

namespace Farhold.Cli;

/// <summary>The issuers trusted by this user, kept in a file of their own, and what stands behind a local protocol by them.</summary>
internal static class Trust
{
    /// <summary>By the XDG base directory specification; relative folders are ignored, as it says.</summary>
    public static string KeptIn { get; } =
        Path.Combine(
            Environment.GetEnvironmentVariable("XDG_CONFIG_HOME") is { Length: > 0 } named && Path.IsPathRooted(named)
                ? named
                : Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData, Environment.SpecialFolderOption.DoNotVerify),
            "farhold",
            "issuers.json"
        );

    public static Read<Keyring> Kept() =>
        !File.Exists(KeptIn) ? new Read<Keyring>.Usable(Keyring.Empty)
        : Files.Read(KeptIn) is Read<ReadOnlyMemory<byte>>.Usable { Value: var bytes } ? Keyring.Read(bytes, KeptIn)
        : new Read<Keyring>.Refused(((Read<ReadOnlyMemory<byte>>.Refused)Files.Read(KeptIn)).Refusals);

    /// <returns>Why it can't be kept, or null.</returns>
    public static string? Keep(Keyring keyring)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(KeptIn)!);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"{KeptIn} can't be written: {e.Message}";
        }

        return Files.Write(KeptIn, keyring.Write());
    }

    /// <summary>Reads a local protocol by the signature beside it, if there is one.</summary>
    /// <param name="issuers">Files with codes that are trusted for this run.</param>
    public static Read<Rulebook> Local(string path, IReadOnlyList<string> issuers, Rulebook under, Instant at)
    {
        return Files.Read(path) switch
        {
            Read<ReadOnlyMemory<byte>>.Usable(var file) => Local(path, file, issuers, under, at),
            Read<ReadOnlyMemory<byte>>.Refused(var why) => new Read<Rulebook>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    public static Read<Rulebook> Local(string path, ReadOnlyMemory<byte> file, IReadOnlyList<string> issuers, Rulebook under, Instant at)
    {
        var beside = path + LocalSignature.Ending;
        if (path == Files.StandardInput || !File.Exists(beside))
            return Laid(file, null, path, Keyring.Empty, under, at).Read;
        if (Files.Read(beside) is not Read<ReadOnlyMemory<byte>>.Usable { Value: var signature })
            return new Read<Rulebook>.Refused(((Read<ReadOnlyMemory<byte>>.Refused)Files.Read(beside)).Refusals);
        if (Kept() is not Read<Keyring>.Usable { Value: var kept })
            return new Read<Rulebook>.Refused(((Read<Keyring>.Refused)Kept()).Refusals);
        var keyring = kept;
        foreach (var issuer in issuers)
        {
            if (CodeOf(issuer) is not Read<IssuerCode>.Usable { Value: var code })
                return new Read<Rulebook>.Refused(((Read<IssuerCode>.Refused)CodeOf(issuer)).Refusals);
            keyring = keyring.Pin(code);
        }

        var (read, proof) = Laid(file, signature, path, keyring, under, at);
        if (read is Read<Rulebook>.Usable && kept.Seen(proof!, file.Span) is var seen && seen != kept && Keep(seen) is { } fault)
            ErrorOutput.Say($"{fault} An older file would not be noticed later.");
        return read;
    }

    private static (Read<Rulebook> Read, Proof? Proof) Laid(
        ReadOnlyMemory<byte> file,
        ReadOnlyMemory<byte>? signature,
        string path,
        Keyring keyring,
        Rulebook under,
        Instant at
    )
    {
        var proving = LocalRules.OfAsync(file, signature, path, keyring, under, at, FrameworkSignatures.CheckAsync);
        return proving.AsTask().GetAwaiter().GetResult() switch
        {
            Read<LocalRules>.Usable(var local) => (local.At(at), local.Proof),
            Read<LocalRules>.Refused(var why) => (new Read<Rulebook>.Refused(why), null),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    public static Read<IssuerCode> CodeOf(string path) =>
        Files.Read(path) switch
        {
            Read<ReadOnlyMemory<byte>>.Usable(var bytes) => IssuerCode.Read(bytes.Span, path),
            Read<ReadOnlyMemory<byte>>.Refused(var why) => new Read<IssuerCode>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>The signing key in a file, or null with the refusals said.</summary>
    public static SigningKey? KeyOf(string path)
    {
        var read = Files.Read(path) is Read<ReadOnlyMemory<byte>>.Usable { Value: var bytes }
            ? SigningKey.Read(Encoding.UTF8.GetString(bytes.Span), path)
            : new Read<SigningKey>.Refused(((Read<ReadOnlyMemory<byte>>.Refused)Files.Read(path)).Refusals);
        if (read is Read<SigningKey>.Usable { Value: var key })
            return key;
        ErrorOutput.Of(((Read<SigningKey>.Refused)read).Refusals);
        return null;
    }
}
