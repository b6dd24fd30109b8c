using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace Farhold.App.Tests.Parts;

public class SoonTests : BunitContext
{
    private readonly FakeTimeProvider time = new();

    public SoonTests() => Services.AddSingleton<TimeProvider>(time);

    [Fact]
    public void Shows_its_content_a_breath_later_and_until_then_what_it_showed()
    {
        var soon = Render<Soon>(p => p.AddChildContent("<p>first</p>"));
        Assert.Equal("", soon.Markup);
        Breathe();
        soon.MarkupMatches("<p>first</p>");

        soon.Render(p => p.AddChildContent("<p>second</p>"));
        soon.Render(p => p.AddChildContent("<p>third</p>"));
        soon.MarkupMatches("<p>first</p>");
        Breathe();
        soon.MarkupMatches("<p>third</p>");
    }

    [Fact]
    public void What_has_left_the_place_draws_nothing_more()
    {
        var soon = Render<Soon>(p => p.AddChildContent("<p>first</p>"));
        soon.Instance.Dispose();
        Breathe();
        Assert.Equal("", soon.Markup);
    }

    private void Breathe() => time.Advance(TimeSpan.FromMilliseconds(1));
}
