using System.Text.Encodings.Web;
using System.Text.Json;

namespace Farhold.Verdicts;

/// <summary>A judgement as JSON, in the form of the design page. What that page does not name is added, never in place of it.</summary>
public static class JudgementJson
{
    /// <param name="refused">Why a local protocol that was asked for is not in force; told under <c>protocol.refused</c>.</param>
    public static byte[] Write(Judgement judgement, IReadOnlyList<Refusal>? refused = null)
    {
        using var stream = new MemoryStream();
        using (var w = new Utf8JsonWriter(stream, new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            w.WriteStartObject();
            w.WriteString("at", WrittenInstant.Write(judgement.At));
            Protocol(w, judgement.Rules, refused ?? []);
            List(w, "limbs", judgement.Limbs, Limb);
            List(w, "watched", judgement.Observed, Observed);
            w.WriteStartObject("shock");
            w.WriteString("state", State(judgement.Shock.State));
            List(w, "signs", judgement.Shock.Signs, Finding);
            w.WriteEndObject();
            List(w, "due", judgement.Due, Due);
            List(
                w,
                "withheld",
                judgement.Withheld,
                (x, t) =>
                {
                    x.WriteString("task", t.Name);
                    x.WriteString("text", t.Text);
                }
            );
            w.WriteBoolean("damaged", !judgement.Doubts.IsEmpty);
            List(
                w,
                "doubts",
                judgement.Doubts,
                (x, d) =>
                {
                    x.WriteString("id", d.Id);
                    x.WriteString("text", d.Text);
                }
            );
            List(
                w,
                "remarks",
                judgement.Remarks,
                (x, r) =>
                {
                    x.WriteString("entry", r.About?.ToString());
                    x.WriteString("text", r.Text);
                }
            );
            w.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void Protocol(Utf8JsonWriter w, Rulebook rules, IReadOnlyList<Refusal> refused)
    {
        var protocol = rules.Protocol;
        w.WriteStartObject("protocol");
        w.WriteString("id", protocol.Id);
        w.WriteString("version", protocol.Version);
        w.WriteString("hash", protocol.Hash);
        Texts(w, "warnings", RulesWords.Warnings(rules));
        if (protocol.Local is not { } local)
            w.WriteNull("local");
        else
        {
            w.WriteStartObject("local");
            w.WriteString("id", local.Id);
            w.WriteString("version", local.Version);
            w.WriteString("standing", Wire.Word(local.Standing));
            w.WriteString("hash", local.Hash);
            w.WriteString("issuer", local.Issuer?.Name);
            w.WriteString("authority", local.Authority?.Name);
            w.WriteString("date", local.Authority?.Date.ToString("uuuu-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
            Texts(w, "loosened", local.Loosened);
            w.WriteEndObject();
        }

        if (refused.Count > 0)
            Texts(w, "refused", refused.Select(r => r.ToString()));
        w.WriteEndObject();
    }

    private static void Limb(Utf8JsonWriter w, LimbVerdict limb)
    {
        w.WriteString("limb", Wire.Word(limb.Limb));
        Texts(w, "tourniquets", limb.Clock.Tourniquets);
        w.WriteString("verdict", Wire.Word(limb.Verdict));
        Clock(w, limb.Clock);
        List(w, "criteria", limb.Findings, Finding);
        Texts(w, "checkFirst", limb.CheckFirst.Select(i => i.Name));
        w.WriteString("act", limb.Act.Said());
        Texts(w, "changes", limb.Act.Changes);
        w.WriteString("lookAgain", WrittenInstant.Write(limb.Act.LookAgain));
        Texts(w, "cautions", limb.Act.Cautions);
        List(
            w,
            "next",
            limb.Next,
            (x, n) =>
            {
                x.WriteString("at", WrittenInstant.Write(n.At));
                x.WriteString("what", n.What);
            }
        );
        Attempt(w, limb.Attempt);
    }

    private static void Observed(Utf8JsonWriter w, ObservedLimb limb)
    {
        w.WriteString("limb", Wire.Word(limb.Limb));
        Texts(w, "tourniquets", limb.Clock.Tourniquets);
        EntryWriting.Write(w, "loosened", limb.Loosened);
        w.WriteString("bleeding", State(limb.Bleeding));
        Clock(w, limb.Clock);
        Attempt(w, limb.Attempt);
    }

    private static void Clock(Utf8JsonWriter w, LimbClock clock)
    {
        w.WriteString("tight", State(clock.Tight));
        EntryWriting.Write(w, "firstTightened", clock.FirstTightened);
        Span(w, "sinceFirstTightened", clock.SinceFirstTightened);
        Span(w, "occluded", clock.Occluded);
        Span(w, "currentStretch", clock.CurrentStretch);
    }

    private static void Attempt(Utf8JsonWriter w, AttemptProgress? progress)
    {
        if (progress is null)
            return;
        w.WriteStartObject("attempt");
        w.WriteString("wound", progress.Attempt.Wound);
        w.WriteString("step", progress.Current is { } current ? Wire.Word(current.Step.Id) : null);
        if (progress.Current?.NotBefore is { } notBefore)
            w.WriteString("notBefore", WrittenInstant.Write(notBefore));
        if (progress.Current?.Gate is { } gate)
            w.WriteString("gate", gate);
        w.WriteEndObject();
    }

    private static void Finding(Utf8JsonWriter w, Finding finding)
    {
        w.WriteString("id", finding.Criterion.Id);
        w.WriteString("role", Wire.Word(finding.Criterion.Role));
        w.WriteString("state", State(finding.State));
        if (finding.Lifted != Lift.None)
            w.WriteString("lifted", Wire.Word(finding.Lifted));
        List(
            w,
            "used",
            finding.Used,
            (x, u) =>
            {
                x.WriteString("input", u.Input);
                x.WriteString("value", u.Value);
                if (u.Age is { } age)
                    x.WriteString("age", IsoSpan.Write(age.Max));
                x.WriteBoolean("stale", u.Stale);
                if (u.Doubtful)
                    x.WriteBoolean("doubtful", true);
            }
        );
        if (finding.Needs is { } needs)
            w.WriteString("needs", needs.Name);
        w.WriteString("text", finding.Criterion.Text);
        w.WriteString("source", string.Join("; ", finding.Criterion.Sources));
    }

    private static void Due(Utf8JsonWriter w, DueTask due)
    {
        w.WriteString("at", WrittenInstant.Write(due.At));
        w.WriteString("task", due.Task);
        w.WriteBoolean("overdue", due.Overdue);
        if (due.AtOnce)
            w.WriteBoolean("atOnce", true);
        if (due.Limb is { } limb)
            w.WriteString("limb", Wire.Word(limb));
        w.WriteString("text", due.Said());
        if (due.Reason is { } reason)
            w.WriteString("reason", reason);
        if (!due.LookFirst.IsEmpty)
            Texts(w, "lookFirst", due.LookFirst.Select(i => i.Name));
        if (due.People > 1)
            w.WriteNumber("people", due.People);
        w.WriteString("source", string.Join("; ", due.Sources));
    }

    private static string State(Truth truth) => Wire.Word(truth);

    private static void Span(Utf8JsonWriter w, string name, Elapsed elapsed)
    {
        w.WriteStartObject(name);
        w.WriteString("min", IsoSpan.Write(elapsed.Min));
        w.WriteString("max", IsoSpan.Write(elapsed.Max));
        w.WriteEndObject();
    }

    private static void Texts(Utf8JsonWriter w, string name, IEnumerable<string> texts)
    {
        w.WriteStartArray(name);
        foreach (var text in texts)
            w.WriteStringValue(text);
        w.WriteEndArray();
    }

    private static void List<T>(Utf8JsonWriter w, string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> write)
    {
        w.WriteStartArray(name);
        foreach (var item in items)
        {
            w.WriteStartObject();
            write(w, item);
            w.WriteEndObject();
        }

        w.WriteEndArray();
    }
}
