using System.Collections.Immutable;
using NodaTime;

namespace Farhold.App.HandOver;

/// <summary>Who a record is about, in few lines: by these two people are told apart.</summary>
public sealed record PersonSeen(string Alias, ImmutableArray<string> Lines)
{
    public static PersonSeen Of(CareRecord record, string alias, Instant now, Texts texts, DateTimeZone zone)
    {
        var state = record.Readings[0];
        var person = CasualtyProfile.At(state, now);
        var limbs = Enum.GetValues<Limb>()
            .Select(l => LimbClock.Of(l, state, now))
            .OfType<LimbClock>()
            .Select(c => texts.PersonLimb(texts.Within(c.Limb), Say.Time(c.FirstTightened, zone)));
        var wounds = state
            .Of(Kind.WoundFound)
            .Select(w => w.As<Payload.WoundFound>())
            .Where(w => w.Region is not null)
            .Select(w => EntryText.Of(w));
        var last = record.Entries.Select(e => (Instant?)e.Happened.NotAfter(e.Recorded).Latest).Max();
        return new(
            Plain.Line(alias),
            [
                .. new[]
                {
                    person?.Sex switch
                    {
                        Sex.Female => texts.PersonFemale,
                        Sex.Male => texts.PersonMale,
                        _ => texts.PersonNoSex,
                    },
                    person?.AgeYears is { } age ? texts.PersonAge(texts.Number(age)) : texts.PersonNoAge,
                },
                .. limbs.DefaultIfEmpty(texts.PersonNoLimb),
                .. wounds.Distinct(),
                last is { } at ? texts.PersonLast(Say.Time(at, zone)) : texts.PersonNothing,
            ]
        );
    }
}
