using System.Globalization;

namespace Farhold.Tests;

/// <summary>What was said to have happened, in a few words a line, as one reading of a record. All of one invented morning.</summary>
public static class Story
{
    /// <param name="said">When, and what; a time is <c>10:00</c> or <c>10:00-10:30</c> for between the two.</param>
    public static State Of(params (string When, Payload What)[] said) => Written(said).Readings[0];

    public static CareRecord Written(params (string When, Payload What)[] said) =>
        new(said.Select((s, i) => Line(i + 1, When(s.When), s.What)), []);

    public static Payload Tight(string tourniquet, Limb limb = Limb.LeftLeg, string? wound = null) =>
        new Payload.TourniquetTightened(tourniquet, limb, Wound: wound);

    public static Payload Slack(string tourniquet) => new Payload.TourniquetSlackened(tourniquet);

    public static Payload Off(string tourniquet) => new Payload.TourniquetRemoved(tourniquet);

    public static Payload Wound(string name, Limb limb) => new Payload.WoundFound(name, limb, null, WoundNature.Bleeding);

    public static Payload Begun(string wound = "w1", string tourniquet = "t1") => new Payload.AttemptStarted(wound, tourniquet);

    public static Payload Ended(AttemptOutcome outcome, string wound = "w1", string tourniquet = "t1") =>
        new Payload.AttemptEnded(wound, tourniquet, outcome);

    public static Happened When(string said)
    {
        var parts = said.Split('-');
        return new(Some.At(parts[0]), Some.At(parts[^1]));
    }

    /// <summary>Written down at 12:00, or once it had surely happened if that is later.</summary>
    private static Entry Line(int number, Happened when, Payload what) =>
        EntryWriting.Write(new("a", number), when, Instant.Max(Case.Now, when.Latest), "Ane", what);

    /// <summary>As hours and minutes.</summary>
    public static string Short(Duration length) => length.ToString("H:mm", CultureInfo.InvariantCulture);
}
