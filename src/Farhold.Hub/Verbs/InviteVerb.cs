using System.Globalization;
using Farhold.Hub.Access;
using Farhold.Hub.Storage;
using NodaTime;

namespace Farhold.Hub.Verbs;

/// <summary><c>invite</c>: makes an invitation at the console of the hub's machine. So the first owner comes in.</summary>
internal static class InviteVerb
{
    public const string Help = """
        invite FOLDER [--role ROLE] [--team NAME] [--for NAME] [--days N]
                        [--hub-key FILE] [--store KIND] [--store-settings FILE]
          makes an invitation for the hub that keeps its records in FOLDER, and prints its code, which can't be read again.
          How its records are kept is said as at its start. ROLE: carer, coordinator, adviser, instructor or owner (default); N: 1 to 14 days, default 1.
        """;

    private const int MostDays = 14;

    /// <param name="args">Those after the verb.</param>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter errors, TimeProvider clock)
    {
        if (args is not [var folder, .. var rest] || rest.Length % 2 != 0 || !Directory.Exists(folder))
        {
            await errors.WriteLineAsync(Help);
            return 2;
        }

        var (role, team, name, days) = ((HubRole?)HubRole.Owner, "first team", "", (int?)1);
        string? key = null,
            kind = null,
            settings = null;
        for (var i = 0; i < rest.Length; i += 2)
            switch (rest[i])
            {
                case "--hub-key":
                    key = rest[i + 1];
                    break;
                case "--store":
                    kind = rest[i + 1];
                    break;
                case "--store-settings":
                    settings = rest[i + 1];
                    break;
                case "--role":
                    role = Wire.Parse<HubRole>(rest[i + 1]);
                    break;
                case "--team":
                    team = Plain.Line(rest[i + 1]);
                    break;
                case "--for":
                    name = Plain.Line(rest[i + 1]);
                    break;
                case "--days":
                    days = int.TryParse(rest[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;
                    break;
                default:
                    role = null;
                    break;
            }

        if (role is not { } invited || days is not (>= 1 and <= MostDays) || team.Length == 0)
        {
            await errors.WriteLineAsync(Help);
            return 2;
        }

        var (postgres, wrong) = StoreSettings.Of(kind, settings, Environment.GetEnvironmentVariable);
        if (wrong is not null)
        {
            await errors.WriteLineAsync(wrong);
            return 2;
        }

        try
        {
            await using var store = RecordStores.Open(new(folder) { KeyFile = key, Postgres = postgres });
            await output.WriteLineAsync(
                await MakeAsync(new AccessStore(store.Rows), new AuditTrail(store.Rows), invited, team, name, days.Value, clock)
            );
            return 0;
        }
        catch (StoreUnusableException e)
        {
            await errors.WriteLineAsync(e.Message);
            return 2;
        }
    }

    /// <summary>What is printed of a new invitation.</summary>
    public static async Task<string> MakeAsync(
        AccessStore access,
        AuditTrail audit,
        HubRole role,
        string team,
        string name,
        int days,
        TimeProvider clock
    )
    {
        var now = clock.Now();
        var until = now + Duration.FromDays(days);
        var code = await access.InviteAsync(new(role, team, name, until, Beforehand: true), "console", now);
        await audit.AddAsync("console", $"invitation.{Wire.Word(role)}", team, now);
        var article = role is HubRole.Owner or HubRole.Adviser or HubRole.Instructor ? "an" : "a";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Invitation for {article} {Wire.Word(role)} of {team}, once, until {Say.Time(until)}: {Codes.Grouped(code)}"
        );
    }
}
