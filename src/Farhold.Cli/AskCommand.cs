using System.ComponentModel;
using System.Text;
using Farhold.Exchange.Advice;
using Farhold.Exchange.HandOver;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class AskCommand(TimeProvider clock) : Command<AskCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandOption("--question <KIND>")]
        [Description("attempt, late, further, soft-sign, guide, drug or other. Without it: what the verdict asks for.")]
        public string? Question { get; init; }

        [CommandOption("--limb <LIMB>")]
        [Description("left-arm, right-arm, left-leg or right-leg. Without it: the limb that comes first.")]
        public string? Limb { get; init; }

        [CommandOption("--text <TEXT>")]
        [Description("The drug, or the question in your own words.")]
        public string? Text { get; init; }

        [CommandOption("--from <NAME>")]
        [Description("Who calls.")]
        public string? From { get; init; }

        [CommandOption("--place <TEXT>")]
        [Description("Where from: a grid reference or a name. Without it: the grid reference of the position in the record.")]
        public string? Place { get; init; }

        [CommandOption("--zone <ZONE>")]
        [Description("Time zone of the times, such as Europe/Oslo; UTC stands beside it. Without it: UTC.")]
        public string? Zone { get; init; }

        [CommandOption("--radio")]
        [Description("For a bad radio: numbers digit by digit.")]
        public bool Radio { get; init; }

        [CommandOption("--short")]
        [Description("One short message of at most 160 characters.")]
        public bool Short { get; init; }

        [CommandOption("--json")]
        [Description("As JSON, the short message in it.")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Question is { } word && Wire.Parse<AskFor>(word) is null)
            return ErrorOutput.Plainly($"there is no question \"{word}\"; there are {string.Join(", ", Wire.Words<AskFor>())}");
        if (settings.Limb is { } limb && Wire.Parse<Limb>(limb) is null)
            return ErrorOutput.Plainly($"there is no limb \"{limb}\"; there are {string.Join(", ", Wire.Words<Limb>())}");
        if (new[] { settings.Radio, settings.Short, settings.Json }.Count(asked => asked) > 1)
            return ErrorOutput.Plainly("--radio, --short and --json go one at a time");
        if (Zones.Of(settings.Zone) is not { } zone)
            return ErrorOutput.Unusable;
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        var facts = CareFacts.Of(opened.Record, opened.Rules, opened.At);
        if (Asked(facts, settings) is not { } question)
            return ErrorOutput.Plainly(
                "no tight tourniquet in this record has that question now; ask with --question other --text \"...\""
            );
        var call = new AdviceCall(facts, question, zone, new(settings.From, settings.Place ?? Grid(facts)));
        if (settings is { Json: false, Short: false } && !call.Whom.IsEmpty)
            Console.Out.Write($"Whom to call\n{string.Concat(call.Whom.Select(line => $"   {line}\n"))}\n");
        Console.Out.Write(
            settings.Json ? Encoding.UTF8.GetString(CallJson.Write(call)) + "\n"
            : settings.Short ? call.Short + "\n"
            : (settings.Radio ? call.Spoken : call.Form).Text()
        );
        return 0;
    }

    /// <summary>Null where no position is noted, or it is not known which is the last.</summary>
    private static string? Grid(CareFacts facts) =>
        facts.Positions is [var last] && last.As<Payload.PositionNoted>() is var at ? Mgrs.Format(new(at.Lat, at.Lon)) : null;

    private static AdviceQuestion? Asked(CareFacts facts, Settings settings)
    {
        Limb? limb = settings.Limb is { } word ? Wire.Parse<Limb>(word) : null;
        var offered = AdviceQuestion.Offered(facts).First(q => limb is null || q.Limb is null || q.Limb == limb);
        return AdviceQuestion.Named(
            facts,
            settings.Question is { } kind ? Wire.Parse<AskFor>(kind)!.Value
                : settings.Text is not null ? AskFor.Other
                : offered.Limb is null ? AskFor.Other
                : offered.For,
            limb ?? (settings.Question is null ? offered.Limb : null),
            settings.Text
        );
    }
}
