namespace Farhold.Hub.Access;

/// <summary>What somebody is to the hub, by the invitation under which the device was enrolled.</summary>
internal enum HubRole
{
    /// <summary>Writes a record beside the casualty.</summary>
    Carer,

    /// <summary>Sees every casualty of the team, and lets devices in and out.</summary>
    Coordinator,

    /// <summary>Answers questions about the casualties that were given to it.</summary>
    Adviser,

    /// <summary>Leads lessons; sees practice only.</summary>
    Instructor,

    /// <summary>Answers for the hub: people, retention, erasure. Sees no casualty by that.</summary>
    Owner,
}
