using System.Globalization;
using Firely.Fhir.Validation;
using Hl7.Fhir.Model;
using Hl7.Fhir.Serialization;
using Hl7.Fhir.Specification.Source;
using Hl7.Fhir.Specification.Terminology;

namespace Farhold.Documents.Tests.Fhir;

/// <summary>The Firely validator over HL7's own definitions of R4, which lie beside the tests: no network.</summary>
internal sealed class Validating
{
    private readonly Validator validator;

    public Validating()
    {
        var own = FhirJsonDeserializer.DEFAULT.DeserializeResource(
            new StreamReader(typeof(Documents.Fhir.FhirDocument).Assembly.GetManifestResourceStream("record-line.json")!).ReadToEnd()
        );
        var definitions = new CachedResolver(
            new SnapshotSource(
                new MultiResolver(
                    new InMemoryResourceResolver(own),
                    new ZipSource(Path.Combine(AppContext.BaseDirectory, "specification.zip"))
                )
            )
        );
        validator = new(definitions, LocalTerminologyService.CreateDefaultForCore(definitions), null, null, null);
    }

    /// <summary>What the validator says of a document as it is written, one line each: severity, place, words.</summary>
    public IReadOnlyList<Finding> Of(byte[] document)
    {
        var bundle = FhirJsonDeserializer.DEFAULT.DeserializeResource(System.Text.Encoding.UTF8.GetString(document));
        return
        [
            .. validator
                .Validate(bundle)
                .Issue.Select(i => new Finding(
                    i.Severity ?? OperationOutcome.IssueSeverity.Fatal,
                    string.Join(' ', i.Expression),
                    i.Details?.Text ?? i.Diagnostics ?? ""
                )),
        ];
    }

    internal sealed record Finding(OperationOutcome.IssueSeverity Severity, string Place, string Words)
    {
        public bool IsError => Severity is OperationOutcome.IssueSeverity.Error or OperationOutcome.IssueSeverity.Fatal;

        public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Severity} at {Place}: {Words}");
    }
}
