using System.ComponentModel;
using System.Text;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class SuppliesCommand(TimeProvider clock) : Command<SuppliesCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandOption("--party <NUMBER>")]
        [Description("People in the party, the casualty included. Without it: 2.")]
        public int Party { get; init; } = 2;

        [CommandOption("--heat <HEAT>")]
        [Description("cool, warm or hot. Without it: anything from cool to hot.")]
        public string? Heat { get; init; }

        [CommandOption("--work <WORK>")]
        [Description("How hard the party works for eight hours a day: rest, easy or hard. Without it: rest.")]
        public string? Work { get; init; }

        [CommandOption("--zone <ZONE>")]
        [Description("Time zone of the times, such as Europe/Oslo. Without it: UTC.")]
        public string? Zone { get; init; }

        [CommandOption("--all")]
        [Description("Also what was never counted.")]
        public bool All { get; init; }

        [CommandOption("--json")]
        [Description("Print the outlook as JSON.")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Party is < 1 or > 200)
            return ErrorOutput.Plainly("--party is 1 to 200");
        if (settings.Heat is { } heat && Wire.Parse<Heat>(heat) is null)
            return ErrorOutput.Plainly($"--heat is one of {string.Join(", ", Wire.Words<Heat>())}");
        if (settings.Work is { } work && Wire.Parse<Work>(work) is null)
            return ErrorOutput.Plainly($"--work is one of {string.Join(", ", Wire.Words<Work>())}");
        if (Zones.Of(settings.Zone) is not { } zone)
            return ErrorOutput.Unusable;
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        var around = new Surroundings(
            settings.Party,
            settings.Heat is { } h ? Wire.Parse<Heat>(h) : null,
            settings.Work is { } w ? Wire.Parse<Work>(w)!.Value : Farhold.Reserves.Work.Rest
        );
        var outlook = SupplyOutlook.Of(opened.Record, opened.Rules, around, opened.At);
        if (settings.Json)
            Console.Out.WriteLine(Encoding.UTF8.GetString(SupplyJson.Write(outlook)));
        else
            Print(outlook, opened.Rules.Kit, zone, settings.All);
        return 0;
    }

    private static void Print(SupplyOutlook outlook, KitList kit, DateTimeZone zone, bool all)
    {
        var words = new SupplyWords(outlook.At, zone);
        Console.Out.WriteLine(VerdictWords.Caution);
        Console.Out.WriteLine($"Supplies for {outlook.Around.People}, times in {zone.Id}:");
        foreach (var item in outlook.Items.Where(i => all || i.Stock.Left is not null))
        {
            Console.Out.WriteLine($"  {item.Item.Name}: {words.Of(item)}");
            foreach (var line in SupplyWords.Advice(item, kit))
                Console.Out.WriteLine($"    {line}");
        }

        var uncounted = outlook.Items.Count(i => i.Stock.Left is null);
        if (!all && uncounted > 0)
            Console.Out.WriteLine($"  {uncounted} more of the kit list were never counted: unknown, never enough (--all names them)");
        Console.Out.WriteLine(
            "Ranges come from what was used up to now, what the coming tasks of the care plan take, and what else is foreseen; "
                + "apart from water, most figures are this project's own choice."
        );
    }
}
