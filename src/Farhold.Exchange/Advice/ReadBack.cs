using System.Collections.Immutable;
using Farhold.Exchange.HandOver;
using NodaTime;

namespace Farhold.Exchange.Advice;

/// <summary>What the carer reads back to whoever gave advice, before it counts as agreed.</summary>
public static class ReadBack
{
    /// <param name="asked">The question it answers; null where none was logged.</param>
    public static ImmutableArray<string> Of(Payload.AdviceReceived advice, string? asked, Protocol protocol, Instant now, DateTimeZone zone)
    {
        var times = new TimeWords(zone, now);
        return
        [
            AdviceTexts.IReadBack,
            Plain.Line(advice.Authority is { } office ? AdviceTexts.YouAre(advice.From, office) : AdviceTexts.YouAreNoOffice(advice.From)),
            .. asked is null ? (string[])[] : [Plain.Line(AdviceTexts.WeAsked(asked))],
            Plain.Line(AdviceTexts.YouSaid(advice.Text)),
            Allowed(advice, protocol, now, times),
            .. IsPartOnly(advice, protocol) ? [AllowanceWords.InPart(advice.From, advice.Authority, protocol)] : (string[])[],
            AdviceTexts.IsThatRight,
        ];
    }

    /// <summary>A yes that the local protocol does not let count for everything.</summary>
    private static bool IsPartOnly(Payload.AdviceReceived advice, Protocol protocol) =>
        advice.Allows is { IsDefaultOrEmpty: false } && !protocol.Advice.Allowances.Permit(advice.Authority, AllowedActs.Attempt);

    private static string Allowed(Payload.AdviceReceived advice, Protocol protocol, Instant now, TimeWords times) =>
        (advice.Allows, advice.Until) switch
        {
            ({ IsDefault: true }, _) => AdviceTexts.NeitherYesNorNo,
            ({ IsEmpty: true }, { } until) => AdviceTexts.NoAttemptUntil(times.At(until)),
            ({ IsEmpty: true }, null) => AdviceTexts.NoAttempt,
            (_, { } until) => AdviceTexts.AttemptUntil(times.At(until)),
            (_, null) => AdviceTexts.AttemptNoEnd(Say.Duration(protocol.Advice.Lasts), times.At(now + protocol.Advice.Lasts)),
        };
}
