using System.Collections.Immutable;
using System.Text;

namespace Farhold.App.Settings;

/// <summary>The issuers trusted on this phone, and what was seen of each.</summary>
public sealed class TrustedIssuers
{
    private const string Key = "issuers";

    private readonly IPhone phone;
    private readonly SignatureCheck check;

    public TrustedIssuers(IPhone phone, SignatureCheck check)
    {
        (this.phone, this.check) = (phone, check);
        if (phone.Get(Key) is not { Length: > 0 } kept)
            return;
        var read = Keyring.Read(Encoding.UTF8.GetBytes(kept), Key);
        (Keyring, Spoilt) = read is Read<Keyring>.Usable usable ? (usable.Value, false) : (Keyring.Empty, true);
    }

    /// <summary>Somebody is trusted no more, or another key is.</summary>
    public event Action? Changed;

    public Keyring Keyring { get; private set; } = Keyring.Empty;

    /// <summary>What was kept can't be read: nobody is trusted, and what was seen is forgotten.</summary>
    public bool Spoilt { get; }

    /// <summary>A code whose digits are not compared yet.</summary>
    public IssuerCode? Offered { get; private set; }

    public ImmutableArray<Refusal> Refusals { get; private set; } = [];

    /// <summary>Takes a code, to be compared, or a rotation, which the old key vouches for.</summary>
    public async Task TakeAsync(string text)
    {
        var utf8 = Encoding.UTF8.GetBytes(text.Trim() + "\n");
        (Offered, Refusals) = (null, []);
        if (utf8.AsSpan().StartsWith(Encoding.UTF8.GetBytes(KeyRotation.First)))
            await RotateAsync(utf8);
        else if (IssuerCode.Read(utf8, "code") is Read<IssuerCode>.Usable { Value: var code })
            Offered = code;
        else
            Refusals = ((Read<IssuerCode>.Refused)IssuerCode.Read(utf8, "code")).Refusals;
    }

    /// <summary>A person compared the digits, and they are the same.</summary>
    public void Trust()
    {
        if (Offered is not { } code)
            return;
        Offered = null;
        Use(Keyring.Pin(code));
    }

    public void Leave() => Offered = null;

    public void Drop(string digits) => Use(Keyring.Without(digits));

    public void Seen(Proof proof, ReadOnlySpan<byte> file)
    {
        Keyring = Keyring.Seen(proof, file);
        Keep();
    }

    private async Task RotateAsync(byte[] utf8)
    {
        if (KeyRotation.Read(utf8, "rotation") is not Read<KeyRotation>.Usable { Value: var rotation })
        {
            Refusals = ((Read<KeyRotation>.Refused)KeyRotation.Read(utf8, "rotation")).Refusals;
            return;
        }

        switch (await Keyring.RotateAsync(rotation, "rotation", check))
        {
            case Read<Keyring>.Usable usable:
                Use(usable.Value);
                break;
            case Read<Keyring>.Refused refused:
                Refusals = refused.Refusals;
                break;
        }
    }

    private void Use(Keyring keyring)
    {
        Keyring = keyring;
        Keep();
        Changed?.Invoke();
    }

    private void Keep() => phone.Set(Key, Encoding.UTF8.GetString(Keyring.Write()));
}
