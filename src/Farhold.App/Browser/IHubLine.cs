using System.Collections.Immutable;

namespace Farhold.App.Browser;

/// <summary>This phone's key: what the hub knows it by.</summary>
/// <param name="Public">A point of P-256, uncompressed, in base64.</param>
/// <param name="Thumb">SHA-256 of it, 64 hexadecimal digits.</param>
public sealed record PhoneKey(string Public, string Thumb);

/// <summary>What the hub answered.</summary>
/// <param name="Status">0: it was not reached.</param>
/// <param name="Wait">Seconds to wait before the next request; 0 where it does not say.</param>
/// <param name="Code">Of a refusal, for programs; empty where there is none.</param>
/// <param name="Said">Of a refusal, for people, in English.</param>
public sealed record HubAnswer(int Status, int Wait, string Code, string Said, ReadOnlyMemory<byte> Body)
{
    public bool IsGood => Status is >= 200 and < 300;

    public bool IsReached => Status != 0;
}

/// <summary>The line to the hub that serves this app; see wwwroot/hub.js.</summary>
public interface IHubLine
{
    /// <summary>The phone may have come back to a network, or to somebody who looks at it.</summary>
    event Action? Woken;

    bool IsOnline { get; }

    /// <summary>Null where none was made, or a rehearsal is on: nothing of that reaches a hub.</summary>
    Task<PhoneKey?> KeyAsync();

    /// <summary>Makes the key where there is none; null where this browser can't keep one.</summary>
    Task<PhoneKey?> MakeKeyAsync();

    Task ForgetKeyAsync();

    /// <summary>A request signed by the key.</summary>
    /// <param name="type">Of the body; empty for none.</param>
    Task<HubAnswer> AskAsync(string method, string path, string type = "", ReadOnlyMemory<byte> body = default);

    /// <summary>Every line of a casualty as it came, those aside too, without ends.</summary>
    Task<ImmutableArray<ReadOnlyMemory<byte>>> LinesAsync(string casualty);

    /// <summary>Reads the hub's stream of events until the next call; <c>ended</c> comes where it ends.</summary>
    void Listen(string path, Action<string, string> callback);

    void StopListening();

    /// <summary>The code of an invitation in the address, which it is taken out of; empty where there is none.</summary>
    string Invitation();

    /// <summary>Brings what two sides need to compare records to the phone; done at once where it is there.</summary>
    /// <returns>False where it can't be had now.</returns>
    Task<bool> LoadAsync();
}
