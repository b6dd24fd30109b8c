using System.Text;
using System.Text.Json.Nodes;
using Farhold.Hub.Access;
using Farhold.Hub.Shares;
using Farhold.Hub.Sync;
using NodaTime;

namespace Farhold.Hub.Fhir;

/// <summary>FHIR R4, read and search, of the one casualty that a link is for: for a hospital's own program.</summary>
/// <remarks>
/// The base is <c>/hub/fhir/{link}</c>; the link's secret goes as <c>Authorization: Bearer</c>, its digits, if any, as <c>Farhold-Code</c>.
/// </remarks>
internal static class FhirRoutes
{
    public const string Json = "application/fhir+json";

    private const string Version = "4.0.1";

    private static readonly OpenTo Secret = new("whoever brings the link's secret, while it lasts") { HasQuery = true };

    public static void MapFhir(this RouteGroupBuilder hub, TimeProvider clock)
    {
        var fhir = hub.MapGroup("/fhir/{share}");
        fhir.MapGet("/metadata", (HttpContext context, string share) => Capability(context, share, clock.Now()))
            .WithMetadata(new OpenTo("it says what the hub can do, and nothing of any record"))
            .RequireRateLimiting(SyncRoutes.SyncRate);
        fhir.MapGet(
                "/{type}/{resource}",
                (HttpContext context, Opener opener, FhirRecords records, string share, string type, string resource) =>
                    WithAsync(
                        context,
                        opener,
                        records,
                        share,
                        clock.Now(),
                        record =>
                            record.Read(type, resource) is { } found
                                ? Answer(found)
                                : Outcome(StatusCodes.Status404NotFound, "not-found", "There is no such resource in this record.")
                    )
            )
            .WithMetadata(Secret)
            .RequireRateLimiting(SyncRoutes.SyncRate);
        fhir.MapGet(
                "/{type}",
                (HttpContext context, Opener opener, FhirRecords records, string share, string type) =>
                    WithAsync(context, opener, records, share, clock.Now(), record => Search(context, share, record, type))
            )
            .WithMetadata(Secret)
            .RequireRateLimiting(SyncRoutes.SyncRate);
    }

    private static async Task<IResult> WithAsync(
        HttpContext context,
        Opener opener,
        FhirRecords records,
        string share,
        Instant now,
        Func<FhirRecord, IResult> answer
    )
    {
        var authorization = context.Request.Headers.Authorization.ToString();
        if (!authorization.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase))
            return Outcome(StatusCodes.Status401Unauthorized, "login", "The link's secret is asked for, as a bearer token.");
        var (shown, _) = await opener.ShownAsync(
            share,
            authorization["Bearer ".Length..].Trim(),
            context.Request.Headers["Farhold-Code"],
            counts: false,
            now,
            context.RequestAborted
        );
        return shown is null
            ? Outcome(StatusCodes.Status401Unauthorized, "login", "This secret shows nothing, or nothing any more.")
            : answer(records.Of(shown, now, context.RequestAborted));
    }

    private static IResult Search(HttpContext context, string share, FhirRecord record, string type)
    {
        if (!FhirRecord.Types.Contains(type))
            return Outcome(StatusCodes.Status404NotFound, "not-supported", "A record holds no resources of this type.");
        var found = record.All.Where(r => r.Type == type);
        foreach (var (name, values) in context.Request.Query)
            switch (name)
            {
                case "_id":
                    found = found.Where(r => values.Any(v => v?.Split(',').Contains(r.Id, StringComparer.Ordinal) == true));
                    break;
                case "patient" or "subject":
                    if (!values.All(v => v == record.Patient || v == $"Patient/{record.Patient}"))
                        found = [];
                    break;
                case "_format":
                    break;
                default:
                    return Outcome(StatusCodes.Status400BadRequest, "not-supported", "Resources are found by _id, patient or subject.");
            }

        var root = $"{context.Request.Scheme}://{context.Request.Host}/hub/fhir/{Uri.EscapeDataString(share)}";
        var matches = found.ToArray();
        return Answer(
            new JsonObject
            {
                ["resourceType"] = "Bundle",
                ["type"] = "searchset",
                ["total"] = matches.Length,
                ["link"] = new JsonArray(
                    new JsonObject { ["relation"] = "self", ["url"] = $"{root}/{type}{context.Request.QueryString.ToUriComponent()}" }
                ),
                ["entry"] =
                    matches.Length == 0
                        ? null
                        : new JsonArray([
                            .. matches.Select(m => new JsonObject
                            {
                                ["fullUrl"] = $"{root}/{m.Type}/{m.Id}",
                                ["resource"] = m.Resource.DeepClone(),
                                ["search"] = new JsonObject { ["mode"] = "match" },
                            }),
                        ]),
            }
        );
    }

    private static IResult Capability(HttpContext context, string share, Instant now) =>
        Answer(
            new JsonObject
            {
                ["resourceType"] = "CapabilityStatement",
                ["status"] = "active",
                ["date"] = WrittenInstant.Write(now),
                ["kind"] = "instance",
                ["software"] = new JsonObject { ["name"] = "Farhold", ["version"] = Product.Version },
                ["implementation"] = new JsonObject
                {
                    ["description"] = "The record of one casualty, read only, as far as it has reached this hub.",
                    ["url"] = $"{context.Request.Scheme}://{context.Request.Host}/hub/fhir/{Uri.EscapeDataString(share)}",
                },
                ["fhirVersion"] = Version,
                ["format"] = new JsonArray("json"),
                ["rest"] = new JsonArray(
                    new JsonObject
                    {
                        ["mode"] = "server",
                        ["security"] = new JsonObject
                        {
                            ["description"] = "The secret of a link that was made for this casualty, as a bearer token.",
                        },
                        ["resource"] = new JsonArray([.. FhirRecord.Types.Select(Supported)]),
                    }
                ),
            }
        );

    private static JsonObject Supported(string type)
    {
        var by = type switch
        {
            "Patient" or "Practitioner" or "Device" or "Location" or "Provenance" => (string[])["_id"],
            "Task" => ["_id", "subject", "patient"],
            _ => ["_id", "patient", "subject"],
        };
        return new()
        {
            ["type"] = type,
            ["interaction"] = new JsonArray(new JsonObject { ["code"] = "read" }, new JsonObject { ["code"] = "search-type" }),
            ["searchParam"] = new JsonArray([
                .. by.Select(name => new JsonObject { ["name"] = name, ["type"] = name == "_id" ? "token" : "reference" }),
            ]),
        };
    }

    private static IResult Outcome(int status, string code, string said) =>
        Results.Text(
            new JsonObject
            {
                ["resourceType"] = "OperationOutcome",
                ["issue"] = new JsonArray(
                    new JsonObject
                    {
                        ["severity"] = "error",
                        ["code"] = code,
                        ["diagnostics"] = said,
                    }
                ),
            }.ToJsonString(),
            Json,
            Encoding.UTF8,
            status
        );

    private static IResult Answer(JsonObject resource)
    {
        if (resource["entry"] is null && resource.ContainsKey("entry"))
            resource.Remove("entry"); // FHIR has no empty arrays
        return Results.Text(resource.ToJsonString(), Json, Encoding.UTF8);
    }
}
