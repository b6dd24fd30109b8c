namespace Farhold.App.Tests.Card;

public class PhoneWeightTests
{
    [Fact]
    public void Nothing_heavy_goes_to_the_phone() =>
        Assert.DoesNotContain(
            typeof(Texts).Assembly.GetReferencedAssemblies().Select(a => a.Name!),
            n =>
                n == "Farhold.Documents"
                || n.StartsWith("Hl7.", StringComparison.Ordinal)
                || n.StartsWith("PdfSharp", StringComparison.Ordinal)
        );
}
