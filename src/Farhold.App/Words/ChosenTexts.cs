using System.Diagnostics;

namespace Farhold.App.Words;

/// <summary>Texts chosen by what is told.</summary>
public static class ChosenTexts
{
    extension(Texts texts)
    {
        public string OutcomeOf(AttemptResult result) => result switch
        {
            AttemptResult.UnderWay => texts.OutcomeUnderWay,
            AttemptResult.Held => texts.ResultHeld,
            AttemptResult.Bled => texts.ResultBled,
            AttemptResult.Abandoned => texts.ResultAbandoned,
            _ => throw new UnreachableException(),
        };

        public string PeriodOf(ObservationPeriod period) => period switch
        {
            { Every: null, Until: { } until } => texts.PeriodUnbroken(Say.Duration(until)),
            { Every: { } every, Until: { } until } => texts.PeriodEvery(Say.Duration(until), Say.Duration(every)),
            { Every: { } every } => texts.PeriodAfter(Say.Duration(every)),
            _ => throw new UnreachableException(),
        };

        /// <summary>How well a source is known, for people.</summary>
        public string KnownAs(string known) => known switch
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
