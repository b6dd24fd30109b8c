using System.ComponentModel;
using Farhold.Documents.Fhir;
using Farhold.Exchange.Evidence;
using Farhold.Rehearsal.Runs;
using Farhold.Rehearsal.Scenarios;
using Farhold.Xml;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class CheckCommand(TimeProvider clock) : Command<CheckCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description(
            "A record, a protocol, a local protocol, its signature, an issuer's code, a trip, a kit list, a formulary, rules of warning "
                + "signs, a plan, a route, a study, a track (GPX), a FHIR document, a scenario, its acts, its truth or a run of it: its content shows "
                + "which. A dash reads standard input."
        )]
        public string File { get; init; } = "";

        [CommandOption("--protocol <FILE>")]
        [Description("The protocol that a local one is laid over, in place of the shipped one.")]
        public string? Protocol { get; init; }

        [CommandOption("--issuer <FILE>")]
        [Description("An issuer's code that is trusted for this run. May be given several times.")]
        public string[] Issuers { get; init; } = [];

        [CommandOption("--at <INSTANT>")]
        [Description("When a local protocol has to be valid. Without it: now.")]
        public string? At { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var file = settings.File;
        switch (Files.Read(file))
        {
            case Read<ReadOnlyMemory<byte>>.Usable { Value: var bytes }:
                return Contents.Of(bytes.Span) switch
                {
                    Content.Protocol => Whole(ProtocolReader.Read(bytes, file), file, p => Lines(Opened.Shipped.By(p))),
                    Content.Local => Opened.RulesOf(settings.Protocol) is { } under && Opened.Asked(settings.At, clock) is { } at
                        ? Local(Trust.Local(file, bytes, settings.Issuers, under, at), file)
                        : ErrorOutput.Unusable,
                    Content.Trip => Whole(TripReader.Read(bytes, file, Opened.Shipped.Kit), file, Lines),
                    Content.Kit => Whole(KitReader.Read(bytes, file), file, Lines),
                    Content.Formulary => Whole(FormularyReader.Read(bytes, file), file, Lines),
                    Content.WarningSigns => Whole(WarningSignReader.Read(bytes, file, Opened.Shipped.Protocol.Clock), file, Lines),
                    Content.Plan => Whole(PlanOf(bytes, file), file, Lines),
                    Content.Route => Whole(RouteReader.Read(bytes, file, XmlTracks.In(Files.Beside(file))), file, Lines),
                    Content.Track => Whole(XmlTracks.In(_ => new Read<ReadOnlyMemory<byte>>.Usable(bytes))(file), file, Lines),
                    Content.Document => Document(FhirReader.Read(bytes, file, Opened.Shipped, cancellationToken), file),
                    Content.Issuer => Whole(IssuerCode.Read(bytes.Span, file), file, Lines),
                    Content.Rotation => Whole(KeyRotation.Read(bytes.Span, file), file, Lines),
                    Content.Scenario => Whole(ScenarioReader.Read(bytes, file), file, Lines),
                    Content.Acts => Whole(Script.Read(bytes, file), file, Lines),
                    Content.Truth => Whole(TruthFile.Read(bytes, file), file, Lines),
                    Content.Run => Whole(SharedRun.Read(bytes, file), file, Lines),
                    Content.Study => Whole(StudyReader.Read(bytes, file), file, Lines),
                    Content.Signature => Whole(LocalSignature.Read(bytes.Span, file), file, Lines),
                    _ => Record(RecordReader.Read(bytes, file), file),
                };
            case Read<ReadOnlyMemory<byte>>.Refused refused:
                return ErrorOutput.Of(refused.Refusals);
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static int Whole<T>(Read<T> read, string file, Func<T, IEnumerable<string>> lines)
        where T : class
    {
        if (read is not Read<T>.Usable(var whole))
            return ErrorOutput.Of(((Read<T>.Refused)read).Refusals);
        Print($"{file}: usable");
        foreach (var line in lines(whole))
            Print(line);
        return 0;
    }

    /// <summary>Usable or not, and what stands behind it; one whose time is over fails the check.</summary>
    private static int Local(Read<Rulebook> read, string file)
    {
        var code = Whole(read, file, Lines);
        if (read is not Read<Rulebook>.Usable { Value.Protocol.Local: { } local })
            return code;
        Print($"standing: {Wire.Word(local.Standing)}; hash {local.Hash}");
        return local.Standing == Standing.Expired ? ErrorOutput.Plainly($"{file} expired: {Say.Time(local.Until!.Value)}") : code;
    }

    private static IEnumerable<string> Lines(Rulebook rules) =>
        [
            .. RulesWords.Of(rules),
            $"{rules.Protocol.Criteria.Length} criteria, {rules.Protocol.Tasks.Length} tasks, {rules.Protocol.Sources.Count} sources",
            .. rules.Protocol.Local is { } local ? DifferenceWords.Lines(local) : [],
        ];

    private static IEnumerable<string> Lines(StudyPlan study) =>
        [
            StudyTexts.CheckStudy(study.Title),
            StudyTexts.CheckSize(study.Cohorts.Length, study.Policies.Length, study.Evacuation.Length, study.Run.Casualties),
            StudyTexts.NotGuidance,
        ];

    private static IEnumerable<string> Lines(TripPlan trip) =>
        [
            $"A trip: {trip.Party.Length} in the party, {trip.Packed.Count} items counted, help within "
                + $"{trip.HoursSaid ?? "an unknown time"}",
            "What is missing for it: farhold prepare",
        ];

    private static IEnumerable<string> Lines(KitList kit) =>
        [$"Kit list {kit.Id} {kit.Version}: {kit.Title}", $"{kit.Items.Length} items, {kit.Sources.Count} sources"];

    private static IEnumerable<string> Lines(Formulary formulary) =>
        [
            $"Formulary {formulary.Id} {formulary.Version}: {formulary.Title}",
            $"{formulary.Drugs.Length} drugs, {formulary.Sources.Count} sources",
        ];

    private static IEnumerable<string> Lines(WarningRules rules) =>
        [$"Warning signs {rules.Id} {rules.Version}: {rules.Title}", $"{rules.Rules.Length} rules, {rules.Sources.Count} sources"];

    /// <summary>With its tracks, which lie beside it: one that is missing or no good makes the plan unusable.</summary>
    private static Read<MeasuredPlan> PlanOf(ReadOnlyMemory<byte> bytes, string file) =>
        PlanReader.Read(bytes, file) switch
        {
            Read<Plan>.Usable(var plan) => PlanTracks.Join(plan, XmlTracks.In(Files.Beside(file))),
            Read<Plan>.Refused(var why) => new Read<MeasuredPlan>.Refused(why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    private static IEnumerable<string> Lines(MeasuredPlan measured) =>
        [
            $"A plan: {measured.Plan.Title ?? measured.Plan.Id ?? "without a title"}, {Counted(measured.Plan.Legs.Length, "stage")}, "
                + $"from {Say.Time(measured.Plan.Start)}",
            .. measured.Tracks.Select(track => $"{track.Name}: {Say.Number(track.Metres / 1000)} km"),
        ];

    private static string Counted(int count, string what) => $"{Say.Number(count)} {what}{(count == 1 ? "" : "s")}";

    private static IEnumerable<string> Lines(Route route) =>
        [
            $"A route: {route.Title ?? route.Id ?? "without a title"}, {Say.Number(route.Track.Metres / 1000)} km, "
                + $"{Counted(route.Exits.Length, "side exit")}",
        ];

    private static IEnumerable<string> Lines(TrackFile track) =>
        [
            $"A track: {Say.Number(track.Metres / 1000)} km{(track.Climb is null ? ", no heights" : "")}",
            .. track.Oddities.Select(odd => $"odd: {odd}"),
        ];

    private static IEnumerable<string> Lines(IssuerCode issuer) =>
        [$"An issuer's code: {issuer.Name}, {issuer.Role}", $"digits to compare by voice: {issuer.Digits}"];

    private static IEnumerable<string> Lines(KeyRotation rotation) =>
        [
            $"A new key of the issuer {rotation.From}: {rotation.To.Name}, {rotation.To.Role}",
            $"digits to compare by voice: {rotation.To.Digits}",
        ];

    private static IEnumerable<string> Lines(Scenario scenario) =>
        [
            $"A scenario for practice, with an invented casualty: {scenario.Title}",
            $"{Counted(scenario.Wounds.Length, "wound")}, {Counted(scenario.Injects.Length, "inject")}, at most "
                + $"{Say.Duration(NodaTime.Duration.FromSeconds(scenario.End.At))}, model {scenario.Model}, seed {scenario.Seed}",
            .. scenario.KnownLimits.Select(limit => $"known limit: {limit}"),
        ];

    private static IEnumerable<string> Lines(Script script) => [$"Acts for a rehearsal: {Counted(script.Deeds.Length, "deed")}"];

    private static IEnumerable<string> Lines(TruthFile truth) =>
        [
            $"The truth of a rehearsal: {Counted(truth.Lines.Length, "line")}, model {truth.Header.Model}, seed {truth.Header.Seed}",
            "Whether it was changed: farhold debrief, with its scenario",
        ];

    private static IEnumerable<string> Lines(SharedRun run) =>
        [
            $"A run of the scenario {run.Of.Scenario}: {Counted(run.Lines.Length, "line")}, model {run.Of.Model}, seed {run.Of.Seed}",
            "What came of it: farhold rehearse, with its scenario",
        ];

    private static IEnumerable<string> Lines(LocalSignature signature) =>
        [
            $"A signature over a local protocol for {signature.Head.Over}, serial {signature.Head.Serial}",
            $"by the issuer {signature.Head.Issuer}, valid from {Say.Time(signature.Head.NotBefore)} until "
                + $"{Say.Time(signature.Head.Expires)}",
            "Whether it fits: farhold check of the local protocol, with its issuer's code (--issuer)",
        ];

    /// <summary>The record in it, and what was changed in the document since it was written.</summary>
    private static int Document(Read<FhirRecord> read, string file)
    {
        var code = Whole(read, file, document => [$"A FHIR document with a record of {document.Record.Count} entries"]);
        if (read is not Read<FhirRecord>.Usable { Value.Differences: { Length: > 0 } differences })
            return code;
        foreach (var difference in differences)
            ErrorOutput.Say($"{file}: {difference} since it was written");
        return ErrorOutput.Unusable;
    }

    /// <summary>What can't be read, or not understood, makes the check fail, though the rest of the record still serves.</summary>
    private static int Record(Read<RecordFile> read, string file)
    {
        if (read is not Read<RecordFile>.Usable { Value: var held })
            return ErrorOutput.Of(((Read<RecordFile>.Refused)read).Refusals);
        var record = CareRecord.Of(held);
        Print($"{file}: {(held.Damaged.IsEmpty ? "usable" : "DAMAGED, the lines that can be read are usable")}");
        Print($"{record.Count} entries, {held.Damaged.Length} lines that can't be read");
        foreach (var doubt in record.Doubts)
            Print($"doubt: {doubt.Text} ({doubt.Id})");
        foreach (var remark in record.Remarks.Concat(Oddities.Of(record.Readings[0])))
            Print($"odd: {(remark.About is { } about ? $"entry {about}: " : "")}{remark.Text}");
        Print($"fingerprint: {Fingerprint.Of(record)}");
        var faults = held
            .Damaged.SelectMany(d => d.Explained)
            .Concat(held.NotUnderstood(file))
            .Concat(Replaced(record, held, file))
            .Concat(Chains(record, held, file))
            .OrderBy(r => r.Line)
            .ToArray();
        return faults.Length == 0 ? 0 : ErrorOutput.Of(faults);
    }

    /// <summary>What amendments replace that is not understood in the entry they are about.</summary>
    private static IEnumerable<Refusal> Replaced(CareRecord record, RecordFile held, string file)
    {
        var targets = record.Entries.ToLookup(e => e.Id);
        return held
            .Entries.Zip(held.Lines)
            .SelectMany(e =>
                e.First.Payload is not Payload.EntryAmended amendment
                    ? []
                    : targets[amendment.Target]
                        .SelectMany(t =>
                            Amendments
                                .NotUnderstood(t, e.First)
                                .Select(n => n.In(t, file, e.Second) with { Column = EntryReader.Column(e.First.Json.Utf8.Span, n.Offset) })
                        )
                        .Distinct()
            );
    }

    /// <summary>Says how the entries of every device hang together; refuses each line that does not follow from the one before.</summary>
    private static List<Refusal> Chains(CareRecord record, RecordFile held, string file)
    {
        var broken = new List<Refusal>();
        var lines = held.Entries.Zip(held.Lines).ToLookup(e => e.First.Id, e => e.Second);
        foreach (var chain in EntryChain.Check(record))
        {
            Print(
                $"chain of {chain.Device}: {Say.Number(chain.Linked)} of {Say.Number(chain.Entries)} entries linked, "
                    + (
                        chain.Breaks is [var b, ..] ? $"BROKEN at {b.At}"
                        : chain.Linked == 0 ? "nothing to check"
                        : "unbroken"
                    )
                    + (chain.Breaks.Length > 1 ? $" and {Say.Number(chain.Breaks.Length - 1)} more" : "")
                    + (chain.Unchecked == 0 ? "" : $"; {Say.Number(chain.Unchecked)} name an entry that is not here")
            );
            broken.AddRange(chain.Breaks.Select(at => new Refusal(file, lines[at.At].First(), 1, $"entry {at.At}: {at.Reason}")));
        }

        return broken;
    }

    private static void Print(string line) => Console.Out.WriteLine(Plain.Line(line));
}
