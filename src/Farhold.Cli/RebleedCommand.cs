using System.ComponentModel;
using Farhold.Physiology.Constants;
using Farhold.Study.Casualties;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class RebleedCommand : Command<RebleedCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandOption("--csv")]
        [Description("For a spreadsheet.")]
        public bool Csv { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var table = RebleedTable.Table();
        if (settings.Csv)
        {
            Console.Out.Write(table.Csv());
            return 0;
        }

        Console.Out.WriteLine(Plain.Line(StudyTexts.NotGuidance));
        Console.Out.WriteLine(Plain.Line(StudyTexts.RebleedCourse(Models.Newest)));
        Console.Out.WriteLine();
        table.Write(Console.Out);
        return 0;
    }
}
