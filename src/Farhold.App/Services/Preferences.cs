using System.Globalization;

namespace Farhold.App.Services;

public enum Look
{
    Night,
    Day,

    /// <summary>Black and dim, nothing moves, and less is drawn anew: for a battery that has to last.</summary>
    Saving,
}

public enum TemperatureUnit
{
    Celsius,
    Fahrenheit,
}

public enum MassUnit
{
    Kilogram,
    Pound,
}

/// <summary>What the carer has set on this phone.</summary>
public sealed class Preferences(IPhone phone)
{
    public string Carer
    {
        get => phone.Get("carer");
        set => phone.Set("carer", value);
    }

    public bool CautionsRead
    {
        get => phone.Get("cautions") == "read";
        set => phone.Set("cautions", value ? "read" : "");
    }

    /// <summary>As chosen; empty while the browser's languages decide.</summary>
    public string Language
    {
        get => phone.Get("language");
        set => phone.Set("language", value);
    }

    /// <summary>The language of which the carer has seen that no native clinician has read it.</summary>
    public string UnreadSeen
    {
        get => phone.Get("unread-language");
        set => phone.Set("unread-language", value);
    }

    public Look Look
    {
        get =>
            phone.Get("look") switch
            {
                "day" => Look.Day,
                "saving" => Look.Saving,
                _ => Look.Night,
            };
        set
        {
            var name = value switch
            {
                Look.Day => "day",
                Look.Saving => "saving",
                _ => "night",
            };
            phone.Set("look", name);
            phone.Look(name);
        }
    }

    public TemperatureUnit Temperature
    {
        get => phone.Get("temperature") == "F" ? TemperatureUnit.Fahrenheit : TemperatureUnit.Celsius;
        set => phone.Set("temperature", value == TemperatureUnit.Fahrenheit ? "F" : "C");
    }

    public MassUnit Mass
    {
        get => phone.Get("mass") == "lb" ? MassUnit.Pound : MassUnit.Kilogram;
        set => phone.Set("mass", value == MassUnit.Pound ? "lb" : "kg");
    }

    /// <summary>Id of the casualty that was open last; empty if it was closed.</summary>
    public string OpenCasualty
    {
        get => phone.Get("open");
        set => phone.Set("open", value);
    }

    /// <summary>How many entries the casualty's record had when it was last copied off this phone.</summary>
    public int Copied(string casualty) =>
        int.TryParse(phone.Get("copied-" + casualty), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0;

    public void SetCopied(string casualty, int entries) => phone.Set("copied-" + casualty, entries.ToString(CultureInfo.InvariantCulture));
}
