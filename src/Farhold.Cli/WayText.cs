using System.Globalization;
using NodaTime;

namespace Farhold.Cli;

/// <summary>A forecast for a person: ranges first, then what it hangs on, then what it rests on.</summary>
internal static class WayText
{
    public static void Write(
        Outlook outlook,
        IReadOnlyCollection<WhatIfAnswer> answers,
        DecisionTime? decision,
        SideBySide? side,
        Darkness? darkness,
        TextWriter to
    )
    {
        var zone = outlook.Plan.TimeZone ?? DateTimeZone.Utc;
        void Line(string text) => to.WriteLine(Plain.Line(text));

        Line($"{outlook.Plan.Title ?? outlook.Plan.Id ?? "Way out"}, setting out {Time(outlook.Plan.Start, zone)}");
        var clock = ArrivalClock.Of(outlook.Plan);
        foreach (var sentence in decision is null ? [] : DecisionWords.Of(decision, clock))
            Line(sentence);
        foreach (var sentence in ArrivalWords.Sentences(outlook))
            Line(sentence);
        if (side is not null)
        {
            Line("");
            Line("Side by side, on the same luck:");
            foreach (var sentence in DecisionWords.Of(side, clock))
                Line($"  {sentence}");
        }

        Line("");
        Line("Stage by stage, eight of ten arrivals lie between:");
        foreach (var leg in outlook.Legs.Where(l => l.Went.Hits > 0))
            Line(
                $"  {leg.Place.Path} {leg.Place.Label}: {Time(At(leg, 0.1), zone)} and {Time(At(leg, 0.9), zone)}, as likely before as "
                    + $"after {Time(At(leg, 0.5), zone)}"
                    + (leg.Went.Hits < leg.Went.Trials ? $"; taken: {ArrivalWords.Chance(leg.Went)}" : "")
                    + (leg.Dark is { Hits: > 0 } dark ? $"; in the dark: {ArrivalWords.Chance(dark)}" : "")
            );
        if (answers.Count > 0)
        {
            Line("");
            Line("What would change it:");
            foreach (var answer in answers)
                Line($"  {ArrivalWords.Sentence(answer, outlook)}");
        }

        if (darkness is not null)
        {
            Line("");
            Line("Dark along the way (sun more than 6 degrees down):");
            var end = outlook.At(0.95).At ?? outlook.Plan.Start + Duration.FromDays(3);
            var nights = darkness.Stretches.Where(s => s.To > outlook.Plan.Start && s.From < end).ToArray();
            Line(
                nights.Length == 0
                    ? "  never, as far as this reaches"
                    : "  " + string.Join("; ", nights.Select(s => $"{Time(s.From, zone)} to {Time(s.To, zone)}"))
            );
        }

        Line("");
        Line("It rests on:");
        foreach (var rest in outlook.Rests)
            Line($"  [{rest.Mark.ToString().ToLowerInvariant()}] {rest.What} ({rest.Source})");
        Line(string.Create(CultureInfo.InvariantCulture, $"{outlook.Trials} trials, {outlook.Rng}"));
    }

    private static Instant? At(LegArrival leg, double p) => leg.Quantiles.FirstOrDefault(q => q.P == p)?.At;

    private static string Time(Instant? at, DateTimeZone zone) =>
        at is not { } known
            ? "never"
            : known.InZone(zone).ToString("d MMM uuuu HH:mm", CultureInfo.InvariantCulture) + (zone == DateTimeZone.Utc ? " UTC" : "");
}
