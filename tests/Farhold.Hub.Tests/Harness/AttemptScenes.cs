namespace Farhold.Hub.Tests.Harness;

/// <summary>An attempt at each of its moments, and a text that is on the screen at that moment.</summary>
internal static class AttemptScenes
{
    public static IEnumerable<(string Name, RecordFile File, string Shown)> All()
    {
        yield return ("start", Of("aaaa").Looked(2, "none").Well(2), "Start the attempt");
        yield return ("pack", Of("aaab").Attempt(1), "Packed. With what?");
        yield return ("hold", Of("aaac").Attempt(2).Packed(1), "left to press");
        yield return ("hold-reached", Of("aaad").Attempt(9).Packed(8), "Do not let go yet.");
        yield return ("dress", Of("aaae").Attempt(9).Packed(8).Held(1), "Pressure dressing is on");
        yield return ("slacken", Of("aaaf").Attempt(9).Packed(8).Held(2).Dressed(1), "Look at the dressing first. What do you see?");
        yield return ("slackening", Of("aaag").Attempt(9).Packed(8).Held(2).Dressed(1).Looked(0, "none"), "left, slowly");
        yield return (
            "slacken-reached",
            Of("aaah").Attempt(22).Packed(21).Held(16).Dressed(15).Looked(14, "none"),
            "The least time is over."
        );
        yield return (
            "slacken-two",
            Of("aaap").Second(39).Attempt(22).Packed(21).Held(16).Dressed(15).Looked(14, "none"),
            "2 are tight: log each once it is loose"
        );
        yield return (
            "one-still-tight",
            Of("aaar").Second(39).Attempt(22).Packed(21).Held(16).Dressed(15).Looked(14, "none").Slackened(1),
            "One is still tight: t2"
        );
        yield return ("stopped", Of("aaas").Attempt(2).InShock(1), "STOP: leave the tourniquet on");
        yield return (
            "shock-while-watching",
            Of("aaat").Attempt(22).Packed(21).Held(16).Dressed(15).Looked(14, "none").Slackened(2).InShock(1),
            "SIGNS OF SHOCK"
        );
        yield return (
            "watch",
            Of("aaak").Attempt(22).Packed(21).Held(16).Dressed(15).Looked(14, "none").Slackened(2),
            "left to watch without a break"
        );
        yield return (
            "watch-reached",
            Of("aaam").Attempt(24).Packed(24).Held(20).Dressed(20).Looked(20, "none").Slackened(17),
            "Look once more. What do you see?"
        );
        yield return (
            "bleeding-again",
            Of("aaan").Attempt(22).Packed(21).Held(16).Dressed(15).Looked(14, "none").Slackened(4).Looked(0, "active"),
            "TIGHTEN NOW"
        );
    }

    private static RecordFile Of(string device) => RecordFile.Ready(device, "Case " + device);
}
