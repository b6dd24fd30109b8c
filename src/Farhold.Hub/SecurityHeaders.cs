using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Farhold.Hub;

internal static partial class SecurityHeaders
{
    public static void UseSecurityHeaders(this WebApplication app, HubOptions options) => app.Use((context, next) =>
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy(File.ReadAllText(Path.Combine(options.AppFolder, "index.html")));
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Permissions-Policy"] = "geolocation=(self), camera=(self), microphone=(), payment=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        return next(context);
    });

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
