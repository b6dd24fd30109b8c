using System.Collections.Immutable;
using System.Text;
using NodaTime;

namespace Farhold.App.Settings;

/// <summary>The local protocol kept on this phone: checked, shown with all that differs, and laid over the shipped one on a yes.</summary>
public sealed class LocalProtocolKeeper
{
    private const string TextKey = "local-protocol";
    private const string NameKey = "local-protocol-name";
    private const string SignatureKey = "local-protocol-signature";

    private readonly IPhone phone;
    private readonly CareDesk desk;
    private readonly Logbook logbook;
    private readonly RulesInForce rules;
    private readonly TrustedIssuers issuers;
    private readonly SignatureCheck check;
    private readonly Background background;
    private readonly Rulebook shipped;

    public LocalProtocolKeeper(
        IPhone phone,
        CareDesk desk,
        Logbook logbook,
        RulesInForce rules,
        TrustedIssuers issuers,
        SignatureCheck check,
        Background background,
        Rulebook shipped
    )
    {
        (this.phone, this.desk, this.logbook, this.rules) = (phone, desk, logbook, rules);
        (this.issuers, this.check, this.background, this.shipped) = (issuers, check, background, shipped);
        issuers.Changed += Again;
    }

    /// <summary>Why the file kept, or the last one tried, is not in force.</summary>
    public ImmutableArray<Refusal> Refusals { get; private set; } = [];

    /// <summary>False if a usable protocol could not be kept: it is in force only until the app is closed.</summary>
    public bool Kept { get; private set; } = true;

    /// <summary>Checked and readable, and waiting for a yes to all that differs.</summary>
    public LocalRules? Offered { get; private set; }

    /// <summary>Refused for want of a proof, but readable: what an emergency may take.</summary>
    public LocalRules? Unproven { get; private set; }

    public KeptEmergency Emergency => rules.Emergency;

    public LocalProtocol? Local => rules.Local?.LaidAt(desk.Now)?.Protocol.Local;

    /// <summary>A local protocol is kept here, but is not in force: it was refused when it was checked again.</summary>
    public bool IsOut => rules.Local is null && phone.Get(TextKey).Length > 0;

    public Instant Now => desk.Now;

    /// <summary>Takes up what was kept, if it still holds: keys, the shipped protocol and time may have changed since.</summary>
    public async Task StartAsync()
    {
        rules.Local = null;
        if (phone.Get(TextKey) is { Length: > 0 } text)
        {
            var signature = phone.Get(SignatureKey);
            var read = await LocalRules.OfAsync(
                Encoding.UTF8.GetBytes(text),
                signature.Length > 0 ? Encoding.UTF8.GetBytes(signature) : (ReadOnlyMemory<byte>?)null,
                phone.Get(NameKey),
                issuers.Keyring,
                shipped,
                Now,
                check
            );
            (Refusals, var file) = Told(read);
            if (Refusals.IsEmpty)
                rules.Local = file;
        }

        desk.JudgeAgain();
    }

    /// <summary>Checks files: a local protocol, and the signature beside it if there is one. Nothing is in force before a yes.</summary>
    public async Task OfferAsync(IEnumerable<(string Name, ReadOnlyMemory<byte> Utf8)> files)
    {
        var chosen = files.ToArray();
        var signatures = chosen.Where(f => LocalSignature.IsOne(f.Utf8.Span)).ToArray();
        var texts = chosen.Except(signatures).ToArray();
        (Offered, Unproven, Refusals) = (null, null, []);
        if (texts is not [var (name, utf8)] || signatures.Length > 1)
        {
            Refusals =
            [
                new(
                    chosen.FirstOrDefault().Name ?? "",
                    1,
                    1,
                    "choose one local protocol, and together with it its signature, which ends in .sig"
                ),
            ];
            return;
        }

        var read = await LocalRules.OfAsync(
            utf8,
            signatures is [var s] ? s.Utf8 : (ReadOnlyMemory<byte>?)null,
            name,
            issuers.Keyring,
            shipped,
            Now,
            check
        );
        (Refusals, var file) = Told(read);
        if (Refusals.IsEmpty)
            Offered = file;
        else if (new LocalRules(utf8, null, name, Proof.Emergency(Now), shipped) is var unproven && unproven.LaidAt(Now) is not null)
            Unproven = unproven;
    }

    /// <summary>A person went through what differs, and said yes.</summary>
    public void Accept()
    {
        if (Offered is not { } file)
            return;
        (rules.Local, Offered) = (file, null);
        issuers.Seen(file.Proof, file.Utf8.Span);
        Kept =
            phone.Set(TextKey, Encoding.UTF8.GetString(file.Utf8.Span))
            && phone.Set(NameKey, file.Name)
            && phone.Set(SignatureKey, file.Signature is { } signature ? Encoding.UTF8.GetString(signature.Span) : "");
        desk.JudgeAgain();
    }

    public void Decline() => (Offered, Unproven, Refusals) = (null, null, []);

    /// <summary>Uses what nobody has proven for one casualty and twelve hours, and writes into its record why.</summary>
    public async Task<bool> UseUnprovenAsync(CasualtyHead casualty, string reason)
    {
        if (Unproven is not { } file || reason.Trim().Length < KeptEmergency.ShortestReason)
            return false;
        Unproven = null;
        Refusals = [];
        Emergency.Begin(file, casualty.Id, Now);
        var laid = Emergency.Of(casualty.Id, Now);
        if (laid is not null && await logbook.WriteAsync(casualty, RulesWords.Stated(laid.Protocol, reason.Trim())) is not Appended.Stored)
        {
            Emergency.End();
            return false;
        }

        desk.JudgeAgain();
        return true;
    }

    public void EndEmergency()
    {
        Emergency.End();
        desk.JudgeAgain();
    }

    public void Remove()
    {
        foreach (var key in new[] { TextKey, NameKey, SignatureKey })
            phone.Set(key, "");
        (Refusals, Kept, rules.Local, Offered, Unproven) = ([], true, null, null, null);
        desk.JudgeAgain();
    }

    private (ImmutableArray<Refusal> Refusals, LocalRules? File) Told(Read<LocalRules> read) =>
        read switch
        {
            Read<LocalRules>.Usable(var file) => (file.RefusalsAt(Now), file),
            Read<LocalRules>.Refused(var why) => (why, null),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private void Again() => background.Start(StartAsync);
}
