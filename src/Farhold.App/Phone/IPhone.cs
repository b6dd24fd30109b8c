namespace Farhold.App.Phone;

/// <summary>Small things the phone does: keep a setting, copy a text, change the look.</summary>
public interface IPhone
{
    string Language { get; }

    /// <summary>Name in the time-zone database; empty if the phone does not say.</summary>
    string TimeZone { get; }

    /// <summary>Empty if never set.</summary>
    string Get(string key);

    /// <summary>False if the phone did not take it.</summary>
    bool Set(string key, string value);

    void Look(string name);

    Task<bool> CopyAsync(string text);
}
