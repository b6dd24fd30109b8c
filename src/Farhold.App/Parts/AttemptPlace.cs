namespace Farhold.App.Parts;

/// <summary>Where the attempt on one limb is, within a casualty.</summary>
public static class AttemptPlace
{
    public static string Of(string casualty, Limb limb) => $"casualty/{casualty}/attempt/{Wire.Word(limb)}";
}
