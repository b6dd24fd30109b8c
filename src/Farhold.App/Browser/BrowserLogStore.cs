using System.Collections.Immutable;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Farhold.App.Browser;

/// <summary>The record in the browser's database, through store.js.</summary>
[SupportedOSPlatform("browser")]
internal sealed class BrowserLogStore : ILogStore
{
    private BrowserLogStore(string device) => Device = device;

    public event Action<string>? ChangedElsewhere;

    public string Device { get; }

    public bool AlsoOpenElsewhere { get; private set; }

    public static async Task<BrowserLogStore> StartAsync(string baseAddress)
    {
        await JSHost.ImportAsync(StoreScript.Module, baseAddress + "store.js");
        var store = new BrowserLogStore(await StoreScript.DeviceAsync());
        StoreScript.OnNews(casualty => store.ChangedElsewhere?.Invoke(casualty));
        return store;
    }

    public string NewCasualtyId() => StoreScript.ShortId(8);

    public string NewIdentity() => StoreScript.Identity();

    public async Task<ImmutableArray<CasualtyHead>> ListAsync() => StoreJson.Heads(await StoreScript.ListAsync());

    public async Task<ImmutableArray<StoredLine>> ReadAsync(string casualty) => StoreJson.Lines(await StoreScript.LinesAsync(casualty));

    public async Task<Appended> AppendAsync(string casualty, string body, CasualtyHead? opens = null) =>
        StoreJson.Appended(
            casualty,
            body,
            opens,
            await StoreScript.AppendAsync(casualty, Device, body, opens is null ? null : StoreJson.Head(opens))
        );

    public async Task<ImmutableArray<Appended.NotStored>> ReplayAsync() => StoreJson.StillNotStored(await StoreScript.ReplayAsync());

    public async Task<MergeCount> MergeAsync(CasualtyHead into, ImmutableArray<IncomingLine> lines, string source) =>
        StoreJson.Merged(await StoreScript.MergeAsync(into.Id, StoreJson.Head(into), StoreJson.Incoming(lines), source));

    public async Task<ImmutableArray<TakenBatch>> BatchesAsync(string casualty) =>
        StoreJson.Batches(await StoreScript.BatchesAsync(casualty));

    public Task TakeBackAsync(string casualty, string batch) => StoreScript.TakeBackAsync(casualty, batch);

    public Task EraseAsync(string casualty) => StoreScript.EraseAsync(casualty);

    public Task EraseAllAsync() => StoreScript.EraseAllAsync();

    public Task ExportAsync(string casualty, string fileName) => StoreScript.DownloadAsync(casualty, fileName);

    public async Task<StorageHealth> HealthAsync(bool askToPersist) => StoreJson.Health(await StoreScript.HealthAsync(askToPersist));

    public void AcceptLoss() => StoreScript.ForgetCanary();

    public void Watch(string? casualty)
    {
        AlsoOpenElsewhere = false;
        StoreScript.Watch(
            casualty ?? "",
            place =>
            {
                var also = place == "second";
                if (also == AlsoOpenElsewhere)
                    return;
                AlsoOpenElsewhere = also;
                ChangedElsewhere?.Invoke(casualty ?? "");
            }
        );
    }
}
