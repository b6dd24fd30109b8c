using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Exchange.Message;

/// <summary>One thing that a short message says. A closed family; each kind has its word in <see cref="FactCode"/>.</summary>
/// <remarks>Times are as exact as they were told: to the minute where read from a message.</remarks>
public abstract record MessageFact
{
    private MessageFact() { }

    /// <param name="First">When flow to the limb was first stopped.</param>
    /// <param name="Loosened">When the last tourniquet gave way; null where one is or may be tight, or there was no room for it.</param>
    public sealed record Tourniquet(Limb Limb, Truth Tight, Happened First, Happened? Loosened) : MessageFact;

    /// <summary>The sender's record is damaged, has gaps, or disagrees with itself.</summary>
    public sealed record Doubt : MessageFact;

    public sealed record Shock(Truth State) : MessageFact;

    /// <remarks>Exactly one of limb and region is set.</remarks>
    public sealed record Wound(string Name, Limb? Limb, BodyRegion? Region, WoundNature Nature, Happened When) : MessageFact;

    /// <param name="Place">The wound's name.</param>
    public sealed record Bleeds(string Place, Bleeding Bleeding, Happened When) : MessageFact;

    /// <param name="Place">The wound's name.</param>
    /// <param name="When">When it ended; where it is under way, when it began.</param>
    public sealed record Tried(Limb Limb, string Place, AttemptResult Result, Happened When) : MessageFact;

    /// <summary>Signs that were last taken at one look. Holds no coma scale, pain or pulses beyond wounds.</summary>
    public sealed record Signs(Payload.SignsTaken Taken, Happened When) : MessageFact;

    /// <summary>What was last seen of the rest of the casualty at one look.</summary>
    public sealed record Rest(Payload.CasualtyLookedOver Seen, Happened When) : MessageFact;

    /// <summary>Degrees, to five places after the point: about a metre.</summary>
    public sealed record Position(double Lat, double Lon, Happened When) : MessageFact;

    /// <param name="Care">Null: not said what kind of help.</param>
    public sealed record Help(Instant Likely, Instant? Earliest, Instant? Latest, HelpCare? Care = null) : MessageFact;

    public sealed record Drug(string Name, double Amount, string Unit, string Route, Happened When) : MessageFact;

    /// <summary>All of one fluid by one route.</summary>
    public sealed record Given(Fluid Fluid, double Millilitres, string Route, Happened When) : MessageFact;

    public sealed record Urine(double Millilitres, Happened When) : MessageFact;

    /// <param name="Alias">Null: not told.</param>
    public sealed record Who(string? Alias, Sex? Sex, double? AgeYears, double? MassKg) : MessageFact;

    /// <param name="Names">Empty: asked, none known.</param>
    public sealed record Allergies(ImmutableArray<string> Names) : MessageFact;

    public sealed record Ended(CareEnd How, Happened When) : MessageFact;
}
