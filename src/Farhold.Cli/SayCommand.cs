using System.ComponentModel;
using Farhold.Exchange.HandOver;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class SayCommand(TimeProvider clock) : Command<SayCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandOption("--form <FORM>")]
        [Description("mist, atmist, sbar, nine-line or radio. Without it: atmist.")]
        public string Form { get; init; } = "atmist";

        [CommandOption("--zone <ZONE>")]
        [Description("Time zone of the times, such as Europe/Oslo; UTC stands beside it. Without it: UTC.")]
        public string? Zone { get; init; }

        [CommandOption("--place <TEXT>")]
        [Description("For nine-line: place of pick-up.")]
        public string? Place { get; init; }

        [CommandOption("--call <TEXT>")]
        [Description("For nine-line: frequency and call sign at the place.")]
        public string? Call { get; init; }

        [CommandOption("--precedence <TEXT>")]
        [Description("For nine-line: urgent, urgent surgical, priority, routine or convenience.")]
        public string? Precedence { get; init; }

        [CommandOption("--equipment <TEXT>")]
        [Description("For nine-line: special equipment wanted.")]
        public string? Equipment { get; init; }

        [CommandOption("--carried <TEXT>")]
        [Description("For nine-line: lying or walking.")]
        public string? Carried { get; init; }

        [CommandOption("--marking <TEXT>")]
        [Description("For nine-line: how the place is marked.")]
        public string? Marking { get; init; }

        [CommandOption("--nationality <TEXT>")]
        [Description("For nine-line: nationality and status of the patient.")]
        public string? Nationality { get; init; }

        [CommandOption("--terrain <TEXT>")]
        [Description("For nine-line: what the ground is like.")]
        public string? Terrain { get; init; }

        public Farhold.Exchange.HandOver.PickUp PickUp =>
            new()
            {
                Place = Place,
                Call = Call,
                Precedence = Precedence,
                Equipment = Equipment,
                Carried = Carried,
                Marking = Marking,
                Nationality = Nationality,
                Terrain = Terrain,
            };
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (Wire.Parse<FormKind>(settings.Form) is not { } form)
            return ErrorOutput.Plainly($"there is no form \"{settings.Form}\"; there are {string.Join(", ", Wire.Words<FormKind>())}");
        if (Zones.Of(settings.Zone) is not { } zone)
            return ErrorOutput.Unusable;
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        var facts = CareFacts.Of(opened.Record, opened.Rules, opened.At);
        Console.Out.Write(Forms.Of(form, facts, zone, settings.PickUp).Text());
        return 0;
    }
}
