using NodaTime;

namespace Farhold.Hub.Access;

/// <summary>A phone or a desk that was enrolled.</summary>
/// <param name="Thumb">SHA-256 of the key, 64 hexadecimal digits.</param>
/// <param name="Key">A point of P-256, uncompressed: 65 bytes.</param>
/// <param name="Id">As it names itself in the ids of entries.</param>
/// <param name="Confirmed">Null while a person has still to compare its digits.</param>
internal sealed record Device(
    string Thumb,
    byte[] Key,
    string Id,
    string Name,
    HubRole Role,
    string Team,
    Instant Enrolled,
    Instant? Confirmed,
    Instant? Revoked
)
{
    /// <summary>Six digits that both screens show while a person compares them.</summary>
    public string Digits => Codes.Digits(Key);
}

/// <summary>An invitation as it is made.</summary>
/// <param name="For">Whom it is meant for.</param>
/// <param name="Until">When it ends.</param>
/// <param name="Beforehand">Confirmed beforehand: nobody has to compare digits.</param>
internal sealed record Invitation(HubRole Role, string Team, string For, Instant Until, bool Beforehand);

/// <summary>What came of using an invitation.</summary>
internal abstract record Enrolment
{
    private Enrolment() { }

    public sealed record Done(Device Device) : Enrolment;

    /// <summary>No invitation that can still be used has this code.</summary>
    public sealed record NoSuchCode : Enrolment;

    /// <summary>Another key has this id of a device.</summary>
    public sealed record IdTaken : Enrolment;

    /// <summary>This key was let out; it can't come back.</summary>
    public sealed record WasRevoked : Enrolment;
}
