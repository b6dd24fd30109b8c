namespace Farhold.App.Tests.Doubles;

internal sealed class FakeAlerts : IAlerts
{
    public bool SoundUnlocked { get; set; } = true;

    public bool CanVibrate { get; set; } = true;

    public bool Awake { get; private set; }

    public List<Signal> Sounded { get; } = [];

    public List<Signal> Vibrated { get; } = [];

    public List<(string Name, string MediaType, string Text)> Saved { get; } = [];

    public void Sound(Signal signal) => Sounded.Add(signal);

    public void Vibrate(Signal signal) => Vibrated.Add(signal);

    /// <summary>Null: this phone has no voice.</summary>
    public List<string>? Spoken { get; set; }

    public bool HasVoice(string language) => Spoken is not null;

    public void Say(string words, string language) => Spoken!.Add(words);

    public void Hush() { }

    public void KeepAwake(bool on) => Awake = on;

    public void Save(string fileName, string mediaType, string text) => Saved.Add((fileName, mediaType, text));
}
