using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Review;

/// <summary>Advice, help, how care ended and what was heard later; and what was written down late.</summary>
internal static class ReviewPeople
{
    /// <summary>Later than this an entry is told as written late (design).</summary>
    private static readonly Duration Late = Duration.FromMinutes(15);

    public static IEnumerable<ReviewPoint> Of(ReviewScene scene) =>
        [.. Tries(scene), .. Questions(scene), .. WrittenLate(scene), .. Help(scene), .. Ended(scene), .. Outcomes(scene)];

    private static IEnumerable<ReviewPoint> Tries(ReviewScene scene) =>
        scene
            .Of(Kind.ContactTried)
            .Select(tried =>
                Answered(
                    ReviewKind.AdviceTried,
                    tried,
                    scene.Of(Kind.AdviceReceived).FirstOrDefault(a => !a.When.SurelyBefore(tried.When)),
                    scene
                ) with
                {
                    Text = tried.As<Payload.ContactTried>().Reached ? ReviewTexts.Reached : ReviewTexts.NobodyReached,
                }
            );

    /// <summary>Answered by advice that names it, or else by the next that names no question.</summary>
    private static IEnumerable<ReviewPoint> Questions(ReviewScene scene) =>
        scene
            .Of(Kind.QuestionAsked)
            .Select(asked =>
            {
                var answer =
                    scene.Of(Kind.AdviceReceived).FirstOrDefault(a => a.As<Payload.AdviceReceived>().Answers == asked.Id)
                    ?? scene
                        .Of(Kind.AdviceReceived)
                        .FirstOrDefault(a => a.As<Payload.AdviceReceived>().Answers is null && !a.When.SurelyBefore(asked.When));
                return Answered(ReviewKind.QuestionAsked, asked, answer, scene) with
                {
                    Text = asked.As<Payload.QuestionAsked>().Text,
                    Fits = answer?.As<Payload.AdviceReceived>().ReadBack is { } back ? Kleene.Of(back) : Truth.Unknown,
                };
            });

    private static ReviewPoint Answered(ReviewKind kind, Dated asked, Dated? answer, ReviewScene scene) =>
        new(kind, asked.When, null, [asked.Id, .. ReviewLimbs.Ids(answer)])
        {
            SinceTightened = scene.Since(asked.When),
            Lasting = answer is null ? null : ReviewScene.Between(asked.When, answer.When),
        };

    /// <summary>All in one point: what the people there knew then may be more than what had been written.</summary>
    private static IEnumerable<ReviewPoint> WrittenLate(ReviewScene scene)
    {
        var late = scene
            .State.All.Where(d =>
                d.When.Latest <= scene.Until && d.Recorded - d.When.Latest > Late && d.What is not Payload.OutcomeReported
            )
            .OrderBy(d => d.Id)
            .ToArray();
        if (late.Length > 0)
            yield return new(
                ReviewKind.WrittenLate,
                new(late.Min(d => d.When.Latest), late.Max(d => d.When.Latest)),
                null,
                [.. late.Select(d => d.Id)]
            )
            {
                Lasting = new(late.Min(d => d.Recorded - d.When.Latest), late.Max(d => d.Recorded - d.When.Latest)),
                Asked = Late,
            };
    }

    /// <summary>The forecasts of higher care, against the hand-over: it stands for the arrival, which no entry names.</summary>
    private static IEnumerable<ReviewPoint> Help(ReviewScene scene)
    {
        if (scene.Ended is not { } ended || ended.As<Payload.CareEnded>().How != CareEnd.HandedOver)
            return [];
        return scene
            .Of(Kind.HelpExpected)
            .Where(h => h.As<Payload.HelpExpected>().Care != HelpCare.Hands && h.When.Latest <= ended.When.Latest)
            .Select(h =>
            {
                var help = h.As<Payload.HelpExpected>();
                var (early, late) = (help.Earliest, help.Latest);
                return new ReviewPoint(ReviewKind.HelpForecast, h.When, null, [h.Id, ended.Id])
                {
                    SinceTightened = scene.Since(h.When),
                    Off = ended.When.Latest - help.Likely,
                    Score = QuantileScore.Of(help, ended.When.Latest, scene.Rules.Protocol.Clock.SoonProbability),
                    Fits =
                        ended.When.Latest > late || ended.When.Earliest < early ? Truth.NotMet
                        : early is null || late is null ? Truth.Unknown
                        : Truth.Met,
                };
            });
    }

    private static IEnumerable<ReviewPoint> Ended(ReviewScene scene) =>
        scene
            .Of(Kind.CareEnded)
            .Select(e => new ReviewPoint(ReviewKind.CareEnded, e.When, null, [e.Id])
            {
                SinceTightened = scene.Since(e.When),
                Text = Wire.Word(e.As<Payload.CareEnded>().How),
            });

    private static IEnumerable<ReviewPoint> Outcomes(ReviewScene scene) =>
        scene
            .Of(Kind.OutcomeReported)
            .Select(o => new ReviewPoint(ReviewKind.Outcome, o.When, o.As<Payload.OutcomeReported>().Limb, [o.Id])
            {
                Text = Plain.Line(EntryText.Of(o.What)),
            });
}
