using Farhold.Documents.Fhir;

namespace Farhold.Documents.Tests;

public class ArchitectureTests
{
    private static readonly string[] MayUse = ["NodaTime", "Farhold.Core", "Farhold.Exchange"];

    [Fact]
    public void Documents_use_core_exchange_and_their_two_libraries_only() =>
        Assert.Empty(
            typeof(FhirDocument)
                .Assembly.GetReferencedAssemblies()
                .Select(a => a.Name!)
                .Where(n =>
                    !n.StartsWith("System", StringComparison.Ordinal)
                    && !n.StartsWith("Hl7.", StringComparison.Ordinal)
                    && !n.StartsWith("PdfSharp", StringComparison.Ordinal)
                    && !n.StartsWith("Microsoft.", StringComparison.Ordinal)
                )
                .Except(MayUse)
        );

    [Fact]
    public void Public_classes_are_sealed_or_static() =>
        Assert.Empty(typeof(FhirDocument).Assembly.GetExportedTypes().Where(t => t.IsClass && !t.IsSealed).Select(t => t.FullName));
}
