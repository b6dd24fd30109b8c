namespace Farhold.App.Care;

/// <summary>Words of the record as they stand on buttons.</summary>
public static class Labels
{
    /// <summary><c>partial-amputation</c> becomes <c>Partial amputation</c>.</summary>
    public static string Plain(string wire) => Sentence(Farhold.Text.Plain.Line(wire.Replace('-', ' ')));

    public static string Word<T>(T value)
        where T : struct, Enum => Plain(Wire.Word(value));

    public static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>What is due, as a sentence, with the time until which it goes on as the clock shows it.</summary>
    public static string Said(DueTask due, Phone.PhoneClock clock, NodaTime.Instant now) =>
        Sentence(due.Until is { } until ? Farhold.Text.Plain.Line($"{due.Text} until {clock.Show(until, now)}") : due.Said(clock.Zone));

    /// <summary><c>w1, left leg</c>.</summary>
    public static string Wound(string wound, State state)
    {
        var found = state.Of(Kind.WoundFound).LastOrDefault(w => w.As<Payload.WoundFound>().Wound == wound)?.As<Payload.WoundFound>();
        var where = found?.Limb is { } limb ? Wire.Word(limb) : found?.Region is { } region ? Wire.Word(region) : null;
        return Farhold.Text.Plain.Line(where is null ? wound : $"{wound}, {where.Replace('-', ' ')}");
    }
}
