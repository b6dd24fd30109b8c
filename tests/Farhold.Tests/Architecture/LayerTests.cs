namespace Farhold.Tests.Architecture;

/// <summary>Each folder of a part is a namespace, and knows only itself and those before it in the part's list of layers.</summary>
/// <remarks>The lists are <c>eng/*.props</c>: what gives the code its usings gives the order too.</remarks>
public class LayerTests
{
    private static readonly Dictionary<string, Layers> Parts = new()
    {
        ["Core"] = new("Core.props", typeof(Kind).Assembly),
        ["WayOut"] = new("WayOut.props", typeof(Plan).Assembly),
    };

    public static TheoryData<string> Names => [.. Parts.Keys];

    [Theory, MemberData(nameof(Names))]
    public void No_layer_knows_one_above_it(string name)
    {
        var upward = Parts[name].Upward();
        Assert.True(upward.Length == 0, string.Join('\n', upward));
    }

    [Theory, MemberData(nameof(Names))]
    public void Every_type_is_in_a_layer(string name) => Assert.Empty(Parts[name].Outside());

    [Theory, MemberData(nameof(Names))]
    public void Every_layer_has_types(string name) => Assert.Empty(Parts[name].Empty());
}
