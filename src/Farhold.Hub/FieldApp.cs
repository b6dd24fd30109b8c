using System.Text.RegularExpressions;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Net.Http.Headers;

namespace Farhold.Hub;

/// <summary>Serves the published app: compressed files as they are, every place of the app as index.html.</summary>
internal static partial class FieldApp
{
    public const string ForGood = "public, max-age=31536000, immutable",
        AskAgain = "no-cache";

    /// <summary>The publisher puts ten characters of the content's hash before the ending, as in dotnet.native.x1y2z3a4b5.wasm.</summary>
    public const string Hashed = @".+\.[a-z0-9]{10}\.(wasm|js|dat)$";

    private static readonly FileExtensionContentTypeProvider Types = new(
        new Dictionary<string, string>(new FileExtensionContentTypeProvider().Mappings, StringComparer.OrdinalIgnoreCase)
        {
            [".dat"] = "application/octet-stream",
            [".webmanifest"] = "application/manifest+json",
        }
    );

    public static void MapFieldApp(this WebApplication app, HubOptions options) =>
        app.MapMethods("/{**path}", ["GET", "HEAD"], (HttpContext context, string? path) => Serve(context, options.AppFolder, path ?? ""));

    public static string CachingOf(string file) => Fingerprinted().IsMatch(file) ? ForGood : AskAgain;

    public static string TypeOf(string file) => Types.TryGetContentType(file, out var type) ? type : "application/octet-stream";

    private static IResult Serve(HttpContext context, string folder, string path)
    {
        var file = Path.GetFullPath(Path.Combine(folder, path));
        if (!file.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal) || !File.Exists(file))
        {
            // An address with a file's ending is a file that is missing; anything else is a place of the app.
            if (Path.HasExtension(path))
                return Results.NotFound();
            file = Path.Combine(folder, "index.html");
        }
        context.Response.Headers.CacheControl = CachingOf(file);
        context.Response.Headers.Vary = HeaderNames.AcceptEncoding;
        return Results.File(
            Encoded(context, file),
            TypeOf(file),
            lastModified: new DateTimeOffset(File.GetLastWriteTimeUtc(file)),
            entityTag: Tag(file)
        );
    }

    private static string Encoded(HttpContext context, string file)
    {
        var accepted = context.Request.GetTypedHeaders().AcceptEncoding;
        foreach (var (name, ending) in new[] { ("br", ".br"), ("gzip", ".gz") })
            if (accepted.Any(a => a.Value == name && a.Quality is not 0) && File.Exists(file + ending))
            {
                context.Response.Headers.ContentEncoding = name;
                return file + ending;
            }
        return file;
    }

    private static EntityTagHeaderValue Tag(string file)
    {
        var info = new FileInfo(file);
        return new EntityTagHeaderValue($"\"{info.LastWriteTimeUtc.Ticks:x}-{info.Length:x}\"", isWeak: true);
    }

    [GeneratedRegex(@"[/\\]_framework[/\\]" + Hashed)]
    private static partial Regex Fingerprinted();
}
