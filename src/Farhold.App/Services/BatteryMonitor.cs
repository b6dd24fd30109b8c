using System.Collections.Immutable;
using System.Globalization;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>Looks at the battery every few minutes and keeps what it saw since the last charge.</summary>
public sealed class BatteryMonitor : IDisposable
{
    private static readonly Duration Pace = Duration.FromMinutes(5);

    /// <summary>Half a day of looks: what was used before says little of now (design).</summary>
    private const int Most = 144;

    private const string Key = "battery";

    private readonly IBattery battery;
    private readonly IPhone phone;
    private readonly Ticker ticker;
    private readonly Background background;
    private Instant? looked;

    public BatteryMonitor(IBattery battery, IPhone phone, Ticker ticker, Background background)
    {
        (this.battery, this.phone, this.ticker, this.background) = (battery, phone, ticker, background);
        Levels = Read(phone.Get(Key));
        ticker.Ticked += Tick;
    }

    public event Action? Changed;

    /// <summary>Whether the browser tells at all; null before the first look.</summary>
    public bool? Tells { get; private set; }

    public BatteryNow? Now { get; private set; }

    public ImmutableArray<BatteryLevel> Levels { get; private set; }

    /// <summary>Null while charging, or not told yet.</summary>
    public Between? HoursLeft => Now is { Charging: false } ? BatteryDrain.HoursLeft(Levels) : null;

    public async Task LookAsync()
    {
        looked = ticker.Now;
        Now = await battery.LookAsync();
        Tells = Now is not null;
        if (Now is { } now)
        {
            Levels = now.Charging ? [] : [.. Levels.Add(new(ticker.Now, now.Level)).TakeLast(Most)];
            phone.Set(
                Key,
                string.Join(
                    ' ',
                    Levels.Select(l => string.Create(CultureInfo.InvariantCulture, $"{l.At.ToUnixTimeSeconds()}:{l.Level:0.##}"))
                )
            );
        }

        Changed?.Invoke();
    }

    public void Dispose() => ticker.Ticked -= Tick;

    private void Tick()
    {
        if (looked is not { } last || ticker.Now - last >= Pace || ticker.Now < last)
            background.Start(LookAsync);
    }

    private static ImmutableArray<BatteryLevel> Read(string text) =>
        [
            .. from pair in text.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            let parts = pair.Split(':')
            where parts.Length == 2
            let at = long.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var seconds) ? seconds : -1
            let level = double.TryParse(parts[1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var l) ? l : -1
            where at is >= 0 and < 10_000_000_000 && level is >= 0 and <= 1
            select new BatteryLevel(Instant.FromUnixTimeSeconds(at), level),
        ];
}
