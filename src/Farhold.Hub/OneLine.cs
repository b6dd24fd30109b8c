using System.Text;

namespace Farhold.Hub;

/// <summary>A refusal as one line of plain text.</summary>
internal static class OneLine
{
    public static Task WriteAsync(HttpContext context, int status, string line)
    {
        context.Response.Clear();
        context.Response.Headers.CacheControl = "no-store"; // the same address may be answered the next time
        return Of(status, line).ExecuteAsync(context);
    }

    public static IResult Of(int status, string line) => Results.Text(Plain.Line(line) + "\n", "text/plain", Encoding.UTF8, status);
}
