namespace Farhold.Cli.Tests;

public class DoseTests
{
    private static readonly string Local = Run.Beside("skarvedal-local.json");
    private static readonly string Issuer = Run.Beside("skarvedal.issuer");

    [Fact]
    public void Without_a_local_protocol_no_dose_is_shown()
    {
        var ran = Run.Farhold("dose", Run.Demo, "paracetamol", "--at", "2031-05-04T06:10:00Z");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("paracetamol: ask for advice; no dose is shown", ran.Output);
        Assert.DoesNotContain(" mg", ran.Output);
        Assert.Contains("No local protocol in force orders a drug", Run.Farhold("dose", Run.Demo).Output);
    }

    [Fact]
    public void What_the_local_protocol_orders_is_weighed_against_the_record()
    {
        var ran = Run.Farhold("dose", Run.Demo, "--local", Local, "--issuer", Issuer, "--at", "2031-05-04T06:10:00Z");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains(
            "tranexamic-acid: do not give it\n  because: too late: 4 h 20 min since the injury; never from 3 h 00 min on",
            ran.Output
        );
        Assert.Contains("meloxicam: do not give it", ran.Output);
        Assert.Contains("kidney risk: a limb two hours or more without blood flow", ran.Output);
    }

    [Fact]
    public void A_dose_by_mass_names_the_mass_in_both_units()
    {
        using var scratch = new Scratch();
        var child = scratch.Write("r.jsonl", Lines.Weighed(9, 30));
        var ran = Run.Farhold("dose", child, "paracetamol", "--local", Local, "--issuer", Issuer, "--at", "2031-05-04T03:00:00Z");
        Assert.Contains("  for a mass of 30 kg (66 lb): is that right, and in the right unit?\n", ran.Output);
        Assert.Contains("  for: pain\n", ran.Output);
        var adult = scratch.Write("a.jsonl", Lines.Weighed(34, 68));
        ran = Run.Farhold("dose", adult, "meloxicam", "--local", Local, "--issuer", Issuer, "--at", "2031-05-04T03:00:00Z");
        Assert.Contains("meloxicam: 15 mg, mouth\n", ran.Output);
        Assert.DoesNotContain("for a mass of", ran.Output); // 15 mg whatever the mass
    }

    [Fact]
    public void What_nobody_asked_is_asked_before_a_dose()
    {
        using var scratch = new Scratch();
        var lines = Lines.Weighed(34, 68);
        lines[0] = lines[0].Replace(",\"medicines\":[],\"history\":\"healthy\"", "", StringComparison.Ordinal);
        var asked = scratch.Write("r.jsonl", lines);
        var ran = Run.Farhold("dose", asked, "paracetamol", "--local", Local, "--issuer", Issuer, "--at", "2031-05-04T03:00:00Z");
        Assert.Contains("paracetamol (\"White strip\"): look first, then ask again", ran.Output);
        Assert.Contains("  ask about medicines, and enter them, or that there are none", ran.Output);
        Assert.Contains("write what there is into the history", ran.Output);
    }

    [Fact]
    public void An_unknown_drug_is_refused_with_those_there_are()
    {
        var ran = Run.Farhold("dose", Run.Demo, "willow bark");
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("willow bark is no drug of the formulary; there are paracetamol,", ran.Errors);
    }
}
