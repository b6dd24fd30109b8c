using Farhold.Tests.Architecture;

namespace Farhold.App.Tests.Architecture;

/// <summary>Each folder of the app knows only itself and those before it in <c>eng/App.props</c>.</summary>
/// <remarks>LayerTests hold the same of the parts below.</remarks>
public class AppLayerTests
{
    private static readonly Layers App = new("App.props", typeof(Root).Assembly);

    [Fact]
    public void No_layer_knows_one_above_it()
    {
        var upward = App.Upward();
        Assert.True(upward.Length == 0, string.Join('\n', upward));
    }

    [Fact]
    public void Every_type_is_in_a_layer() => Assert.Empty(App.Outside());

    [Fact]
    public void Every_layer_has_types() => Assert.Empty(App.Empty());
}
