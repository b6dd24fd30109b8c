namespace Farhold.App.Services;

/// <summary>Signals as the carer wants them: with sound, with vibration, with both or neither.</summary>
public sealed class AlertSignals(IAlerts alerts, IPhone phone)
{
    public bool Sound
    {
        get => phone.Get("sound") != "off";
        set => phone.Set("sound", value ? "" : "off");
    }

    public bool Vibration
    {
        get => phone.Get("vibration") != "off";
        set => phone.Set("vibration", value ? "" : "off");
    }

    /// <summary>Whether the steps of an attempt are said aloud where the phone has a voice.</summary>
    public bool Voice
    {
        get => phone.Get("voice") != "off";
        set => phone.Set("voice", value ? "" : "off");
    }

    public IAlerts Phone => alerts;

    public void Give(Signal signal)
    {
        if (Sound)
            alerts.Sound(signal);
        if (Vibration)
            alerts.Vibrate(signal);
    }

    /// <summary>The carer wants it, and the phone has a voice of its own.</summary>
    /// <param name="language">A language tag such as <c>en</c>.</param>
    public bool CanSpeak(string language) => Sound && Voice && alerts.HasVoice(language);

    /// <summary>Says it aloud, in place of what is still being said; without a voice the signals alone have to do.</summary>
    public void Speak(string words, string language)
    {
        if (CanSpeak(language))
            alerts.Say(words, language);
    }
}
