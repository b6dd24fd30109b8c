using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace Farhold.WayOut.Plans;

/// <summary>
/// A forecast as JSON: instants in UTC, durations as ISO 8601, shares from 0 to 1; null where nothing comes within 60 days.
/// </summary>
public static class OutlookJson
{
    public static JsonText Write(
        Outlook outlook,
        IEnumerable<WhatIfAnswer>? whatIfs = null,
        DecisionTime? decision = null,
        SideBySide? side = null
    )
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true }))
            Write(json, outlook, whatIfs ?? [], decision, side);
        return new(buffer.WrittenMemory);
    }

    private static void Write(
        Utf8JsonWriter json,
        Outlook outlook,
        IEnumerable<WhatIfAnswer> whatIfs,
        DecisionTime? decision,
        SideBySide? side
    )
    {
        var start = outlook.Plan.Start;
        json.WriteStartObject();
        json.WriteString("plan", outlook.Plan.Id);
        json.WriteString("start", Iso(start));
        json.WriteString("generator", outlook.Rng.ToString());
        json.WriteNumber("trials", outlook.Trials);
        List(json, "says", ArrivalWords.Sentences(outlook), json.WriteStringValue);
        Cases(json, outlook.Cases, start);
        List(json, "atHigherCare", outlook.Quantiles, q => Quantile(json, q, start));
        List(
            json,
            "arrivedBy",
            outlook.ByHour,
            point =>
            {
                json.WriteStartObject();
                json.WriteString("at", Iso(point.At));
                Share(json, "probability", point.Arrived);
                json.WriteEndObject();
            }
        );
        List(json, "deadlines", outlook.Deadlines, d => Deadline(json, d, null));
        List(json, "legs", outlook.Legs, leg => Leg(json, leg, start));
        List(
            json,
            "drivers",
            outlook.Drivers,
            driver =>
            {
                json.WriteStartObject();
                json.WriteString("what", driver.What);
                Share(json, "share", driver.Share);
                Share(json, "standardError", driver.StandardError);
                json.WriteEndObject();
            }
        );
        if (decision is not null)
            Decision(json, decision, outlook.Plan);
        if (side is not null)
            Side(json, side, start);
        List(json, "whatIf", whatIfs, answer => Answer(json, answer, start));
        List(
            json,
            "restsOn",
            outlook.Rests,
            rest =>
            {
                json.WriteStartObject();
                json.WriteString("what", rest.What);
                json.WriteString("mark", Mark(rest.Mark));
                json.WriteString("source", rest.Source);
                json.WriteEndObject();
            }
        );
        List(json, "cautions", outlook.Cautions, json.WriteStringValue);
        json.WriteEndObject();
    }

    private static void Cases(Utf8JsonWriter json, ByCase cases, Instant start)
    {
        json.WriteStartObject("byCase");
        json.WriteString("choice", cases.Choice?.Path);
        List(
            json,
            "ways",
            cases.Ways,
            way =>
            {
                json.WriteStartObject();
                json.WriteString("name", way.Name);
                Share(json, "first", way.Share.Value);
                List(json, "arrival", way.Arrival, q => Quantile(json, q, start));
                json.WriteEndObject();
            }
        );
        Share(json, "none", cases.None.Value);
        List(
            json,
            "notFeasible",
            cases.NotFeasible,
            stopped =>
            {
                json.WriteStartObject();
                json.WriteString("leg", stopped.Place.Path);
                json.WriteString("label", stopped.Place.Label);
                Share(json, "of", stopped.Of.Value);
                json.WriteString("why", stopped.Why);
                json.WriteEndObject();
            }
        );
        json.WriteEndObject();
    }

    private static void Decision(Utf8JsonWriter json, DecisionTime decision, Plan plan)
    {
        json.WriteStartObject("decision");
        List(json, "says", DecisionWords.Of(decision, ArrivalClock.Of(plan)), json.WriteStringValue);
        json.WriteBoolean("matters", decision.Matters);
        json.WriteString("limit", decision.Limit?.Id);
        Wait(json, "best", decision.Best, plan.Start);
        Wait(json, "atOnce", decision.GoNow, plan.Start);
        Wait(json, "waitingOn", decision.WaitOn, plan.Start);
        json.WriteEndObject();
    }

    private static void Wait(Utf8JsonWriter json, string name, WaitOutcome outcome, Instant start)
    {
        json.WriteStartObject(name);
        json.WriteString("until", Iso(start + outcome.Wait));
        if (outcome.Before is { } before)
            Share(json, "before", before.Value);
        json.WriteString("nineInTen", Iso(outcome.Late));
        json.WriteEndObject();
    }

    private static void Side(Utf8JsonWriter json, SideBySide side, Instant start)
    {
        json.WriteStartObject("sideBySide");
        List(
            json,
            "plans",
            side.Plans,
            plan =>
            {
                json.WriteStartObject();
                json.WriteString("name", plan.Name);
                Share(json, "first", plan.Earliest.Value);
                Share(json, "none", plan.None.Value);
                json.WriteString("laterOnAverage", Iso(plan.LaterSeconds.Value));
                List(json, "atHigherCare", plan.Quantiles, q => Quantile(json, q, start));
                List(json, "deadlines", plan.Deadlines, d => Deadline(json, d, null));
                json.WriteEndObject();
            }
        );
        Share(json, "same", side.Same.Value);
        Share(json, "none", side.None.Value);
        json.WriteEndObject();
    }

    private static void Leg(Utf8JsonWriter json, LegArrival leg, Instant start)
    {
        json.WriteStartObject();
        json.WriteString("leg", leg.Place.Path);
        json.WriteString("label", leg.Place.Label);
        if (leg.Place.Mode is { } mode)
            json.WriteString("mode", TravelReader.Word(mode));
        Share(json, "went", leg.Went.Value);
        if (leg.Dark is { } dark)
            Share(json, "endsInTheDark", dark.Value);
        List(json, "arrival", leg.Quantiles, q => Quantile(json, q, start));
        json.WriteEndObject();
    }

    private static void Quantile(Utf8JsonWriter json, ArrivalQuantile q, Instant start)
    {
        json.WriteStartObject();
        json.WriteNumber("p", q.P);
        json.WriteString("at", Iso(q.At));
        json.WriteString("after", q.At is { } at ? IsoSpan.WriteNearest(at - start) : null);
        json.WriteString("low", Iso(q.Low));
        json.WriteString("high", Iso(q.High));
        json.WriteEndObject();
    }

    private static void Deadline(Utf8JsonWriter json, DeadlineChance d, PairedDifference? difference)
    {
        json.WriteStartObject();
        json.WriteString("id", d.Deadline.Id);
        json.WriteString("at", Iso(d.Deadline.At));
        Share(json, "probability", d.Before.Value);
        Share(json, "standardError", d.Before.StandardError);
        Share(json, "low", d.Before.Low);
        Share(json, "high", d.Before.High);
        if (difference is { } by)
        {
            Share(json, "difference", by.Value);
            Share(json, "differenceStandardError", by.StandardError);
        }

        json.WriteEndObject();
    }

    private static void Answer(Utf8JsonWriter json, WhatIfAnswer answer, Instant start)
    {
        json.WriteStartObject();
        json.WriteString("id", answer.Id);
        json.WriteString("what", answer.What);
        json.WriteString("laterOnAverage", Iso(answer.LaterSeconds.Value));
        json.WriteString("laterStandardError", Iso(answer.LaterSeconds.StandardError));
        List(json, "atHigherCare", answer.Quantiles, q => Quantile(json, q, start));
        Cases(json, answer.Cases, start);
        List(json, "deadlines", answer.Deadlines, d => Deadline(json, d.Chance, d.Difference));
        json.WriteEndObject();
    }

    private static void List<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
            write(item);
        json.WriteEndArray();
    }

    /// <summary>Four decimals: no sample here knows more.</summary>
    private static void Share(Utf8JsonWriter json, string name, double value)
    {
        if (double.IsFinite(value))
            json.WriteNumber(name, Math.Round(value, 4));
        else
            json.WriteNull(name);
    }

    private static string? Iso(double seconds) => double.IsFinite(seconds) ? IsoSpan.WriteNearest(Duration.FromSeconds(seconds)) : null;

    private static string? Iso(Instant? at) => at is { } instant ? InstantPattern.General.Format(instant) : null;

    private static string Mark(Evidence mark) =>
        mark switch
        {
            Evidence.Read => "read",
            Evidence.Computed => "computed",
            Evidence.Memory => "memory",
            _ => "assumption",
        };
}
