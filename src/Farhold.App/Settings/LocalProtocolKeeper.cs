using System.Collections.Immutable;
using System.Text;
using Farhold.App.Care;
using Farhold.App.Phone;

namespace Farhold.App.Settings;

/// <summary>The local protocol kept on this phone, laid over the shipped one. Refused, it changes nothing.</summary>
public sealed class LocalProtocolKeeper(IPhone phone, CareDesk desk)
{
    private const string TextKey = "local-protocol";
    private const string NameKey = "local-protocol-name";

    /// <summary>Why the file kept, or the last one tried, is not in force.</summary>
    public ImmutableArray<Refusal> Refusals { get; private set; } = [];

    /// <summary>False if a usable protocol could not be kept: it is in force only until the app is closed.</summary>
    public bool Kept { get; private set; } = true;

    public LocalProtocol? Local => desk.Protocol.Local;

    /// <summary>Takes up what was kept. A newer shipped protocol may refuse what an older one took.</summary>
    public void Start()
    {
        if (phone.Get(TextKey) is { Length: > 0 } text)
            _ = Use(Encoding.UTF8.GetBytes(text), phone.Get(NameKey));
    }

    /// <returns>Whether it is in force now.</returns>
    public bool Take(ReadOnlyMemory<byte> utf8, string fileName)
    {
        if (!Use(utf8, fileName))
            return false;
        Kept = phone.Set(TextKey, Encoding.UTF8.GetString(utf8.Span)) && phone.Set(NameKey, fileName);
        return true;
    }

    public void Remove()
    {
        phone.Set(TextKey, "");
        phone.Set(NameKey, "");
        (Refusals, Kept) = ([], true);
        desk.Use(ShippedProtocol.Protocol);
    }

    private bool Use(ReadOnlyMemory<byte> utf8, string fileName)
    {
        switch (LocalReader.Read(utf8, fileName, ShippedProtocol.Protocol))
        {
            case Read<Protocol>.Usable usable:
                Refusals = [];
                desk.Use(usable.Value);
                return true;
            case Read<Protocol>.Refused refused:
                Refusals = refused.Refusals;
                return false;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }
}
