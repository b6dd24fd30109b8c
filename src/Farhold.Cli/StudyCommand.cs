using System.Collections.Immutable;
using System.ComponentModel;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed partial class StudyCommand(TimeProvider clock) : Command<StudyCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("A study: JSON, its form is studies/study.schema.json. A dash reads standard input.")]
        public string File { get; init; } = "";

        [CommandOption("--part <PART>")]
        [Description("Run one part alone, such as 17/200, and keep it in the folder of --output: for several machines.")]
        public string? Part { get; init; }

        [CommandOption("--join <FOLDER>")]
        [Description("Run nothing: join all parts in this folder and report.")]
        public string? Join { get; init; }

        [CommandOption("-o|--output <FOLDER>")]
        [Description(
            "Where parts, tables and pictures go. A run that was stopped goes on from here. Without it: only the report is printed."
        )]
        public string? Output { get; init; }

        [CommandOption("--threads <NUMBER>")]
        [Description("At once, 1 to 1024; without it as many as there are processors. The answer does not depend on it.")]
        public int? Threads { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Threads is < 1 or > 1024)
            return ErrorOutput.Plainly($"--threads {settings.Threads} has to be 1 to 1024");
        if (settings is { Part: not null, Join: not null })
            return ErrorOutput.Plainly("--part runs, --join reads what was run: one of them");
        if (PartOf(settings.Part) is not { } part)
            return ErrorOutput.Plainly(
                $"--part {settings.Part} has to be such as 17/200, the first at most the second, which is at most 9999"
            );
        if (Opened.WholeOf(settings.File, bytes => StudyReader.Read(bytes, settings.File)) is not { } plan)
            return ErrorOutput.Unusable;
        var threads = settings.Threads ?? Environment.ProcessorCount;
        using var interrupt = new Interrupt(cancellationToken);
        ImmutableArray<Batch> batches;
        if (settings.Join is { } folder)
        {
            if (!Directory.Exists(folder))
                return ErrorOutput.Plainly($"--join {folder}: there is no such folder");
            (batches, var faults) = PartStore.Join(plan, folder);
            if (faults.Length > 0)
                return faults.Max(fault => ErrorOutput.Plainly($"--join {folder}: {fault}"));
        }
        else if (settings.Part is not null || settings.Output is not null)
        {
            (var path, batches) = PartStore.Run(plan, part, settings.Output ?? ".", threads, Progress(), interrupt.Token);
            if (settings.Part is not null)
            {
                Console.Out.WriteLine(Plain.Line(StudyTexts.NotGuidance));
                Console.Out.WriteLine(Plain.Line(StudyTexts.PartDone(part.Number, part.Of, path)));
                return 0;
            }
        }
        else
            batches = StudyRun.Run(
                plan,
                RunPart.Whole,
                threads,
                ImmutableDictionary<int, Batch>.Empty,
                _ => { },
                Progress(),
                interrupt.Token
            );

        ErrorOutput.Say(StudyTexts.Drawing);
        return Report(StudyResult.Of(plan, batches, threads, interrupt.Token), settings.Output);
    }

    private static int Report(StudyResult result, string? folder)
    {
        new StudyReport(result).Write(Console.Out);
        if (folder is null)
            return 0;
        Directory.CreateDirectory(folder);
        var files = 0;
        foreach (var (name, content) in StudyFiles.Of(result))
        {
            if (Files.Write(Path.Combine(folder, name), Encoding.UTF8.GetBytes(content)) is { } fault)
                return ErrorOutput.Plainly(fault);
            files++;
        }

        ErrorOutput.Say(StudyTexts.Wrote(files, folder));
        return 0;
    }

    /// <summary>A bar on standard error with the time left, at most once a second.</summary>
    private Action<RunProgress> Progress()
    {
        var (begun, said, at) = (clock.GetTimestamp(), -1L, -1);
        var first = 0;
        return progress =>
        {
            // What was kept of an earlier run takes no time and says nothing of how long the rest will.
            if (at < 0 || clock.GetElapsedTime(begun).TotalMilliseconds < 200)
                (first, begun) = (progress.Done, clock.GetTimestamp());
            at = progress.Done;
            var elapsed = clock.GetElapsedTime(begun);
            if ((long)elapsed.TotalSeconds == said && progress.Done < progress.Of)
                return;
            said = (long)elapsed.TotalSeconds;
            var done = progress.Done - first;
            var left =
                done == 0 ? StudyTexts.TimeUnknown : StudyTexts.TimeLeft(Left(elapsed.TotalSeconds / done * (progress.Of - progress.Done)));
            var filled = progress.Of == 0 ? 20 : 20 * progress.Done / progress.Of;
            ErrorOutput.Say(StudyTexts.Progress(new string('#', filled).PadRight(20, '.'), progress.Done, progress.Of, left));
        };
    }

    private static string Left(double seconds) =>
        seconds < 90
            ? string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(seconds)} s")
            : Farhold.Text.Say.Duration(Duration.FromSeconds(seconds + 30));

    private static RunPart? PartOf(string? text)
    {
        if (text is null)
            return RunPart.Whole;
        return
            Parts().Match(text) is { Success: true } match
            && int.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture) is var number
            && int.Parse(match.Groups[2].ValueSpan, CultureInfo.InvariantCulture) is var of
            && number >= 1
            && number <= of
            ? new(number, of)
            : null;
    }

    [GeneratedRegex("^([0-9]{1,4})/([0-9]{1,4})$", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();
}
