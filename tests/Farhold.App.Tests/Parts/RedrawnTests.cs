using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Microsoft.AspNetCore.Components.Web;

namespace Farhold.App.Tests.Parts;

public class RedrawnTests : ScreenTest
{
    private IRenderedComponent<ErrorBoundary> Shown() =>
        Render<ErrorBoundary>(p => p.AddChildContent<Sample>().Add(b => b.ErrorContent, e => b => b.AddContent(0, "failed: " + e.Message)));

    private static Sample Within(IRenderedComponent<ErrorBoundary> shown) => shown.FindComponent<Sample>().Instance;

    [Fact]
    public void An_event_draws_it_again()
    {
        var shown = Shown();
        Within(shown).Says = "new";
        Within(shown).Tell();
        Assert.Contains("new", shown.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_failure_in_drawing_it_again_is_shown()
    {
        var shown = Shown();
        Within(shown).Fails = true;
        Within(shown).Tell();
        Assert.Equal("failed: drawing", shown.Markup);
    }

    [Fact]
    public void A_failure_in_what_is_done_at_an_event_is_shown()
    {
        var shown = Shown();
        Within(shown).Do(() => throw new InvalidOperationException("work"));
        Assert.Equal("failed: work", shown.Markup);
    }

    [Fact]
    public void A_failure_after_a_while_is_shown()
    {
        var shown = Shown();
        var end = new TaskCompletionSource();
        Within(shown).DoSlowly(() => end.Task);
        Assert.DoesNotContain("failed", shown.Markup, StringComparison.Ordinal);
        end.SetException(new InvalidOperationException("late"));
        shown.WaitForAssertion(() => Assert.Equal("failed: late", shown.Markup));
    }

    [Fact]
    public async Task It_listens_no_more_once_it_has_left()
    {
        var sample = Within(Shown());
        Assert.Equal(1, sample.Listeners);
        await DisposeComponentsAsync();
        Assert.Equal(0, sample.Listeners);
    }

    /// <summary>Nothing but the frame is on the screen: what fails behind it is still told there.</summary>
    [Fact]
    public async Task What_fails_in_the_background_is_told_to_the_frame()
    {
        await OpenCasualtyAsync();
        var shown = Render<ErrorBoundary>(p =>
            p.AddChildContent<Frame>().Add(b => b.ErrorContent, e => b => b.AddContent(0, "failed: " + e.Message))
        );
        Store.Unreadable = new IOException("no disk");
        Store.OpenElsewhere(Session.Open!.Id);
        shown.WaitForAssertion(() => Assert.Equal("failed: no disk", shown.Markup));
    }

    private sealed class Sample : Redrawn
    {
        private event Action? Told;

        public string Says { get; set; } = "old";

        public bool Fails { get; set; }

        public int Listeners => Told?.GetInvocationList().Length ?? 0;

        public void Tell() => Told?.Invoke();

        public void Do(Action work) => Begin(work);

        public void DoSlowly(Func<Task> work) => Begin(work);

        protected override void OnInitialized() => Listen(h => Told += h, h => Told -= h);

        protected override void BuildRenderTree(RenderTreeBuilder builder) =>
            builder.AddContent(0, Fails ? throw new InvalidOperationException("drawing") : Says);
    }
}
