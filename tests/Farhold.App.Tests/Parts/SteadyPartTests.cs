using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Farhold.App.Tests.Parts;

public class SteadyPartTests : BunitContext
{
    [Fact]
    public void It_is_drawn_again_only_when_it_shows_something_else()
    {
        var part = Render<Named>(p => p.Add(n => n.Name, "left leg"));
        part.Render(p => p.Add(n => n.Name, "left leg"));
        Assert.Equal(1, part.RenderCount);
        part.Render(p => p.Add(n => n.Name, "right leg"));
        Assert.Equal(2, part.RenderCount);
        Assert.Equal("right leg", part.Markup);
        part.Render(p => p.Add(n => n.Name, "left leg"));
        Assert.Equal("left leg", part.Markup);
    }

    private sealed class Named : SteadyPart
    {
        [Parameter]
        public string Name { get; set; } = "";

        protected override object Shown => Name;

        protected override void BuildRenderTree(RenderTreeBuilder builder) => builder.AddContent(0, Name);
    }
}
