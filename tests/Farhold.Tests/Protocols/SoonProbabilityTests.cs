using System.Text;

namespace Farhold.Tests.Protocols;

public class SoonProbabilityTests
{
    private static Read<Protocol> Local(string clock, bool signed = false)
    {
        var utf8 = Encoding.UTF8.GetBytes(
            $$"""{"local":"hut","version":"1",{{(signed ? "\"title\":\"Hut\"," : "")}}"over":"{{ShippedProtocol.Protocol.Id}}","clock":{{clock}}}"""
        );
        return signed ? LocalFile.Read(utf8) : LocalFile.ReadUnsigned(utf8);
    }

    [Fact]
    public void The_shipped_protocol_asks_for_nine_in_ten() => Assert.Equal(0.9, ShippedProtocol.Protocol.Clock.SoonProbability);

    [Fact]
    public void Asking_for_more_tightens_and_needs_no_signature()
    {
        var laid = Assert.IsType<Read<Protocol>.Usable>(Local("""{"soonProbability":0.95}""")).Value;
        Assert.Equal(0.95, laid.Clock.SoonProbability);
        Assert.Contains(laid.Local!.Changes, c => c.Contains("0.95 instead of 0.9", StringComparison.Ordinal));
    }

    [Fact]
    public void Asking_for_less_loosens_and_needs_one()
    {
        Assert.Contains(
            "needs a signature",
            Assert.Single(Assert.IsType<Read<Protocol>.Refused>(Local("""{"soonProbability":0.8}""")).Refusals).Reason,
            StringComparison.Ordinal
        );
        Assert.IsType<Read<Protocol>.Usable>(Local("""{"soonProbability":0.8}""", signed: true));
    }

    [Theory]
    [InlineData("0.2")]
    [InlineData("1")]
    [InlineData("1.2")]
    [InlineData("\"0.9\"")]
    public void Anything_but_a_share_between_half_and_all_is_refused(string value) =>
        Assert.IsType<Read<Protocol>.Refused>(Local($$"""{"soonProbability":{{value}}}""", signed: true));

    [Fact]
    public void Saying_nothing_keeps_what_is_under_it() =>
        Assert.Equal(0.9, Assert.IsType<Read<Protocol>.Usable>(Local("""{"soon":"PT3H"}""")).Value.Clock.SoonProbability);
}
