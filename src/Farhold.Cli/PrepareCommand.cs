using System.Collections.Immutable;
using System.ComponentModel;
using System.Text;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class PrepareCommand : Command<PrepareCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<TRIP>")]
        [Description("A trip before it begins: JSON with who goes, how far help is and what is packed. A dash reads standard input.")]
        public string Trip { get; init; } = "";

        [CommandOption("--protocol <FILE>")]
        [Description("A whole protocol in place of the shipped one.")]
        public string? Protocol { get; init; }

        [CommandOption("--local <FILE>")]
        [Description("A local protocol to lay over it. If it is refused, the protocol under it stays in force, and that is said.")]
        public string? Local { get; init; }

        [CommandOption("--practised")]
        [Description("A practice casualty was gone through on the phone that is taken along. Without it: not.")]
        public bool Practised { get; init; }

        [CommandOption("--json")]
        [Description("Print the check as JSON.")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (TripOf(settings.Trip) is not { } trip || Opened.ProtocolOf(settings.Protocol) is not { } protocol)
            return Refusing.Unusable;
        var (local, refused) = Opened.LocalOf(settings.Local, protocol);
        Refusing.Of(refused);
        var lines = TripCheck.Of(trip, ShippedKit.Kit, local ?? protocol, settings.Practised);
        if (settings.Json)
            Console.Out.WriteLine(Encoding.UTF8.GetString(TripJson.Write(lines)));
        else
            Print(lines);
        return 0;
    }

    private static void Print(ImmutableArray<TripCheckLine> lines)
    {
        Console.Out.WriteLine(VerdictWords.Caution);
        foreach (var (title, state) in new[] { ("Missing", Truth.NotMet), ("Nobody said, so not to be counted on", Truth.Unknown), ("Ready", Truth.Met) })
        {
            var these = lines.Where(l => l.State == state).ToArray();
            if (these.Length == 0)
                continue;
            Console.Out.WriteLine($"{title} ({these.Length}):");
            foreach (var line in these)
                Console.Out.WriteLine(Plain.Line($"  {line.Text}"));
        }

        Console.Out.WriteLine("Apart from water, the amounts are this project's own choice.");
    }

    private static TripPlan? TripOf(string path)
    {
        var read = Files.Read(path) switch
        {
            Read<ReadOnlyMemory<byte>>.Usable(var bytes) => TripReader.Read(bytes, path, ShippedKit.Kit),
            Read<ReadOnlyMemory<byte>>.Refused(var why) => new Read<TripPlan>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
        if (read is Read<TripPlan>.Usable(var trip))
            return trip;
        Refusing.Of(((Read<TripPlan>.Refused)read).Refusals);
        return null;
    }
}
