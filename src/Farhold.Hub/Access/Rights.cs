namespace Farhold.Hub.Access;

/// <summary>What a request does.</summary>
internal enum Act
{
    /// <summary>Asks what the hub knows of the device itself.</summary>
    KnowOneself,

    /// <summary>Names a casualty by the roots of its record, and opens it at the hub where nobody had.</summary>
    FindCasualty,

    /// <summary>Exchanges lines of a record.</summary>
    Sync,

    /// <summary>Reads a record, its standing or what is made of it.</summary>
    Read,

    /// <summary>Sees the board: every casualty that may be read.</summary>
    Watch,

    /// <summary>Says which device may read a casualty.</summary>
    Give,

    /// <summary>Makes a link for a receiving clinician, and ends it.</summary>
    Share,

    /// <summary>Lets devices in: invitations, comparing digits.</summary>
    Invite,

    /// <summary>Lets devices out.</summary>
    Revoke,

    /// <summary>Reads who did what.</summary>
    Audit,

    /// <summary>Erases a casualty, together with a second person.</summary>
    Erase,
}

/// <summary>How far an act reaches, from nothing on.</summary>
internal enum Reach
{
    None,

    /// <summary>What is the device's own, and casualties that it brought or was given.</summary>
    Own,

    /// <summary>All of its team.</summary>
    Team,

    /// <summary>All of the hub.</summary>
    All,
}

/// <summary>Who may do what: the one place (docs/decisions/keys-and-grants.md). <see cref="Gate"/> asks it on every request.</summary>
internal static class Rights
{
    public static Reach Of(HubRole role, Act act) =>
        (role, act) switch
        {
            (_, Act.KnowOneself) => Reach.Own,
            (HubRole.Carer, Act.FindCasualty or Act.Sync or Act.Read or Act.Share or Act.Watch or Act.Audit) => Reach.Own,
            (HubRole.Adviser, Act.FindCasualty or Act.Sync or Act.Read or Act.Watch or Act.Audit) => Reach.Own,
            (HubRole.Coordinator, Act.Erase) => Reach.Team, // asks for it, or confirms what an owner asked for
            (HubRole.Coordinator, _) => Reach.Team,
            (HubRole.Owner, Act.Invite or Act.Revoke or Act.Audit or Act.Erase) => Reach.All,
            _ => Reach.None,
        };

    /// <summary>The roles that a device of a role may invite.</summary>
    public static bool MayInvite(HubRole role, HubRole invited) =>
        role == HubRole.Owner || (role == HubRole.Coordinator && invited is HubRole.Carer or HubRole.Adviser or HubRole.Instructor);
}
