using System.ComponentModel;
using System.Text;
using Farhold.Documents.Fhir;
using NodaTime;
using Spectre.Console.Cli;

namespace Farhold.Cli;

internal sealed class FhirCommand(TimeProvider clock) : Command<FhirCommand.Settings>
{
    public sealed class Settings : ProtocolSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("A record; with --read a document that was written from one. A dash reads standard input.")]
        public string File { get; init; } = "";

        [CommandOption("-o|--output <FILE>", isRequired: true)]
        [Description("Where to.")]
        public string Output { get; init; } = "";

        [CommandOption("--read")]
        [Description("Read a document back into the record it was written from.")]
        public bool Read { get; init; }

        [CommandOption("--at <INSTANT>")]
        [Description("The document's date, such as 2031-05-04T02:10:00Z. Without it: now.")]
        public string? At { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken) =>
        settings.Read ? Back(settings) : Out(settings);

    private int Out(Settings settings)
    {
        if (Opened.RecordOf(settings.File) is not { } record)
            return ErrorOutput.Unusable;
        var at = settings.At is null
            ? Instant.FromDateTimeOffset(clock.GetUtcNow())
            : WrittenInstant.TryParse(Encoding.UTF8.GetBytes(settings.At));
        if (at is not { } made)
            return ErrorOutput.Plainly($"--at {settings.At} is no instant of the years 1900 to 2500; write it like 2031-05-04T02:10:00Z");
        if (Opened.InForce(settings, made) is not var (rules, _))
            return ErrorOutput.Unusable;
        if (Files.Write(settings.Output, FhirDocument.Write(record, rules, made)) is { } fault)
            return ErrorOutput.Plainly(fault);
        Console.Out.WriteLine(Plain.Line($"{settings.Output}: {record.Count} entries as a FHIR R4 document"));
        return 0;
    }

    private int Back(Settings settings)
    {
        var file = Files.Read(settings.File);
        if (file is not Read<ReadOnlyMemory<byte>>.Usable { Value: var bytes })
            return ErrorOutput.Of(((Read<ReadOnlyMemory<byte>>.Refused)file).Refusals);
        if (Opened.InForce(settings, Instant.FromDateTimeOffset(clock.GetUtcNow())) is not var (rules, _))
            return ErrorOutput.Unusable;
        var document = FhirReader.Read(bytes, settings.File, rules);
        if (document is not Read<FhirRecord>.Usable { Value: var read })
            return ErrorOutput.Of(((Read<FhirRecord>.Refused)document).Refusals);
        foreach (var difference in read.Differences)
            ErrorOutput.Say($"{settings.File}: {difference} since it was written; the record below it is as first written");
        using var lines = new MemoryStream();
        RecordReader.Write(lines, read.Record.Entries, read.Record.Damaged);
        if (Files.Write(settings.Output, lines.ToArray()) is { } fault)
            return ErrorOutput.Plainly(fault);
        Console.Out.WriteLine(Plain.Line($"{settings.Output}: {read.Record.Count} entries"));
        return 0;
    }
}
