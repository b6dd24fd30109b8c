namespace Farhold.App.Tests.Architecture;

/// <summary>No type of the parts is there for its tests alone: what nobody can use is wired in, or goes with its tests.</summary>
public class ReachedTests(ReachedCode code) : IClassFixture<ReachedCode>
{
    [Theory]
    [InlineData("Farhold.Core")]
    [InlineData("Farhold.WayOut")]
    [InlineData("Farhold.Exchange")]
    [InlineData("Farhold.Signing")]
    [InlineData("Farhold.Xml")]
    public void Every_type_is_reached_from_the_app_the_commands_the_hub_or_the_documents(string part)
    {
        var only = code.Unreached(part);
        Assert.True(only.Length == 0, $"Only tests reach these of {part}:\n{string.Join('\n', only)}");
    }

    [Fact]
    public void A_type_that_none_of_them_names_is_found() =>
        Assert.Contains(typeof(ReachedTests).FullName, code.Unreached("Farhold.App.Tests"));
}
