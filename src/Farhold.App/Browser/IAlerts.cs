namespace Farhold.App.Browser;

/// <summary>What the phone can sound, from the softest to what must not be missed.</summary>
public enum Signal
{
    Beat,
    Reached,
    Due,
    Alarm,
}

/// <summary>Sound, vibration, a screen that stays on, and files for other apps: as far as the browser allows.</summary>
public interface IAlerts
{
    /// <summary>True once a tap has let the page make sounds.</summary>
    bool SoundUnlocked { get; }

    bool CanVibrate { get; }

    /// <summary>Whether the screen is kept on right now.</summary>
    bool Awake { get; }

    void Sound(Signal signal);

    void Vibrate(Signal signal);

    /// <summary>Whether the phone itself, offline, has a voice of that language; it may be found only a moment after the start.</summary>
    bool HasVoice(string language);

    /// <summary>Says it in such a voice, in place of what is still being said.</summary>
    void Say(string words, string language);

    /// <summary>Ends what is being said.</summary>
    void Hush();

    /// <summary>Asks for it now, and again whenever the page comes back into view, until told otherwise.</summary>
    void KeepAwake(bool on);

    /// <summary>Hands a file to the phone to open or keep.</summary>
    void Save(string fileName, string mediaType, string text);
}
