using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Hub.Sync;

/// <summary>Refusals as problem details (RFC 9457), for programs that ask.</summary>
internal static class Problems
{
    public static IResult Of(int status, string title, params ImmutableArray<Refusal> why) =>
        Results.Problem(
            title: title,
            statusCode: status,
            extensions: why.IsEmpty ? null : [new("refusals", why.Select(r => Plain.Line(r.ToString())).ToArray())]
        );

    /// <param name="code">For programs: what kind of refusal it is.</param>
    /// <param name="now">The hub's clock, where the sender's is wrong.</param>
    public static IResult Of(int status, string title, string code, Instant? now = null) =>
        Results.Problem(
            title: title,
            statusCode: status,
            extensions: now is { } time
                ? [new("code", code), new("now", WrittenInstant.Write(time))]
                : [new KeyValuePair<string, object?>("code", code)]
        );
}
