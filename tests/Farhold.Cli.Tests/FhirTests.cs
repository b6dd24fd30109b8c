using System.Text.Json;

namespace Farhold.Cli.Tests;

public class FhirTests
{
    [Fact]
    public void A_record_goes_out_as_a_document_and_comes_back_the_same()
    {
        using var scratch = new Scratch();
        var (bundle, back) = (scratch.At("bundle.json"), scratch.At("back.jsonl"));
        var went = Run.Farhold("fhir", Run.Demo, "-o", bundle, "--at", "2031-05-04T07:00:00Z");
        Assert.Equal((0, ""), (went.ExitCode, went.Errors));
        using (var document = JsonDocument.Parse(File.ReadAllBytes(bundle)))
        {
            Assert.Equal("document", document.RootElement.GetProperty("type").GetString());
            Assert.Equal("2031-05-04T07:00:00+00:00", document.RootElement.GetProperty("timestamp").GetString());
        }

        var came = Run.Farhold("fhir", "--read", bundle, "-o", back);
        Assert.Equal((0, ""), (came.ExitCode, came.Errors));
        Assert.Equal(File.ReadLines(Run.Demo).Where(l => l.Length > 0).Order(StringComparer.Ordinal), File.ReadLines(back).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_document_of_another_system_is_refused_and_nothing_is_written()
    {
        using var scratch = new Scratch();
        var foreign = scratch.Write("b.json", """{"resourceType":"Bundle","type":"document","entry":[{"resource":{"resourceType":"Composition"}}]}""");
        var ran = Run.Farhold("fhir", "--read", foreign, "-o", scratch.At("r.jsonl"));
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("b.json:1:1: no entry of a record is carried here", ran.Errors);
        Assert.False(File.Exists(scratch.At("r.jsonl")));
    }
}
