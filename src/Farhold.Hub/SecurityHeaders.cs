using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Farhold.Hub;

internal static partial class SecurityHeaders
{
    /// <summary>What the app uses of what a page may ask the browser for; a test compares this with its scripts.</summary>
    public static readonly string[] Used =
    [
        "camera",
        "screen-wake-lock",
        "web-share",
        "clipboard-write",
        "battery",
        "autoplay",
        "geolocation",
    ];

    /// <summary>What it does not use, off, so that a script that got in could not ask for it either.</summary>
    public static readonly string[] Unused =
    [
        "accelerometer",
        "ambient-light-sensor",
        "bluetooth",
        "browsing-topics",
        "clipboard-read",
        "compute-pressure",
        "cross-origin-isolated",
        "display-capture",
        "encrypted-media",
        "fullscreen",
        "gamepad",
        "gyroscope",
        "hid",
        "identity-credentials-get",
        "idle-detection",
        "local-fonts",
        "magnetometer",
        "microphone",
        "midi",
        "otp-credentials",
        "payment",
        "picture-in-picture",
        "publickey-credentials-create",
        "publickey-credentials-get",
        "serial",
        "storage-access",
        "sync-xhr",
        "usb",
        "window-management",
        "xr-spatial-tracking",
    ];

    private static readonly string Permissions = string.Join(", ", [.. Used.Select(u => u + "=(self)"), .. Unused.Select(u => u + "=()")]);

    public static void UseSecurityHeaders(this WebApplication app, HubOptions options) =>
        app.Use(
            (context, next) =>
            {
                // Put last, so that an answer begun anew after a failure has them as well.
                context.Response.OnStarting(() =>
                {
                    foreach (var (name, value) in For(options.AppFolder))
                        context.Response.Headers[name] = value;
                    return Task.CompletedTask;
                });
                return next(context);
            }
        );

    /// <summary>What every answer carries; whoever else serves the app has to send the same (<see cref="StaticHost"/>).</summary>
    public static (string Name, string Value)[] For(string appFolder) =>
        [
            ("Content-Security-Policy", Policy(File.ReadAllText(Path.Combine(appFolder, "index.html")))),
            ("X-Content-Type-Options", "nosniff"),
            ("Referrer-Policy", "no-referrer"),
            ("Permissions-Policy", Permissions),
            ("Cross-Origin-Opener-Policy", "same-origin"),
            ("Cross-Origin-Resource-Policy", "same-origin"),
        ];

    /// <summary>What a page may load. Only the import map is inline, so only its hash is let through.</summary>
    /// <remarks>Source: learn.microsoft.com/aspnet/core/blazor/security/content-security-policy.</remarks>
    public static string Policy(string indexHtml)
    {
        var map = ImportMap().Match(indexHtml).Groups["map"].Value;
        var hash = map.Length == 0 ? "" : $" 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(map)))}'";
        return $"default-src 'self'; script-src 'self' 'wasm-unsafe-eval'{hash}; style-src 'self'; "
            + "img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; object-src 'none'; base-uri 'self'; "
            + "frame-ancestors 'none'; form-action 'self'";
    }

    [GeneratedRegex("<script type=\"importmap\">(?<map>.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex ImportMap();
}
