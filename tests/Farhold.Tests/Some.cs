using NodaTime.Text;

namespace Farhold.Tests;

/// <summary>Fixed examples with short names, so that tests show only what matters.</summary>
public static class Some
{
    /// <summary>Signs of someone in no shock.</summary>
    public static readonly Payload.SignsTaken GoodSigns = new()
    {
        HeartRate = 84,
        RespiratoryRate = 16,
        Systolic = 124,
        Mental = Mental.Alert,
        Dizzy = false,
        Pale = false,
        Cool = false,
        Clammy = false,
        RadialPulse = RadialPulse.Strong,
    };

    /// <summary>The whole casualty looked over, and nothing found.</summary>
    public static readonly Payload.CasualtyLookedOver NothingElse = new(false, false, false, false, false);

    public static Instant Time(string iso) => InstantPattern.ExtendedIso.Parse(iso).GetValueOrThrow();

    /// <summary>An invented morning; hh:mm after its midnight.</summary>
    public static Instant At(string hoursMinutes)
    {
        var parts = hoursMinutes.Split(':');
        return Time("2031-05-04T00:00:00Z") + Duration.FromMinutes((int.Parse(parts[0]) * 60) + int.Parse(parts[1]));
    }

    public static byte[] Json(Judgement judgement) => JudgementJson.Write(judgement);
}
