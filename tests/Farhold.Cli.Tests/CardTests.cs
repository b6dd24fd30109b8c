namespace Farhold.Cli.Tests;

public class CardTests
{
    [Fact]
    public void The_card_of_a_record_is_written_as_a_pdf_the_same_each_time()
    {
        using var scratch = new Scratch();
        string[] Asked(string name) =>
            ["card", Run.Demo, "-o", scratch.At(name), "--at", "2031-05-04T07:00:00Z", "--paper", "a5", "--zone", "Europe/Oslo"];
        var ran = Run.Farhold(Asked("one.pdf"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Errors));
        Assert.Contains("Runa, female, 34 years, 68 kg, as of 4 May 2031 09:00, Europe/Oslo (UTC+02)", ran.Output);
        Run.Farhold(Asked("two.pdf"));
        var bytes = File.ReadAllBytes(scratch.At("one.pdf"));
        Assert.True(bytes.AsSpan().StartsWith("%PDF-1."u8));
        Assert.Equal(bytes, File.ReadAllBytes(scratch.At("two.pdf")));
    }

    [Theory]
    [InlineData("card.txt", "a4", "UTC", "has to end in .pdf")]
    [InlineData("card.pdf", "a3", "UTC", "has to be a5 or a4")]
    [InlineData("card.pdf", "a5", "Nowhere", "is no time zone")]
    public void What_it_can_not_do_is_said(string output, string paper, string zone, string reason)
    {
        using var scratch = new Scratch();
        var ran = Run.Farhold("card", Run.Demo, "-o", scratch.At(output), "--paper", paper, "--zone", zone);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains(reason, ran.Errors);
        Assert.False(File.Exists(scratch.At(output)));
    }
}
