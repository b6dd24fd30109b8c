using System.Text;
using Farhold.Hub.Tests.Harness;

namespace Farhold.Hub.Tests.Release;

/// <summary>What helps whoever works on the app is not in what is handed out.</summary>
public class NoDemoTests
{
    [Theory]
    [InlineData("StartScreen", true)]
    [InlineData("DemoScreen", false)]
    [InlineData("DemoClock", false)]
    [InlineData("skarvedal.jsonl", false)]
    public void The_published_app_has_its_screens_and_no_demo(string name, bool there)
    {
        var pack = Assert.Single(Directory.GetFiles(Path.Combine(Published.Folder, "_framework"), "assemblies.*.dat"));
        Assert.Equal(there, File.ReadAllBytes(pack).AsSpan().IndexOf(Encoding.UTF8.GetBytes(name)) >= 0);
    }
}
