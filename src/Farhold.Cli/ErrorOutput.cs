using Spectre.Console.Cli;

namespace Farhold.Cli;

/// <summary>Says on standard error why something can't be done. Nothing of it goes to standard output.</summary>
internal static class ErrorOutput
{
    /// <summary>Exit code of unusable input.</summary>
    public const int Unusable = 2;

    public static int Of(IEnumerable<Refusal> refusals)
    {
        foreach (var refusal in refusals)
            Say(refusal.ToString());
        return Unusable;
    }

    public static int Plainly(string sentence)
    {
        Say($"farhold: {sentence}");
        return Unusable;
    }

    public static void Say(string line) => Console.Error.WriteLine(Plain.Line(line));

    public static string Sentence(Exception fault) =>
        fault switch
        {
            CommandAppException usage => $"{usage.Message} Try farhold --help.",
            OutOfMemoryException => "not enough memory for a record of this size",
            OperationCanceledException => "stopped",
            _ => fault.Message,
        };
}
