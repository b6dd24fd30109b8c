using System.Collections.Immutable;

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
}
