using Microsoft.Playwright;

namespace Farhold.Hub.Tests.Harness;

internal static class Kinds
{
    public static BrowserNewContextOptions Phone =>
        new()
        {
            ViewportSize = new() { Width = 360, Height = 740 },
            HasTouch = true,
            IsMobile = true,
            DeviceScaleFactor = 2,
            Locale = "en-NZ",
            TimezoneId = "Pacific/Auckland",
            AcceptDownloads = true,
        };

    public static BrowserNewContextOptions Tablet =>
        new(Phone)
        {
            ViewportSize = new() { Width = 1024, Height = 768 },
            IsMobile = false,
            DeviceScaleFactor = 1,
        };
}
