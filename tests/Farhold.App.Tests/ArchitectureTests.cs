namespace Farhold.App.Tests;

public class ArchitectureTests
{
    /// <summary>As for the parts it is made of (Farhold.Tests): what reads XML on the phone is a script.</summary>
    [Fact]
    public void The_app_does_not_use_the_frameworks_xml() =>
        Assert.DoesNotContain(typeof(Root).Assembly.GetReferencedAssemblies(), a => a.Name!.Contains("Xml", StringComparison.Ordinal));
}
