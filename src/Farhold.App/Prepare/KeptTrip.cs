using System.Text;

namespace Farhold.App.Prepare;

/// <summary>The trip being prepared, as this phone keeps it.</summary>
public sealed class KeptTrip(IPhone phone)
{
    private const string Key = "trip";

    private TripPlan? plan;

    public TripPlan Plan => plan ??= Read(phone.Get(Key));

    /// <summary>False if the phone did not take it.</summary>
    public bool IsKept { get; private set; } = true;

    public void Use(TripPlan next)
    {
        plan = next;
        IsKept = phone.Set(Key, Encoding.UTF8.GetString(TripJson.Write(next)));
    }

    /// <summary>Empty where nothing was kept, or nothing that can be read. An item that left the kit list since is kept.</summary>
    private static TripPlan Read(string text) =>
        text.Length > 0 && TripReader.Read(Encoding.UTF8.GetBytes(text), Key, null) is Read<TripPlan>.Usable(var kept)
            ? kept
            : TripPlan.Empty;
}
