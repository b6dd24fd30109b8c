using System.Collections.Immutable;
using System.ComponentModel;
using System.Globalization;
using System.Text;
using Farhold.Exchange.Calendar;
using Farhold.Rehearsal.Debriefs;
using Farhold.Rehearsal.Pictures;
using Farhold.Rehearsal.Runs;
using Farhold.Rehearsal.Scenarios;
using NodaTime;
using Spectre.Console.Cli;
using WhatIf = Farhold.Rehearsal.Debriefs.WhatIf;

namespace Farhold.Cli;

internal sealed class DebriefCommand(TimeProvider clock) : Command<DebriefCommand.Settings>
{
    /// <summary>Nobody waits longer for a what-if.</summary>
    private const int MostRedraws = 1_000;

    public sealed class Settings : ProtocolSettings
    {
        [CommandArgument(0, "<RECORD>")]
        [Description("The practice record of a rehearsal; of one that somebody led, the trainee's own.")]
        public string Record { get; init; } = "";

        [CommandOption("--truth <FILE>")]
        [Description("What truly happened, as farhold rehearse wrote it.")]
        public string Truth { get; init; } = "";

        [CommandOption("--scenario <FILE>")]
        [Description("The scenario that was run.")]
        public string Scenario { get; init; } = "";

        [CommandOption("--what-if <CHANGE>")]
        [Description(
            "One change, with the same luck: haemostatic, never-let-out, caught (tied within a minute), or minutes by which all of it is "
                + "done later (15) or earlier (-15)."
        )]
        public string? Change { get; init; }

        [CommandOption("--redraws <N>")]
        [Description("With --what-if: how often the wound's difficulty and all luck are drawn anew. Without it: not at all.")]
        public int Redraws { get; init; }

        [CommandOption("--svg <FILE>")]
        [Description("Write blood lost and delays as a picture (SVG), and their tables below the text.")]
        public string? Svg { get; init; }

        [CommandOption("--pdf <FILE>")]
        [Description("Write the debrief on paper (PDF), with what its pictures show as tables.")]
        public string? Pdf { get; init; }

        [CommandOption("--calendar <FILE>")]
        [Description("Write when to practise again as calendar items (iCalendar).")]
        public string? Calendar { get; init; }

        [CommandOption("--practised <DATE>")]
        [Description("The day of the first practice, such as 2031-05-04, for --calendar. Without it: today.")]
        public string? Practised { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Truth.Length == 0 || settings.Scenario.Length == 0)
            return ErrorOutput.Plainly("a debrief needs the truth (--truth) and the scenario (--scenario) of the rehearsal");
        if (settings.Redraws is < 0 or > MostRedraws)
            return ErrorOutput.Plainly($"--redraws {settings.Redraws} has to be from 0 to {MostRedraws}");
        var change = settings.Change is { } asked ? WhatIf.Parse(asked) : null;
        if (settings.Change is not null && change is null)
            return ErrorOutput.Plainly(
                $"--what-if {settings.Change} has to be haemostatic, never-let-out, caught, or minutes such as 15 or -15"
            );
        var today = Instant.FromDateTimeOffset(clock.GetUtcNow());
        if (settings.Practised is { } day && TimeText.TryDate(day) is null)
            return ErrorOutput.Plainly($"--practised {day} is no date; write it like 2031-05-04");
        if (
            Opened.WholeOf(settings.Scenario, bytes => ScenarioReader.Read(bytes, settings.Scenario)) is not { } scenario
            || Opened.WholeOf(settings.Truth, bytes => TruthFile.Read(bytes, settings.Truth)) is not { } truth
            || Opened.WholeOf(settings.Record, bytes => RecordReader.Read(bytes, settings.Record)) is not { } file
            || Opened.InForce(settings, scenario.Start) is not var (rules, _)
        )
            return ErrorOutput.Unusable;
        if (truth.Again(scenario, settings.Truth) is not Read<Rerun>.Usable(var rerun))
            return ErrorOutput.Of(((Read<Rerun>.Refused)truth.Again(scenario, settings.Truth)).Refusals);
        var read = Debriefed(rerun, file.Entries, settings.Record, rules);
        if (read is not Read<Debrief>.Usable(var debrief))
            return ErrorOutput.Of(((Read<Debrief>.Refused)read).Refusals);
        DebriefText.Write(debrief, Console.Out);
        if (change is not null)
            DebriefText.Write(debrief, change, settings.Redraws, Console.Out);
        if (settings.Svg is { } svg)
        {
            DebriefPictures.WriteTables(debrief, Console.Out);
            if (Files.Write(svg, Encoding.UTF8.GetBytes(DebriefPictures.File(debrief))) is { } unwritten)
                return ErrorOutput.Plainly(unwritten);
        }

        if (
            settings.Pdf is { } pdf
            && Files.Write(pdf, DebriefPaper.Write(debrief, new CareRecord(file.Entries, []), today)) is { } unprinted
        )
            return ErrorOutput.Plainly(unprinted);
        var first = settings.Practised is { } given ? TimeText.TryDate(given)!.Value : today.InUtc().Date;
        return settings.Calendar is { } path && Files.Write(path, Encoding.UTF8.GetBytes(CalendarOf(first, today))) is { } why
            ? ErrorOutput.Plainly(why)
            : 0;
    }

    /// <summary>With the run's own record, or, where somebody led, with the one that the trainee kept.</summary>
    private static Read<Debrief> Debriefed(Rerun rerun, ImmutableArray<Entry> record, string name, Rulebook rules) =>
        RunClock.Of(rerun.Session.Truth) is null || TraineeRecord.IsSealed(rerun.Session, record)
            ? new Read<Debrief>.Usable(Debrief.Of(rerun, record, rules))
            : TraineeRecord.On(rerun.Session, record, name) switch
            {
                Read<TraineeRecord>.Usable(var joined) => new Read<Debrief>.Usable(Debrief.Of(rerun, joined, rules)),
                Read<TraineeRecord>.Refused(var why) => new Read<Debrief>.Refused(why),
                _ => throw new System.Diagnostics.UnreachableException(),
            };

    private static string CalendarOf(LocalDate first, Instant today) =>
        CalendarFile.Write(
            [
                .. Refresher
                    .Ahead(first)
                    .Select(day => new CalendarItem(
                        string.Create(CultureInfo.InvariantCulture, $"practice.{TimeText.Date(day)}@farhold.invalid"),
                        0,
                        day.At(new LocalTime(18, 0)).InUtc().ToInstant(),
                        Refresher.Summary,
                        Refresher.Why,
                        [Duration.Zero]
                    )),
            ],
            today
        );
}
