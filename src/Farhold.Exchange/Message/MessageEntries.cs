using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace Farhold.Exchange.Message;

/// <summary>Turns a short message into entries of a record.</summary>
/// <remarks>
/// Their device is named after the text, so that reading a message twice adds nothing. Tourniquets get the limb's letters
/// as name, since a message does not carry their own.
/// </remarks>
public static class MessageEntries
{
    /// <summary>Who is said to have told it.</summary>
    public const string By = "short message";

    public static ImmutableArray<Entry> Of(ReceivedMessage message)
    {
        var device = "sms" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(message.Text)).AsSpan(0, 4));
        var recorded = message.AsOf + MessageTime.Minute - Duration.FromSeconds(1);
        var said = Opened(message.Facts)
            .Select(o => (Happened.At(recorded), o))
            .Concat(message.Facts.SelectMany(f => Said(f, message.AsOf, recorded)))
            .Append((Happened.At(recorded), new Payload.NoteWritten($"Short message as it came: {message.Text}")));
        return [.. said.Select((s, i) => Write(new(device, i + 1), s.Item1, recorded, message.Practice, s.Item2))];
    }

    private static Entry Write(EntryId id, Happened when, Instant recorded, bool practice, Payload payload)
    {
        var body = EntryWriting.Body(when, recorded, By, practice, payload);
        var json = Encoding.UTF8.GetBytes($"{{\"id\":\"{id}\",{body.AsSpan(1)}");
        return ((Read<Entry>.Usable)new EntryReader().Read(json, By, id.Number)).Value;
    }

    /// <summary>Who and allergies together make one opening.</summary>
    private static IEnumerable<Payload> Opened(ImmutableArray<MessageFact> facts)
    {
        var who = facts.OfType<MessageFact.Who>().LastOrDefault();
        var allergies = facts.OfType<MessageFact.Allergies>().LastOrDefault();
        if (who is not null || allergies is not null)
            yield return new Payload.CasualtyOpened(
                who?.Alias ?? "name not in the message",
                who?.Sex,
                who?.AgeYears,
                who?.MassKg,
                allergies?.Names ?? default
            );
    }

    private static IEnumerable<(Happened When, Payload What)> Said(MessageFact fact, Instant asOf, Instant recorded)
    {
        var now = Happened.At(recorded);
        switch (fact)
        {
            case MessageFact.Tourniquet t:
                var name = FactCode.Limb(t.Limb);
                yield return (t.First, new Payload.TourniquetTightened(name, t.Limb));
                // Whether it is still tight is not known: a loosening is told of, at no known time.
                if (t.Tight != Truth.Met)
                    yield return (
                        t.Loosened ?? new(t.First.Earliest, Instant.Max(t.First.Latest, asOf)),
                        new Payload.TourniquetSlackened(name)
                    );
                break;
            case MessageFact.Doubt:
                yield return (now, new Payload.NoteWritten("The sender's record may not be whole, or disagrees with itself."));
                break;
            case MessageFact.Shock s:
                yield return (
                    now,
                    new Payload.NoteWritten(
                        $"The sender's record judged shock: "
                            + $"{s.State switch { Truth.Met => "suspected", Truth.NotMet => "none of the signs asked for", _ => "can't be told" }}."
                    )
                );
                break;
            case MessageFact.Wound w:
                yield return (w.When, new Payload.WoundFound(w.Name, w.Limb, w.Region, w.Nature));
                break;
            case MessageFact.Bleeds b:
                yield return (b.When, new Payload.BleedingChecked(b.Place, b.Bleeding));
                break;
            case MessageFact.Tried { Result: AttemptResult.UnderWay } t:
                yield return (t.When, new Payload.AttemptStarted(t.Place, FactCode.Limb(t.Limb)));
                break;
            case MessageFact.Tried t:
                yield return (
                    t.When,
                    new Payload.AttemptEnded(
                        t.Place,
                        FactCode.Limb(t.Limb),
                        t.Result switch
                        {
                            AttemptResult.Held => AttemptOutcome.Held,
                            AttemptResult.Bled => AttemptOutcome.Bled,
                            _ => AttemptOutcome.Abandoned,
                        }
                    )
                );
                break;
            case MessageFact.Signs s:
                yield return (s.When, s.Taken);
                break;
            case MessageFact.Rest r:
                yield return (r.When, r.Seen);
                break;
            case MessageFact.Position p:
                yield return (p.When, new Payload.PositionNoted(p.Lat, p.Lon));
                break;
            case MessageFact.Help h:
                yield return (now, new Payload.HelpExpected(h.Likely, h.Earliest, h.Latest, "told by short message", Care: h.Care));
                break;
            case MessageFact.Drug d:
                yield return (d.When, new Payload.DrugGiven(d.Name, d.Amount, d.Unit, d.Route));
                break;
            case MessageFact.Given g:
                yield return (g.When, new Payload.FluidGiven(g.Fluid, g.Millilitres, g.Route));
                break;
            case MessageFact.Urine u:
                yield return (u.When, new Payload.UrineMeasured(u.Millilitres));
                break;
            case MessageFact.Who or MessageFact.Allergies:
                break; // they open the casualty
            case MessageFact.Ended e:
                yield return (e.When, new Payload.CareEnded(e.How));
                break;
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }
}
