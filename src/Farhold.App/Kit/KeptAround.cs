using System.Globalization;

namespace Farhold.App.Kit;

/// <summary>Who is there and what the day is like, as the carer said last on this phone.</summary>
public sealed class KeptAround(IPhone phone)
{
    private const string Key = "around";

    public const int MostPeople = 30;

    public Surroundings Value
    {
        get =>
            phone.Get(Key).Split('|') is [var people, var heat, var work]
            && int.TryParse(people, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            && n is >= 1 and <= MostPeople
                ? new(n, Wire.Parse<Heat>(heat), Wire.Parse<Work>(work) ?? Work.Rest)
                : new(2);
        set =>
            phone.Set(
                Key,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{value.People}|{(value.Heat is { } heat ? Wire.Word(heat) : "")}|{Wire.Word(value.Work)}"
                )
            );
    }
}
