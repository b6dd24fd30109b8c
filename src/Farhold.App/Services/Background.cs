namespace Farhold.App.Services;

/// <summary>Work of what is no component, which nobody waits for. What fails in it is told to the screen that is up.</summary>
public sealed class Background
{
    private readonly Queue<Exception> unheard = new();
    private Action<Exception>? tell;

    /// <summary>Begins work that takes time.</summary>
    public void Start(Func<Task> work) => _ = GuardAsync(work);

    /// <summary>Does each in turn; one that fails keeps none of the others from it.</summary>
    public void Raise(Action? listeners)
    {
        foreach (var listener in Delegate.EnumerateInvocationList(listeners))
            try
            {
                listener();
            }
            catch (Exception failure)
            {
                Tell(failure);
            }
    }

    /// <summary>Who shows failures from now on, also those before. One at a time; null for none.</summary>
    public void TellTo(Action<Exception>? whom)
    {
        tell = whom;
        while (tell is not null && unheard.TryDequeue(out var failure))
            tell(failure);
    }

    private async Task GuardAsync(Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (Exception failure)
        {
            Tell(failure);
        }
    }

    private void Tell(Exception failure)
    {
        if (tell is null)
            unheard.Enqueue(failure);
        else
            tell(failure);
    }
}
