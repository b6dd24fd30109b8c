using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Farhold.App.Browser;

/// <summary>wwwroot/store.js; answers are JSON text.</summary>
[SupportedOSPlatform("browser")]
internal static partial class StoreScript
{
    public const string Module = "store";

    [JSImport("device", Module)]
    public static partial Task<string> DeviceAsync();

    [JSImport("shortId", Module)]
    public static partial string ShortId(int length);

    [JSImport("identity", Module)]
    public static partial string Identity();

    [JSImport("list", Module)]
    public static partial Task<string> ListAsync();

    [JSImport("lines", Module)]
    public static partial Task<string> LinesAsync(string casualty);

    [JSImport("rawLines", Module)]
    public static partial Task<string> RawLinesAsync(string casualty);

    [JSImport("append", Module)]
    public static partial Task<string> AppendAsync(string casualty, string device, string body, string? head);

    [JSImport("replay", Module)]
    public static partial Task<string> ReplayAsync();

    [JSImport("merge", Module)]
    public static partial Task<string> MergeAsync(string casualty, string head, string lines, string source);

    [JSImport("batches", Module)]
    public static partial Task<string> BatchesAsync(string casualty);

    [JSImport("takeBack", Module)]
    public static partial Task TakeBackAsync(string casualty, string batch);

    [JSImport("erase", Module)]
    public static partial Task EraseAsync(string casualty);

    [JSImport("eraseAll", Module)]
    public static partial Task EraseAllAsync();

    [JSImport("download", Module)]
    public static partial Task DownloadAsync(string casualty, string fileName);

    [JSImport("health", Module)]
    public static partial Task<string> HealthAsync(bool askToPersist);

    [JSImport("forgetCanary", Module)]
    public static partial void ForgetCanary();

    [JSImport("onNews", Module)]
    public static partial void OnNews([JSMarshalAs<JSType.Function<JSType.String>>] Action<string> callback);

    [JSImport("watch", Module)]
    public static partial void Watch(string casualty, [JSMarshalAs<JSType.Function<JSType.String>>] Action<string> callback);
}
