using System.ComponentModel;
using Spectre.Console.Cli;

namespace Farhold.Cli;

/// <summary>What a verb takes that only reads a record.</summary>
internal class RecordSettings : CommandSettings
{
    [CommandArgument(0, "<RECORD>")]
    [Description("A record: JSON Lines in UTF-8. A dash reads standard input.")]
    public string Record { get; init; } = "";
}

/// <summary>What every verb takes that goes by a protocol.</summary>
internal class ProtocolSettings : CommandSettings
{
    [CommandOption("--protocol <FILE>")]
    [Description("A whole protocol in place of the shipped one.")]
    public string? Protocol { get; init; }

    [CommandOption("--local <FILE>")]
    [Description(
        "A local protocol to lay over it; its signature is looked for beside it, as FILE.sig. If it is refused, the protocol under it "
            + "stays in force, and that is said."
    )]
    public string? Local { get; init; }

    [CommandOption("--issuer <FILE>")]
    [Description("An issuer's code that is trusted for this run, besides those of farhold keys trust. May be given several times.")]
    public string[] Issuers { get; init; } = [];
}

/// <summary>What every verb takes that goes through a record by a protocol.</summary>
internal class RecordByProtocolSettings : ProtocolSettings
{
    [CommandArgument(0, "<RECORD>")]
    [Description("A record: JSON Lines in UTF-8. A dash reads standard input.")]
    public string Record { get; init; } = "";
}

/// <summary>What every verb takes that judges.</summary>
internal class JudgingSettings : RecordByProtocolSettings
{
    [CommandOption("--at <INSTANT>")]
    [Description("Judge at this instant, such as 2031-05-04T02:10:00Z. Without it: now.")]
    public string? At { get; init; }
}
