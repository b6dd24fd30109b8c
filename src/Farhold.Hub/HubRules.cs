using Farhold.Signing;
using NodaTime;

namespace Farhold.Hub;

/// <summary>What cards are made by: the shipped rules, with a local protocol laid over them where the hub was given one.</summary>
internal sealed class HubRules(Rulebook shipped, LocalRules? local = null)
{
    /// <summary>At each instant anew, since a local protocol has its time. Where it is refused then, nothing stands in for it.</summary>
    public Read<Rulebook> At(Instant now) => local?.At(now) ?? new Read<Rulebook>.Usable(shipped);

    /// <summary>As the options say, or null with the reasons on standard error.</summary>
    public static async Task<HubRules?> ToldAsync(Rulebook shipped, HubOptions options)
    {
        try
        {
            var now = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
            var read = await OfAsync(shipped, options.Local, options.Issuers.IsDefault ? [] : options.Issuers, now);
            if (read is Read<HubRules>.Usable(var rules))
                return rules;
            foreach (var refusal in ((Read<HubRules>.Refused)read).Refusals)
                await Console.Error.WriteLineAsync(Plain.Line(refusal.ToString()));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"The local protocol can't be read: {e.Message}");
        }

        return null;
    }

    /// <param name="path">Of a local protocol, its signature beside it if it has one; null: none.</param>
    /// <param name="issuers">Files with the codes of those who are trusted.</param>
    /// <returns>Refused where the file is not usable now.</returns>
    /// <exception cref="IOException">A file can't be read.</exception>
    public static async Task<Read<HubRules>> OfAsync(Rulebook shipped, string? path, IEnumerable<string> issuers, Instant now)
    {
        if (path is null)
            return new Read<HubRules>.Usable(new(shipped));
        var keyring = Keyring.Empty;
        foreach (var issuer in issuers)
            switch (IssuerCode.Read(await File.ReadAllBytesAsync(issuer), issuer))
            {
                case Read<IssuerCode>.Usable(var code):
                    keyring = keyring.Pin(code);
                    break;
                case Read<IssuerCode>.Refused(var why):
                    return new Read<HubRules>.Refused(why);
            }

        var beside = path + LocalSignature.Ending;
        ReadOnlyMemory<byte>? signature = File.Exists(beside) ? new(await File.ReadAllBytesAsync(beside)) : null;
        return await LocalRules.OfAsync(
            await File.ReadAllBytesAsync(path),
            signature,
            path,
            keyring,
            shipped,
            now,
            FrameworkSignatures.CheckAsync
        ) switch
        {
            Read<LocalRules>.Refused(var why) => new Read<HubRules>.Refused(why),
            Read<LocalRules>.Usable(var laid) => laid.At(now) is Read<Rulebook>.Refused(var why)
                ? new Read<HubRules>.Refused(why)
                : new Read<HubRules>.Usable(new(shipped, laid)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }
}
