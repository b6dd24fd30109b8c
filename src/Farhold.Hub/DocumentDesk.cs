using System.Threading.RateLimiting;

namespace Farhold.Hub;

/// <summary>Where documents are made: two at a time, a few more wait, the rest are sent away. Whoever leaves gives up the place.</summary>
internal sealed class DocumentDesk : IDisposable
{
    public const int Places = 2;

    public const int MostWaiting = 8;

    /// <summary>Design: about as long as a large document takes.</summary>
    private const int RetryAfterSeconds = 10;

    public ConcurrencyLimiter Queue { get; } =
        new(
            new()
            {
                PermitLimit = Places,
                QueueLimit = MostWaiting,
                QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
            }
        );

    /// <param name="make">What is made of the whole body; its token is cancelled when the client leaves or the time is up.</param>
    public async Task<IResult> MakeAsync(HttpContext context, Func<ReadOnlyMemory<byte>, CancellationToken, IResult> make)
    {
        context.Response.Headers.CacheControl = "no-store";
        var body = await BodyAsync(context); // before a place is taken: a slow link must not hold one
        using var place = await Queue.AcquireAsync(1, context.RequestAborted);
        if (place.IsAcquired)
            return make(body, context.RequestAborted);
        context.Response.Headers.RetryAfter = RetryAfterSeconds.ToString(System.Globalization.CultureInfo.InvariantCulture);
        return OneLine.Of(StatusCodes.Status503ServiceUnavailable, "Other documents are being made; ask again in a moment.");
    }

    public void Dispose() => Queue.Dispose();

    /// <remarks>What is not read of a body, the server reads and throws away after the answer, up to its own limit.</remarks>
    private static async Task<ReadOnlyMemory<byte>> BodyAsync(HttpContext context)
    {
        if (context.Request.ContentLength > Documents.LargestBytes)
            throw TooLarge();
        using var body = new MemoryStream();
        var part = new byte[1 << 16];
        for (int read; (read = await context.Request.Body.ReadAsync(part, context.RequestAborted)) > 0; )
        {
            if (body.Length + read > Documents.LargestBytes)
                throw TooLarge();
            body.Write(part, 0, read);
        }

        return body.ToArray();
    }

    private static BadHttpRequestException TooLarge() => new("The body is too large.", StatusCodes.Status413PayloadTooLarge);
}
