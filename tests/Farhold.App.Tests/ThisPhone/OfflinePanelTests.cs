namespace Farhold.App.Tests.ThisPhone;

public class OfflinePanelTests : ScreenTest
{
    [Fact]
    public void The_version_stands_beside_the_build()
    {
        Copy.State = Copy.State with { Serving = "a1b2c3d4" };
        var facts = Render<OfflinePanel>().FindAll("dl.facts > div").Select(f => f.TextContent);
        Assert.Equal([Texts.VersionLabel + Product.Version, Texts.BuildLabel + "a1b2c3d4"], facts);
    }
}
