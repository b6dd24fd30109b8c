using NodaTime;

namespace Farhold.App.Hub;

/// <summary>How far a record is at the hub, and why it is not further, in words.</summary>
internal static class HubWords
{
    /// <summary>What of the open casualty is at the hub; empty where this phone belongs to none, or it is practice.</summary>
    public static string State(HubDesk hub, CasualtyHead open, Texts texts, PhoneClock clock, Instant now)
    {
        if (hub.Member is null || open.Practice)
            return "";
        var at = hub.Of(open.Id);
        var waiting = hub.Waiting(open);
        return at.Heard is null || (at.UpTo is null && waiting > 0) ? texts.HubNothing
            : at.UpTo is not { } upTo ? texts.HubAll(clock.Show(at.Heard.Value, now))
            : waiting == 0 ? texts.HubAll(clock.Show(upTo, now))
            : texts.HubUpTo(clock.Show(upTo, now), waiting);
    }

    /// <summary>Why it goes no further; empty where nothing is wrong.</summary>
    public static string Of(HubTrouble trouble, HubMember? member, Texts texts) =>
        trouble switch
        {
            HubTrouble.None => "",
            HubTrouble.NotReached => texts.HubNotReached,
            HubTrouble.Unconfirmed => texts.HubDigits(member?.Digits ?? ""),
            HubTrouble.Out => texts.HubOut,
            HubTrouble.OtherTeam => texts.HubOtherTeam,
            HubTrouble.SeveralMatch => texts.HubSeveral,
            HubTrouble.Erased => texts.HubErased,
            HubTrouble.Full => texts.HubFull,
            _ => texts.HubRefuses,
        };

    public static string Role(string role, Texts texts) =>
        role switch
        {
            "coordinator" => texts.HubRoleCoordinator,
            "adviser" => texts.HubRoleAdviser,
            "instructor" => texts.HubRoleInstructor,
            "owner" => texts.HubRoleOwner,
            _ => texts.HubRoleCarer,
        };

    /// <summary>Why somebody did not come in.</summary>
    public static string NotJoined(string code, Texts texts) =>
        code switch
        {
            "no-such-code" => texts.HubNoSuchCode,
            "id-taken" => texts.HubIdTaken,
            "key" => texts.HubNoKey,
            "not-reached" => texts.HubNotReachedNow,
            "revoked" => texts.HubOut,
            _ => texts.HubRefusedNow,
        };
}
