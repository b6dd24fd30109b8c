using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.Services;

/// <summary>Who shares the watch, kept on this phone, and what that makes of day and night.</summary>
public sealed class ShiftParty
{
    /// <summary>How far ahead the watches are shown (design): a day, so that everyone sees their own sleep.</summary>
    public static readonly Duration Ahead = Duration.FromHours(24);

    private readonly IPhone phone;
    private readonly NightHours nights;

    public ShiftParty(IPhone phone, NightHours nights)
    {
        (this.phone, this.nights) = (phone, nights);
        Members = [.. phone.Get("party").Split('\n', StringSplitOptions.RemoveEmptyEntries).Distinct().Take(Roster.MostMembers)];
        nights.Changed += () => Changed?.Invoke();
    }

    /// <summary>Somebody joined or left, or the night was set.</summary>
    public event Action? Changed;

    /// <summary>In the order of their first watch; empty: nobody has said.</summary>
    public ImmutableArray<string> Members { get; private set; }

    /// <summary>True if this name was new and there was room.</summary>
    public bool Join(string name, Instant now)
    {
        var plain = Plain.Line(name.Trim());
        if (plain.Length == 0 || Members.Contains(plain) || Members.Length >= Roster.MostMembers)
            return false;
        Keep([.. Members, plain], now);
        return true;
    }

    public void Leave(string name, Instant now) => Keep(Members.Remove(name), now);

    /// <summary>A day of watches from now on, with the one that is on; empty without a party.</summary>
    public ImmutableArray<RosterShift> Watches(Instant now) =>
        Members.IsEmpty ? [] : [.. Roster.Around(Members, Begun(now), now, Ahead).Where(w => w.To > now)];

    /// <summary>Day and night, without the changes of watch.</summary>
    public Rhythm Nights(Instant now) => nights.Around(now);

    public Rhythm Rhythm(Instant now) => Members.IsEmpty ? Nights(now) : Nights(now).With(Roster.Around(Members, Begun(now), now, Ahead));

    /// <summary>When the first watch began. A clock since set back counts as now.</summary>
    private Instant Begun(Instant now) =>
        long.TryParse(phone.Get("party-begun"), out var seconds) && Instant.FromUnixTimeSeconds(seconds) is var at && at <= now ? at : now;

    private void Keep(ImmutableArray<string> members, Instant now)
    {
        Members = members;
        phone.Set("party", string.Join('\n', members));
        phone.Set("party-begun", now.ToUnixTimeSeconds().ToString(System.Globalization.CultureInfo.InvariantCulture));
        Changed?.Invoke();
    }
}
