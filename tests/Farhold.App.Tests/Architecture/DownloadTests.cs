using System.Reflection;

namespace Farhold.App.Tests.Architecture;

/// <summary>What reaches the phone: the light parts only. Documents, databases and the command line's libraries never do.</summary>
public class DownloadTests
{
    private static readonly string[] Light = ["Farhold.App", "Farhold.Core", "Farhold.WayOut", "Farhold.Exchange", "NodaTime", "QRCoder"];

    /// <summary>
    /// Brought by no start, but when somebody first rehearses (docs/decisions/rehearsing-apart.md), or once the phone belongs to a hub.
    /// </summary>
    private static readonly string[] Later = ["Farhold.Physiology", "Farhold.Rehearsal", "Farhold.Sync"];

    private static readonly string[] Framework =
    [
        "System",
        "Microsoft.AspNetCore.Components",
        "Microsoft.Extensions",
        "Microsoft.JSInterop",
        "Microsoft.CSharp",
        "netstandard",
    ];

    [Fact]
    public void The_phone_gets_only_light_parts()
    {
        var reached = new HashSet<string>();
        Follow("Farhold.App", reached);
        Assert.Contains("Farhold.Core", reached);
        Assert.Empty(reached.Except(Light).Except(Later));
    }

    private static void Follow(string name, HashSet<string> reached)
    {
        if (Framework.Any(f => name.StartsWith(f, StringComparison.Ordinal)) || !reached.Add(name))
            return;
        foreach (var used in Assembly.Load(name).GetReferencedAssemblies())
            Follow(used.Name!, reached);
    }
}
