using System.Collections.Immutable;
using System.ComponentModel;
using System.Text;
using Farhold.Xml;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class WayCommand(TimeProvider clock) : Command<WayCommand.Settings>
{
    /// <summary>Trials between two looks at the clock.</summary>
    private const int Piece = 1024;

    public sealed class Settings : ProtocolSettings
    {
        [CommandArgument(0, "<PLAN>")]
        [Description("A plan: JSON. Tracks it names are looked for beside it. A dash reads standard input.")]
        public string Plan { get; init; } = "";

        [CommandOption("--record <RECORD>")]
        [Description("A record: the chances are told before each limb's limits.")]
        public string? Record { get; init; }

        [CommandOption("--at <INSTANT>")]
        [Description("Judge the record at this instant. Without it: now.")]
        public string? At { get; init; }

        [CommandOption("--trials <NUMBER>")]
        [Description("Exactly so many trials, 100 to 5000000. Without it: until the answer is precise enough.")]
        public int? Trials { get; init; }

        [CommandOption("--seed <NUMBER>")]
        [Description("Same seed, same answer. Without it: 1.")]
        public ulong Seed { get; init; } = 1;

        [CommandOption("--precision <SHARE>")]
        [Description("Stop when half the 95 % interval of median and P90 is this share of the time, 0.001 to 0.5.")]
        public double? Precision { get; init; }

        [CommandOption("--against <PLAN>")]
        [Description("Another plan to set beside it, on the same luck; up to three of them, each with its own --against.")]
        public string[] Against { get; init; } = [];

        [CommandOption("--log-help <BY>")]
        [Description("Print nothing but an entry help.expected for the record, noted by this person.")]
        public string? LogHelp { get; init; }

        [CommandOption("--json")]
        [Description("Print the whole forecast as JSON.")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Trials is < 100 or > 5_000_000)
            return ErrorOutput.Plainly($"--trials {settings.Trials} has to be 100 to 5000000");
        if (settings.Precision is { } asked && asked is not (>= 0.001 and <= 0.5))
            return ErrorOutput.Plainly(FormattableString.Invariant($"--precision {asked} has to be 0.001 to 0.5"));
        if (settings.Against.Length >= SideBySide.Most)
            return ErrorOutput.Plainly($"--against: side by side stand {SideBySide.Fewest} to {SideBySide.Most} plans");
        if (Judged(settings, out var rules, out var under) is not { } deadlines || Ready(settings.Plan) is not { } ready)
            return ErrorOutput.Unusable;
        if (under is var (state, now))
            ready = ready.Since(state, now);
        var others = settings.Against.Select(Ready).ToArray();
        if (others.Any(o => o is null))
            return ErrorOutput.Unusable;
        foreach (var odd in ready.Oddities)
            ErrorOutput.Say($"{odd} (taken all the same)");
        var limits =
            settings.Trials is { } trials ? SamplingLimits.Exactly(trials)
            : settings.Precision is { } precision ? new SamplingLimits { Relative = precision, MostTrials = 5_000_000 }
            : new SamplingLimits();
        using var interrupt = new Interrupt(cancellationToken);
        var simulation = Run(ready.Start(new Rng(settings.Seed), limits, deadlines), interrupt.Token);
        if (settings.LogHelp is { } by)
            return Logged(simulation, rules.Protocol, by);
        var decision = DecisionTime.Of(simulation, deadlines, interrupt.Token);
        if (decision is { Choice.Until: null })
        {
            // The plan leaves open how long to wait: what follows is told of the best wait.
            var decided = decision.Decided(ready.Compiled.Plan);
            ready = ready with { Compiled = CompiledPlan.Of(decided, ready.Compiled.Darkness, ready.Compiled.SoFar) };
            simulation = Run(ready.Start(new Rng(settings.Seed), SamplingLimits.Exactly(simulation.Done), deadlines), interrupt.Token);
        }

        var outlook = ready.Told(simulation, deadlines);
        var answers = WhatIf
            .Usual.Select(whatIf =>
                whatIf.Start(simulation) is { } changed
                    ? WhatIfAnswer.Of(whatIf, simulation, changed.Run(interrupt.Token), deadlines)
                    : null
            )
            .OfType<WhatIfAnswer>()
            .ToArray();
        var side = others.Length == 0 ? null : Beside([ready, .. others.OfType<ReadyPlan>()], simulation, deadlines, interrupt.Token);
        if (settings.Json)
            Console.Out.WriteLine(Encoding.UTF8.GetString(OutlookJson.Write(outlook, answers, decision, side).Utf8.Span));
        else
            WayText.Write(outlook, answers, decision, side, ready.Compiled.Darkness, Console.Out);
        return 0;
    }

    /// <summary>The plans on the same luck, each with as many trials as the first.</summary>
    private static SideBySide Beside(
        ReadyPlan[] plans,
        Simulation first,
        ImmutableArray<Deadline> deadlines,
        CancellationToken cancellation
    ) =>
        SideBySide.Of(
            [
                .. SideBySide
                    .Aligned([.. plans.Select(p => p.Compiled.Plan)])
                    .Select(
                        (plan, i) =>
                            new Simulation(
                                CompiledPlan.Of(plan, plans[i].Compiled.Darkness, plans[i].Compiled.SoFar),
                                first.Rng,
                                SamplingLimits.Exactly(first.Done)
                            ).Run(cancellation)
                    ),
            ],
            deadlines
        );

    private static ReadyPlan? Ready(string path) =>
        Opened.WholeOf(
            path,
            bytes =>
                PlanReader.Read(bytes, path) switch
                {
                    Read<Plan>.Usable(var plan) => ReadyPlan.Of(plan, XmlTracks.In(Files.Beside(path))),
                    Read<Plan>.Refused(var why) => new Read<ReadyPlan>.Refused(why),
                    _ => throw new System.Diagnostics.UnreachableException(),
                }
        );

    /// <summary>The limbs' limits; none without a record, nothing with one that can't be read.</summary>
    /// <param name="under">What holds in the record, and when; null without a record.</param>
    private ImmutableArray<Deadline>? Judged(Settings settings, out Rulebook rules, out (State State, Instant Now)? under)
    {
        under = null;
        rules = Opened.Shipped;
        if (settings.Record is null)
        {
            if (Opened.Asked(settings.At, clock) is not { } at || Opened.InForce(settings, at) is not var (inForce, _))
                return null;
            rules = inForce;
            return ImmutableArray<Deadline>.Empty;
        }

        var judging = new JudgingSettings
        {
            Record = settings.Record,
            At = settings.At,
            Protocol = settings.Protocol,
            Local = settings.Local,
            Issuers = settings.Issuers,
        };
        if (Opened.Of(judging, clock) is not { } opened)
            return null;
        if (opened.ClockNote is { } note)
            ErrorOutput.Say(note);
        rules = opened.Rules;
        under = (opened.Record.Readings[0], opened.At);
        return LimbDeadlines.Of(Judge.At(opened.Record, opened.Rules, opened.At));
    }

    /// <summary>Says how far it is once that takes longer than a second.</summary>
    private Simulation Run(Simulation simulation, CancellationToken cancellation)
    {
        var (begun, said) = (clock.GetTimestamp(), 0L);
        for (var progress = simulation.Progress; !progress.Finished; progress = simulation.Step(Piece))
        {
            cancellation.ThrowIfCancellationRequested();
            var seconds = (long)clock.GetElapsedTime(begun).TotalSeconds;
            if (seconds <= said)
                continue;
            said = seconds;
            ErrorOutput.Say(
                FormattableString.Invariant($"{progress.Done} of {progress.Planned} trials, more if that is not precise enough")
            );
        }

        return simulation;
    }

    private int Logged(Simulation simulation, Protocol protocol, string by)
    {
        if (HelpForecast.Of(simulation, protocol.Clock.SoonProbability) is not { } help)
            return ErrorOutput.Plainly("in most trials nothing comes within 60 days: there is no help to expect");
        var now = Instant.FromDateTimeOffset(clock.GetUtcNow());
        // A device of its own, so that no number of another device is taken.
        var device = $"way{new Rng((ulong)now.ToUnixTimeTicks()).Split((ulong)help.Likely.ToUnixTimeTicks()).Bits(0):x16}"[..11];
        try
        {
            var entry = EntryWriting.Write(new(device, 1), Happened.At(now), now, by, help);
            Console.Out.WriteLine(Encoding.UTF8.GetString(entry.Json.Utf8.Span));
            return 0;
        }
        catch (ArgumentException fault)
        {
            return ErrorOutput.Plainly($"--log-help: {fault.Message}");
        }
    }
}
