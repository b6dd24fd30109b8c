using System.Collections.Immutable;

namespace Farhold.App.Browser;

/// <summary>The copy of the app on this phone.</summary>
public interface IOfflineCopy
{
    /// <summary>The copy has become whole, or a newer build is ready.</summary>
    event Action? Changed;

    Task<CopyState> StateAsync();

    /// <summary>Asks the network for a newer build; without network nothing happens.</summary>
    Task LookAsync();

    /// <summary>Starts the newer build. Only where <see cref="UpdateRule"/> allows it.</summary>
    Task ChangeAsync();

    Task<CopyCheck> VerifyAsync();
}

/// <param name="Able">The browser can keep a copy at all.</param>
/// <param name="Serving">Build that is started from this phone; empty while there is no copy yet.</param>
/// <param name="Ready">Newer build that waits to be started; empty if there is none.</param>
/// <param name="Tabs">How many tabs of this phone show the app.</param>
/// <param name="Foreign">What the address offers now is not signed by a key this phone knows.</param>
public sealed record CopyState(bool Able, string Serving, string Ready, bool Installing, int Tabs, bool Foreign = false);

/// <param name="Files">0: there is no copy to check.</param>
/// <param name="Signed">Fingerprint of the keys whose signature this phone asks for; empty where it knows none.</param>
public sealed record CopyCheck(int Files, ImmutableArray<string> Bad, string Signed = "");
