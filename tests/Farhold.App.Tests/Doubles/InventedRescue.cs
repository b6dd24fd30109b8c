using System.Text;
using Farhold.Signing;

namespace Farhold.App.Tests.Doubles;

/// <summary>An invented service with a key made for this run, which signs local protocols.</summary>
internal sealed class InventedRescue
{
    public static readonly Instant From = Instant.FromUtc(2031, 1, 1, 0, 0);

    public static readonly Instant Until = Instant.FromUtc(2031, 5, 10, 0, 0);

    public SigningKey Key { get; } =
        Assert.IsType<Read<SigningKey>.Usable>(SigningKey.New("Vesterdal rescue (invented)", "medical director", "key")).Value;

    public string Code => Encoding.UTF8.GetString(Key.Code.Write());

    public byte[] Sign(string text, long serial = 1) =>
        Key.Sign(
                new(Key.Code.Digits, $"{ShippedProtocol.Protocol.Id} {ShippedProtocol.Protocol.Version}", serial, From, Until),
                Encoding.UTF8.GetBytes(text)
            )
            .Write();

    /// <summary>Trusts this service on the phone, and takes and accepts what it signed.</summary>
    public async Task GiveAsync(string text, TrustedIssuers issuers, LocalProtocolKeeper keeper)
    {
        await issuers.TakeAsync(Code);
        issuers.Trust();
        await keeper.OfferAsync([("x.json", Encoding.UTF8.GetBytes(text)), ("x.json.sig", Sign(text))]);
        Assert.Empty(keeper.Refusals);
        keeper.Accept();
    }
}
