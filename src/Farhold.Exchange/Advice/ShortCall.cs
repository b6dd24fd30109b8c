using System.Globalization;
using Farhold.Exchange.HandOver;
using Farhold.Exchange.Message;
using NodaTime;
using NodaTime.Text;

namespace Farhold.Exchange.Advice;

/// <summary>A call for advice in one short message: for a person to read, what matters most first, what found no room counted.</summary>
internal static class ShortCall
{
    private const string Between = "; ";

    /// <summary>Longest question that still leaves room for time and answer (design).</summary>
    private const int LongestQuestion = 70;

    private static readonly InstantPattern Clock = InstantPattern.CreateWithInvariantCulture("HH:mm'Z'");

    public static string Of(AdviceCall call)
    {
        var head = Plainly($"{(call.Facts.Practice ? "PRACTICE " : "")}ASK {Brief(call)}");
        string[] always = [head, .. call.Limb is { } limb ? (string[])[Tourniquet(limb)] : []];
        string[] blocks = [.. call.Blocking.Select(f => f.Against == Truth.Unknown ? $"{f.Criterion.Id}?" : f.Criterion.Id)];
        string[] more =
        [
            .. call.Limb is null ? call.Facts.Limbs.Select(l => $"TQ {Say.Limb(l.Limb)} {Tourniquet(l)}") : [],
            .. Signs(call.Facts),
            .. Help(call.Facts),
            .. Place(call.Facts),
        ];
        for (var named = blocks.Length; named >= 0; named--)
        {
            var said = Message(always, blocks, named, more, 0);
            if (!Fits(said))
                continue;
            for (var told = more.Length; told > 0; told--)
                if (Message(always, blocks, named, more, told) is var longer && Fits(longer))
                    return longer;
            return said;
        }

        return Message(always, blocks, 0, [], 0);
    }

    private static string Message(string[] always, string[] blocks, int named, string[] more, int told)
    {
        var left = blocks.Length - named;
        string[] against =
            blocks.Length == 0 ? []
            : named == 0 ? [Count($"{left} against")]
            : [$"against {string.Join(' ', blocks.Take(named))}{(left > 0 ? Count($" +{left}") : "")}"];
        string[] cut = more.Length > told ? [Count($"+{more.Length - told} more")] : [];
        return string.Join(Between, [.. always, .. against, .. more.Take(told), .. cut, "Y/N until?"]);
    }

    private static string Brief(AdviceCall call)
    {
        var limb = call.Question.Limb is { } l ? Say.Limb(l) : "";
        return call.Question.For switch
        {
            AskFor.Attempt => $"try to convert TQ {limb}?",
            AskFor.Late => $"convert TQ {limb} late?",
            AskFor.Further => $"further attempt TQ {limb}?",
            AskFor.Guide => $"what to do, TQ {limb}?",
            AskFor.SoftSign => $"convert TQ {limb} with soft sign?",
            _ => call.Question.Text.Length <= LongestQuestion ? call.Question.Text : call.Question.Text[..(LongestQuestion - 1)] + "+",
        };
    }

    private static string Tourniquet(LimbFact limb) =>
        limb.Tight == Truth.NotMet ? "loosened"
        : limb.FirstTightened.IsInstant ? $"on since {Clock.Format(limb.FirstTightened.Latest)}"
        : $"on since {Clock.Format(limb.FirstTightened.Earliest)}-{Clock.Format(limb.FirstTightened.Latest)}";

    /// <summary>The newest of each with its age at the most; what nobody took is asked for by the list of what stands against it.</summary>
    private static IEnumerable<string> Signs(CareFacts facts) =>
        from sign in facts.Signs
        where Codes.ContainsKey(sign.Kind.Field) && sign.Latest is [{ Number: not null }]
        let value = sign.Latest[0]
        select $"{Codes[sign.Kind.Field]} {Say.Number(value.Number!.Value)} ({Say.Duration(value.Age.Max)})";

    private static IEnumerable<string> Help(CareFacts facts) =>
        facts.Help.IsEmpty
            ? ["no help known"]
            : facts
                .Help.Select(h => h.As<Payload.HelpExpected>())
                .Select(h =>
                    $"{(h.Care is { } care ? Wire.Word(care) : "help")} {(h.Latest is { } latest ? "by " + Clock.Format(latest) : "about " + Clock.Format(h.Likely))}"
                );

    private static IEnumerable<string> Place(CareFacts facts) =>
        facts
            .Positions.Select(p => p.As<Payload.PositionNoted>())
            .Select(p => FormattableString.Invariant($"at {p.Lat:0.####},{p.Lon:0.####}"));

    private static bool Fits(string text) => Gsm7.Septets(text) is <= Gsm7.MessageSeptets;

    /// <summary>What the alphabet of short messages lacks becomes a question mark.</summary>
    private static string Plainly(string text) => string.Concat(text.Select(c => Gsm7.Septets(c.ToString()) is null or 2 ? '?' : c));

    private static string Count(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static readonly Dictionary<string, string> Codes = new()
    {
        ["heartRate"] = "HR",
        ["systolic"] = "SYS",
        ["breathRate"] = "BR",
    };
}
