using Microsoft.AspNetCore.Components;

namespace Farhold.App.Parts;

/// <summary>A component that also does something when nobody touched it: draws itself again, or works in the background.</summary>
/// <remarks>What fails there is shown as what fails behind a tap is; nothing is lost in a task that no one awaits.</remarks>
public abstract class Redrawn : ComponentBase, IDisposable
{
    private readonly List<Action> endings = [];

    /// <summary>Stops listening.</summary>
    public void Dispose()
    {
        endings.ForEach(end => end());
        endings.Clear();
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing) { }

    /// <summary>Listens to an event until the component has left the screen.</summary>
    /// <param name="then">What is done then; null draws it again.</param>
    protected void Listen(Action<Action> add, Action<Action> remove, Action? then = null)
    {
        var work = then ?? StateHasChanged;
        Action answer = () => Begin(work);
        add(answer);
        endings.Add(() => remove(answer));
    }

    /// <summary>Draws it again soon, whichever thread asks.</summary>
    protected void Redraw() => Begin(StateHasChanged);

    /// <summary>Begins something that nobody waits for.</summary>
    protected void Begin(Action work) => _ = GuardAsync(() => InvokeAsync(work));

    /// <summary>The same for work that takes time.</summary>
    protected void Begin(Func<Task> work) => _ = GuardAsync(() => InvokeAsync(work));

    private async Task GuardAsync(Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (Exception failure)
        {
            await DispatchExceptionAsync(failure);
        }
    }
}
