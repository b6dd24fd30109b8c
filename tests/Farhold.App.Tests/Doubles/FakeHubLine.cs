using System.Collections.Immutable;
using System.Text;

namespace Farhold.App.Tests.Doubles;

/// <summary>A hub that answers as it is told; what a real one does is asked of one in Farhold.Hub.Tests.</summary>
internal sealed class FakeHubLine(MemoryLogStore store) : IHubLine
{
    private PhoneKey? key;

    public event Action? Woken;

    public List<(string Method, string Path, string Body)> Asked { get; } = [];

    /// <summary>By method and path; what is not here is not reached.</summary>
    public Func<string, string, ReadOnlyMemory<byte>, HubAnswer?> Answer { get; set; } = (_, _, _) => null;

    public bool IsOnline { get; set; } = true;

    public Action<string, string>? Listener { get; private set; }

    public static HubAnswer Good(string body) => new(200, 0, "", "", Encoding.UTF8.GetBytes(body));

    public static HubAnswer Refused(int status, string code) => new(status, 0, code, code, default);

    public void Wake() => Woken?.Invoke();

    public Task<PhoneKey?> KeyAsync() => Task.FromResult(key);

    public Task<PhoneKey?> MakeKeyAsync() => Task.FromResult<PhoneKey?>(key ??= new("BA==", new string('a', 64)));

    public Task ForgetKeyAsync()
    {
        key = null;
        return Task.CompletedTask;
    }

    public Task<HubAnswer> AskAsync(string method, string path, string type = "", ReadOnlyMemory<byte> body = default)
    {
        Asked.Add((method, path, Encoding.UTF8.GetString(body.Span)));
        return Task.FromResult(Answer(method, path, body) ?? new HubAnswer(0, 0, "", "", default));
    }

    public async Task<ImmutableArray<ReadOnlyMemory<byte>>> LinesAsync(string casualty) =>
        [.. (await store.ReadAsync(casualty)).Select(l => (ReadOnlyMemory<byte>)Encoding.UTF8.GetBytes(l.Text))];

    public void Listen(string path, Action<string, string> callback) => Listener = callback;

    public void StopListening() => Listener = null;

    public string Invitation() => "";

    public Task<bool> LoadAsync() => Task.FromResult(true);
}
