using Farhold.App.Phone;

namespace Farhold.App.Reminders;

/// <summary>Signals as the carer wants them: with sound, with vibration, with both or neither.</summary>
public sealed class AlertSignals(IAlerts alerts, IPhone phone)
{
    public bool Sound { get => phone.Get("sound") != "off"; set => phone.Set("sound", value ? "" : "off"); }

    public bool Vibration { get => phone.Get("vibration") != "off"; set => phone.Set("vibration", value ? "" : "off"); }

    public IAlerts Phone => alerts;

    public void Give(Signal signal)
    {
        if (Sound)
            alerts.Sound(signal);
        if (Vibration)
            alerts.Vibrate(signal);
    }
}
