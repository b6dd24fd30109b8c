using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Farhold.App.Rehearse;

/// <param name="Run">Null where there are refusals.</param>
/// <param name="IsSame">To the last bit what it was on the other phone.</param>
internal sealed record TakenRun(IRun? Run, bool IsSame, ImmutableArray<Refusal> Refusals);

/// <summary>Makes runs, once the model is loaded.</summary>
/// <remarks>
/// On the phone, whatever is compiled asks for the types that it names, and an assembly that was asked for and was not there is never asked
/// for again. So what names the model's types stands behind a call from here, which is compiled only when it is made.
/// </remarks>
internal static class RunFactory
{
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static IRun Begin(KeptRun kept) => RunningRehearsal.Begin(kept);

    /// <summary>Makes a run of another phone again from start to end.</summary>
    /// <param name="text">As <see cref="IRun.Share"/> wrote it.</param>
    /// <param name="name">Of the text, for what is refused.</param>
    /// <param name="own">The files of this phone's own scenarios, by their ids.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static Task<TakenRun> TakenAsync(
        ReadOnlyMemory<byte> text,
        string name,
        IReadOnlyDictionary<string, string> own,
        Func<Task> breathe
    ) => RunningRehearsal.TakenAsync(text, name, own, breathe);

    [MethodImpl(MethodImplOptions.NoInlining)]
    public static Task<IRun> AgainAsync(KeptRun kept, IEnumerable<string> lines, Func<Task> breathe) =>
        RunningRehearsal.AgainAsync(kept, lines, breathe);
}
