using System.ComponentModel;
using System.Text;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class DrawCommand(TimeProvider clock) : Command<DrawCommand.Settings>
{
    public sealed class Settings : JudgingSettings
    {
        [CommandOption("-o|--output <FILE>", isRequired: true)]
        [Description("Where to: a name ending in .svg or .png. With several limbs each gets a file of its own.")]
        public string Output { get; init; } = "";

        [CommandOption("--limb <LIMB>")]
        [Description("left-arm, right-arm, left-leg or right-leg. Without it: every limb that had a tourniquet.")]
        public string? Limb { get; init; }

        [CommandOption("--width <PIXELS>")]
        [Description("320 to 1200; 1000 without it.")]
        public int Width { get; init; } = 1000;

        [CommandOption("--light")]
        [Description("Dark on light, for print.")]
        public bool Light { get; init; }

        [CommandOption("--zone <ZONE>")]
        [Description("Time zone of the times written, such as Europe/Oslo. Without it: UTC.")]
        public string? Zone { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var ending = Path.GetExtension(settings.Output);
        if (ending is not (".svg" or ".png"))
            return ErrorOutput.Plainly($"--output {settings.Output} has to end in .svg or .png");
        if (settings.Width is < LimbLine.MinWidth or > LimbLine.MaxWidth)
            return ErrorOutput.Plainly($"--width {settings.Width} has to be {LimbLine.MinWidth} to {LimbLine.MaxWidth}");
        if (settings.Limb is { } word && Wire.Parse<Limb>(word) is null)
            return ErrorOutput.Plainly($"--limb {word} has to be one of {string.Join(", ", Wire.Words<Limb>())}");
        if (Zones.Of(settings.Zone) is not { } zone)
            return ErrorOutput.Unusable;
        if (Opened.Of(settings, clock) is not { } opened)
            return ErrorOutput.Unusable;
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        var pictures = Pictures(opened, settings, zone).ToArray();
        if (pictures.Length == 0)
            return ErrorOutput.Plainly(
                $"{settings.Record}: no tourniquet {(settings.Limb is { } l ? $"on the {l} " : "")}up to "
                    + $"{Farhold.Text.Say.Time(opened.At)}: nothing to draw"
            );
        foreach (var picture in pictures)
        {
            var svg = LimbLine.Draw(picture, settings.Width, settings.Light ? LimbLineLook.Pale : LimbLineLook.Dark);
            var to =
                pictures.Length == 1
                    ? settings.Output
                    : Path.ChangeExtension(settings.Output, null) + "-" + Wire.Word(picture.Limb) + ending;
            if (Files.Write(to, ending == ".svg" ? Encoding.UTF8.GetBytes(svg) : Png.Of(svg)) is { } fault)
                return ErrorOutput.Plainly(fault);
            Console.Out.WriteLine(Plain.Line($"{to}: {LimbLine.Describe(picture)}"));
        }

        return 0;
    }

    private static IEnumerable<LimbPicture> Pictures(Opened opened, Settings settings, DateTimeZone zone)
    {
        var judgement = Judge.At(opened.Record, opened.Rules, opened.At);
        return judgement
            .Limbs.Select(l => l.Clock)
            .Concat(judgement.Observed.Select(w => w.Clock))
            .Where(c => settings.Limb is null || Wire.Word(c.Limb) == settings.Limb)
            .OrderBy(c => c.Limb)
            .Select(c => LimbPicture.Of(c, opened.Record.Readings[0], opened.Rules.Protocol, opened.At, zone));
    }
}
