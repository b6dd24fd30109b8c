namespace Farhold.App.Parts;

/// <summary>Which keypad of a screen is out: never two at a time.</summary>
public sealed class OpenKeys
{
    private object? holder;

    public event Action? Changed;

    public bool AreWith(object asking) => ReferenceEquals(holder, asking);

    /// <summary>Takes the keys, wherever they were; or puts them away.</summary>
    public void Take(object? by)
    {
        holder = by;
        Changed?.Invoke();
    }
}
