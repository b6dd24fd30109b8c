using System.Diagnostics;

namespace Farhold.App.Words;

/// <summary>The early warning score in words.</summary>
public static class News2Texts
{
    extension(Texts t)
    {
        public string News2RiskWord(News2Risk risk) =>
            risk switch
            {
                News2Risk.Low => t.News2Low,
                News2Risk.LowMedium => t.News2LowMedium,
                News2Risk.Medium => t.News2Medium,
                News2Risk.High => t.News2High,
                _ => throw new UnreachableException(),
            };

        public string News2Part(News2PartName part) =>
            part switch
            {
                News2PartName.RespiratoryRate => t.PartBreath,
                News2PartName.Spo2 => t.PartSpo2,
                News2PartName.Oxygen => t.PartOxygen,
                News2PartName.Systolic => t.PartSystolic,
                News2PartName.HeartRate => t.PartHeart,
                News2PartName.Consciousness => t.PartMind,
                News2PartName.Temperature => t.PartTemperature,
                _ => throw new UnreachableException(),
            };

        public string KnowledgeWord(Knowledge knowledge) =>
            knowledge switch
            {
                Knowledge.NeverSeen => t.KnownNever,
                Knowledge.Stale => t.KnownStale,
                Knowledge.Fresh => t.KnownFresh,
                _ => throw new UnreachableException(),
            };

        /// <summary>Why the score may say little of this casualty; what is known not to apply is left out.</summary>
        public IEnumerable<string> News2Notes(News2Caution caution)
        {
            if (caution.Under16 != Truth.NotMet)
                yield return caution.Under16 == Truth.Met ? t.News2Under16 : t.News2AgeUnknown;
            if (caution.Pregnancy != Truth.NotMet)
                yield return t.News2Pregnancy;
            if (caution.Altitude != Truth.NotMet)
                yield return t.News2Altitude;
        }
    }
}
