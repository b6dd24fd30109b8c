using System.Collections.Immutable;
using System.Text.Json;
using Farhold.Sync;
using NodaTime;

namespace Farhold.Hub.Board;

/// <summary>A casualty as the board shows it: what the judge says, and how far that can be relied on.</summary>
/// <remarks>
/// Times are instants, not spans: a standing changes when the answer does, not because a minute has passed. Words are left to whoever shows
/// it, except those of the protocol.
/// </remarks>
/// <param name="Json">As it goes to those who watch.</param>
internal sealed record Standing(string Id, bool Practice, string Json)
{
    /// <param name="heard">When any device last exchanged lines.</param>
    /// <param name="missing">Lines that are known to exist and are not here; null: some whose number is not known.</param>
    public static Standing Of(string id, CareRecord record, Judgement picture, Instant? heard, int? missing)
    {
        var state = record.Readings[0];
        var opened = state.Of(Kind.CasualtyOpened) is [var first, ..] ? first.As<Payload.CasualtyOpened>() : null;
        var practice = record.Entries.Any(Farhold.Exchange.HandOver.CareFacts.IsPractice);
        using var stream = new MemoryStream();
        using (var w = new Utf8JsonWriter(stream))
        {
            w.WriteStartObject();
            w.WriteString("id", id);
            w.WriteString("alias", Plain.Line(opened?.Alias ?? ""));
            w.WriteBoolean("practice", practice);
            w.WriteBoolean("ended", !state.Of(Kind.CareEnded).IsEmpty);
            w.WriteNumber("entries", record.Count);
            Time(w, "heard", heard);
            Time(w, "written", record.LastRecorded);
            w.WriteNumber("missing", missing ?? -1);
            w.WriteNumber("doubts", picture.Doubts.Length);
            w.WriteString("shock", Wire.Word(picture.Shock.State));
            w.WriteStartArray("limbs");
            foreach (var limb in picture.Limbs)
                Limb(w, limb.Clock, Wire.Word(limb.Verdict), limb.Attempt is not null);
            foreach (var limb in picture.Observed)
                Limb(w, limb.Clock, limb.Bleeding == Truth.Met ? "bleeding" : "watched", limb.Attempt is not null);
            w.WriteEndArray();
            w.WriteStartArray("due");
            foreach (var due in Shown(picture))
            {
                w.WriteStartObject();
                w.WriteString("text", due.Text);
                Time(w, "at", due.At);
                if (due.AtOnce)
                    w.WriteBoolean("atOnce", true);
                w.WriteEndObject();
            }

            w.WriteEndArray();
            if (state.Of(Kind.QuestionAsked).LastOrDefault(q => q.When.Earliest <= picture.At) is { } asked)
                Question(w, state, asked);
            if (state.Of(Kind.PositionNoted).LastOrDefault(p => p.When.Latest <= picture.At) is { } noted)
            {
                var at = noted.As<Payload.PositionNoted>();
                w.WriteStartObject("position");
                w.WriteNumber("lat", at.Lat);
                w.WriteNumber("lon", at.Lon);
                Time(w, "at", noted.When.Latest);
                w.WriteEndObject();
            }

            w.WriteEndObject();
        }

        return new(id, practice, System.Text.Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length)));
    }

    /// <summary>How many lines are known to exist and are not here; null where some have no number that is known.</summary>
    public static int? Missing(LineSet lines, KnownElsewhere elsewhere) =>
        elsewhere.Unnumbered.IsEmpty ? elsewhere.Last.Sum(d => Math.Max(0, d.Value - lines.Vector[d.Key].Length)) : null;

    /// <summary>Whatever has to be done at once, then the next two.</summary>
    private static IEnumerable<DueTask> Shown(Judgement picture) =>
        picture.Due.Where(d => d.AtOnce).Concat(picture.Due.Where(d => !d.AtOnce).Take(2)).Take(4);

    private static void Limb(Utf8JsonWriter w, LimbClock clock, string verdict, bool attempt)
    {
        w.WriteStartObject();
        w.WriteString("limb", Wire.Word(clock.Limb));
        w.WriteString("verdict", verdict);
        w.WriteString("tight", Wire.Word(clock.Tight));
        Time(w, "from", clock.FirstTightened.Earliest);
        Time(w, "to", clock.FirstTightened.Latest);
        if (attempt)
            w.WriteBoolean("attempt", true);
        w.WriteEndObject();
    }

    private static void Question(Utf8JsonWriter w, State state, Dated asked)
    {
        var question = asked.As<Payload.QuestionAsked>();
        w.WriteStartObject("question");
        w.WriteString("entry", asked.Id.ToString());
        w.WriteString("to", question.To);
        w.WriteString("text", question.Text);
        w.WriteString("by", asked.By);
        Time(w, "at", asked.When.Latest);
        if (Correspondence.TakenBy(state, asked.Id) is { } taken)
        {
            w.WriteString("taken", taken.By);
            Time(w, "takenAt", taken.When.Latest);
        }

        if (Correspondence.Answer(state, asked.Id) is { } answer)
        {
            w.WriteString("answered", answer.By);
            Time(w, "answeredAt", answer.When.Latest);
            var readBack = answer.As<Payload.AdviceReceived>().ReadBack ?? Correspondence.IsConfirmed(state, answer.Id);
            w.WriteBoolean("readBack", readBack);
        }

        w.WriteEndObject();
    }

    private static void Time(Utf8JsonWriter w, string name, Instant? at)
    {
        if (at is { } time)
            w.WriteString(name, WrittenInstant.Write(time));
    }
}
