using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Hub.Sync;

/// <summary>Refusals as problem details (RFC 9457), for programs that ask.</summary>
internal static class Problems
{
    /// <summary>Of a record that was here and is no more.</summary>
    public static IResult Erased =>
        Of(
            StatusCodes.Status410Gone,
            "This record was erased at the hub. It may be deleted on the phone too, which never happens by itself."
        );

    /// <summary>While the database can't be reached.</summary>
    public static IResult Away =>
        Of(
            StatusCodes.Status503ServiceUnavailable,
            "The hub can't reach its database. Lines that it did not acknowledge may not be kept; ask again later."
        );

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
