using System.Text;

namespace Farhold.Tests.Drugs;

public class FormularyReaderTests
{
    private const string Drug = """
        {"id":"a","forms":[{"text":"tablet","pieceMg":500}],"regimens":[{"id":"r","route":"mouth","text":"x","fromYears":16,"underYears":131,"mg":500,"mostMg":500,"every":"PT8H","mostDayMg":1500,"sources":["s"]}]}
        """;

    [Fact]
    public void Every_regimen_keeps_within_its_own_limits() =>
        Assert.All(
            ShippedFormulary.Formulary.Drugs,
            d =>
                Assert.All(
                    d.Regimens,
                    r =>
                    {
                        Assert.True((r.FixedMg?.High ?? 0) <= r.MostMg && r.MostMg <= r.MostDayMg, $"{d.Id} {r.Id}");
                        Assert.True(r.Every > Duration.Zero);
                        Assert.All(r.Sources, s => Assert.Contains(s, ShippedFormulary.Formulary.Sources.Keys));
                    }
                )
        );

    [Fact]
    public void A_drug_goes_by_its_names_in_any_case()
    {
        Assert.Equal("paracetamol", ShippedFormulary.Formulary.Named(" ACETAMINOPHEN ")!.Id);
        Assert.Null(ShippedFormulary.Formulary.Named("willow bark"));
    }

    [Theory]
    [InlineData("\"mg\":500", "\"mg\":-1", "mg has to be a number above 0")]
    [InlineData("\"mg\":500", "\"mg\":[500,300]", "mg has to be a number above 0, or a list of a lower and an upper")]
    [InlineData("\"mg\":500", "\"mg\":500,\"mgPerKg\":15", "exactly one of mg and mgPerKg")]
    [InlineData("\"pieceMg\":500", "\"pieceMg\":500,\"mgPerMl\":5", "exactly one of pieceMg and mgPerMl")]
    [InlineData("\"every\":\"PT8H\"", "\"every\":8", "every has to be a span of time")]
    [InlineData("\"underYears\":131", "\"underYears\":16", "ages from fromYears up to")]
    [InlineData("\"mostMg\":500,", "", "a regimen says mostMg and mostDayMg")]
    [InlineData("[\"s\"]", "[\"t\"]", "the source t is cited but not listed")]
    [InlineData("\"id\":\"a\"", "\"id\":\"a\",\"dose\":1", "dose is not known here")]
    [InlineData("\"id\":\"a\"", "\"id\":\"a\",\"notUnder\":{\"sources\":[\"s\"]}", "notUnder says years")]
    [InlineData("\"id\":\"a\"", "\"id\":\"a\",\"for\":[7]", "a rule has to be an object")]
    [InlineData("\"id\":\"a\"", "\"id\":\"a\",\"for\":[{\"text\":\"x\"}]", "sources is missing")]
    [InlineData(
        "\"id\":\"a\"",
        "\"id\":\"a\",\"against\":[{\"text\":\"x\",\"sources\":[\"s\"]}]",
        "a rule asks exactly one of when, takes, takesNo, has, given"
    )]
    [InlineData(
        "\"id\":\"a\"",
        "\"id\":\"a\",\"cautions\":[{\"when\":\"shock\",\"has\":\"epilepsy\",\"text\":\"x\",\"sources\":[\"s\"]}]",
        "a rule asks exactly one of"
    )]
    [InlineData(
        "\"id\":\"a\"",
        "\"id\":\"a\",\"against\":[{\"when\":\"rain\",\"text\":\"x\",\"sources\":[\"s\"]}]",
        "when has to be one of shock, shock-threatens"
    )]
    [InlineData(
        "\"id\":\"a\"",
        "\"id\":\"a\",\"onAdvice\":[{\"has\":\"a cold\",\"text\":\"x\",\"sources\":[\"s\"]}]",
        "has has to be one of stomach-ulcer"
    )]
    [InlineData(
        "\"id\":\"a\"",
        "\"id\":\"a\",\"against\":[{\"takes\":\"sweets\",\"text\":\"x\",\"sources\":[\"s\"]}]",
        "takes has to be one of anticoagulant"
    )]
    [InlineData(
        "\"id\":\"a\"",
        "\"id\":\"a\",\"against\":[{\"given\":\"opioid\",\"text\":\"x\",\"sources\":[\"s\"]}]",
        "within is missing"
    )]
    [InlineData(
        "\"id\":\"a\"",
        "\"id\":\"a\",\"against\":[{\"given\":\"tea\",\"within\":\"PT1H\",\"text\":\"x\",\"sources\":[\"s\"]}]",
        "tea is given to no drug"
    )]
    [InlineData(
        "\"id\":\"a\"",
        "\"id\":\"a\",\"against\":[{\"when\":\"shock\",\"within\":\"PT1H\",\"text\":\"x\",\"sources\":[\"s\"]}]",
        "within goes with given"
    )]
    [InlineData(
        "\"id\":\"a\"",
        "\"id\":\"a\",\"against\":[{\"when\":\"shock\",\"text\":\"x\",\"sources\":[\"t\"]}]",
        "the source t is cited but not listed"
    )]
    [InlineData("\"mostMg\":500,", "\"mostMg\":500,\"mostMgPerKg\":0,", "mostMgPerKg has to be a number above 0")]
    [InlineData("\"mostMg\":500,", "\"mostMg\":500,\"fromKg\":50,\"underKg\":40,", "masses from fromKg up to")]
    [InlineData("\"mostMg\":500,", "\"mostMg\":500,\"mostDoses\":1.5,", "mostDoses is a whole number")]
    [InlineData("\"mostMg\":500,", "\"mostMg\":500,\"then\":{\"text\":\"x\"},", "then says mgPerKgHour")]
    public void A_faulty_formulary_is_refused_with_the_reason(string right, string wrong, string reason)
    {
        Assert.IsType<Read<Formulary>.Usable>(Read(Drug));
        var refusals = Assert.IsType<Read<Formulary>.Refused>(Read(Drug.Replace(right, wrong, StringComparison.Ordinal))).Refusals;
        Assert.Contains(refusals, r => r.Reason.Contains(reason, StringComparison.Ordinal));
    }

    [Fact]
    public void One_name_for_two_drugs_is_refused() => Assert.IsType<Read<Formulary>.Refused>(Read($"{Drug},{Drug}"));

    [Fact]
    public void A_refusal_names_the_place()
    {
        var faulty = Drug.Replace("\"id\":\"a\"", "\"id\":\"a\",\"against\":[{\"when\":\"rain\"}]", StringComparison.Ordinal);
        Assert.All(Assert.IsType<Read<Formulary>.Refused>(Read(faulty)).Refusals, r => Assert.True(r.Line > 0 && r.Column > 0));
    }

    private static Read<Formulary> Read(string drugs) =>
        FormularyReader.Read(
            Encoding.UTF8.GetBytes(
                $$"""
                {"formulary":"f","version":"1","title":"F","sources":{"s":{"title":"S","known":"design"} },"drugs":[{{drugs}}]}
                """
            ),
            "f.json"
        );
}
