using System.Diagnostics;

namespace Farhold.App.Words;

/// <summary>Texts chosen by what is told.</summary>
public static class ChosenTexts
{
    extension(Texts texts)
    {
        public string OutcomeOf(AttemptResult result) =>
            result switch
            {
                AttemptResult.UnderWay => texts.OutcomeUnderWay,
                AttemptResult.Held => texts.ResultHeld,
                AttemptResult.Bled => texts.ResultBled,
                AttemptResult.Abandoned => texts.ResultAbandoned,
                _ => throw new UnreachableException(),
            };

        /// <summary>What is due, as a sentence, with the time until which it goes on as the clock shows it.</summary>
        public string Said(DueTask due, PhoneClock clock, NodaTime.Instant now) =>
            Labels.Sentence(due.Until is { } until ? texts.DueUntil(due.Text, clock.Show(until, now)) : due.Said(clock.Zone));

        /// <summary>One span, or a range where it is not known exactly.</summary>
        public string Elapsed(Elapsed span)
        {
            var (least, most) = (Say.Duration(span.Min), Say.Duration(span.Max));
            return least == most ? most : texts.SpanTo(least, most);
        }

        public string PeriodOf(ObservationPeriod period) =>
            period switch
            {
                { Every: null, Until: { } until } => texts.PeriodUnbroken(Say.Duration(until)),
                { Every: { } every, Until: { } until } => texts.PeriodEvery(Say.Duration(until), Say.Duration(every)),
                { Every: { } every } => texts.PeriodAfter(Say.Duration(every)),
                _ => throw new UnreachableException(),
            };

        /// <summary>How well a source is known, for people.</summary>
        public string KnownAs(string known) =>
            known switch
            {
                "read" => texts.KnownRead,
                "read-2" => texts.KnownReadSecond,
                "memory" => texts.KnownMemory,
                "design" => texts.KnownDesign,
                "common practice" => texts.KnownCommon,
                "local" => texts.KnownLocal,
                _ => known,
            };
    }
}
