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
        Assert.Equal(
            File.ReadLines(Run.Demo).Where(l => l.Length > 0).Order(StringComparer.Ordinal),
            File.ReadLines(back).Order(StringComparer.Ordinal)
        );
    }

    /// <summary>A local protocol's shorter limit shows in the document; whoever reads it back need not have that protocol.</summary>
    [Fact]
    public void Needs_and_recommendation_go_by_the_rules_in_force_and_reading_back_says_that_those_may_differ()
    {
        using var scratch = new Scratch();
        var local = scratch.Write(
            "local.json",
            "{\"local\":\"valley\",\"version\":\"1\",\"over\":\"farhold-base\",\"clock\":{\"limit\":\"PT5H\"}}"
        );
        var bundle = scratch.At("bundle.json");
        var went = Run.Farhold("fhir", Run.Demo, "-o", bundle, "--local", local, "--at", "2031-05-04T03:23:00Z");
        Assert.Equal(0, went.ExitCode);
        var text = File.ReadAllText(bundle);
        Assert.Contains("left to 5 h 00 min", text, StringComparison.Ordinal);
        Assert.DoesNotContain("left to 6 h 00 min", text, StringComparison.Ordinal);
        var came = Run.Farhold("fhir", "--read", bundle, "-o", scratch.At("back.jsonl"));
        Assert.Equal(0, came.ExitCode);
        Assert.Contains(
            "its needs and recommendation were changed, or go by other rules than those here",
            came.Errors,
            StringComparison.Ordinal
        );
        Assert.Single(came.Errors.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public void A_document_of_another_system_is_refused_and_nothing_is_written()
    {
        using var scratch = new Scratch();
        var foreign = scratch.Write(
            "b.json",
            """{"resourceType":"Bundle","type":"document","entry":[{"resource":{"resourceType":"Composition"}}]}"""
        );
        var ran = Run.Farhold("fhir", "--read", foreign, "-o", scratch.At("r.jsonl"));
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("b.json:1:1: no entry of a record is carried here", ran.Errors);
        Assert.False(File.Exists(scratch.At("r.jsonl")));
    }
}
