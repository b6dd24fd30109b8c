using Microsoft.Net.Http.Headers;

namespace Farhold.Hub;

/// <summary>What a route takes; every route that takes something says so.</summary>
internal sealed record Takes(string MediaType);

/// <summary>Looks at Host, Origin and Content-Type before anything is done, and lets nothing of an error out but one line.</summary>
internal static partial class RequestGuard
{
    /// <summary>The client has left, so nobody reads it; nginx's number for it.</summary>
    private const int ClientClosedRequest = 499;

    public static void UseRequestGuard(this WebApplication app, AllowedHosts hosts)
    {
        app.Use(CatchAsync);
        app.Use(
            (context, next) => Refusal(context, hosts) is var (status, line) ? OneLine.WriteAsync(context, status, line) : next(context)
        );
    }

    private static (int Status, string Line)? Refusal(HttpContext context, AllowedHosts hosts)
    {
        var request = context.Request;
        if (!hosts.Allow(request.Host))
            return (StatusCodes.Status421MisdirectedRequest, "This hub was not started for that name; --host gives it one.");
        if (request.Headers.Origin.Count > 0 && !(request.Headers.Origin is [{ } origin] && AllowedHosts.IsOwn(origin, request.Host)))
            return (StatusCodes.Status403Forbidden, "Only pages of this hub may ask it.");
        if (context.GetEndpoint()?.Metadata.GetMetadata<Takes>() is { } takes && !Fits(request.ContentType, takes.MediaType))
            return (StatusCodes.Status415UnsupportedMediaType, $"This address takes {takes.MediaType} in UTF-8 and nothing else.");
        return null;
    }

    /// <summary>The media type itself, at most with the charset that it has anyway.</summary>
    private static bool Fits(string? sent, string mediaType) =>
        MediaTypeHeaderValue.TryParse(sent, out var type)
        && type.MediaType.Equals(mediaType, StringComparison.OrdinalIgnoreCase)
        && type.Parameters.All(p =>
            p.Name.Equals("charset", StringComparison.OrdinalIgnoreCase)
            && HeaderUtilities.RemoveQuotes(p.Value).Equals("utf-8", StringComparison.OrdinalIgnoreCase)
        );

    private static async Task CatchAsync(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            if (!context.Response.HasStarted)
                context.Response.StatusCode = ClientClosedRequest;
        }
        catch (BadHttpRequestException e) when (!context.Response.HasStarted)
        {
            await OneLine.WriteAsync(
                context,
                e.StatusCode,
                e.StatusCode == StatusCodes.Status413PayloadTooLarge
                    ? $"Too large: at most {Documents.LargestBytes} bytes."
                    : "The request is broken."
            );
        }
        catch (Exception e) when (!context.Response.HasStarted)
        {
            // Type and place only: the message of an exception may hold words of a record.
            var log = context.RequestServices.GetRequiredService<ILogger<AllowedHosts>>();
            Failed(log, context.GetEndpoint()?.DisplayName, e.GetType(), e.StackTrace);
            await OneLine.WriteAsync(context, StatusCodes.Status500InternalServerError, "The hub failed at this. Nothing of it was kept.");
        }
    }

    [LoggerMessage(LogLevel.Error, "{Route} failed with {Kind}\n{Where}")]
    private static partial void Failed(ILogger log, string? route, Type kind, string? where);
}
