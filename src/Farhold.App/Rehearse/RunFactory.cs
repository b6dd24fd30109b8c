using System.Runtime.CompilerServices;

namespace Farhold.App.Rehearse;

/// <summary>Makes runs, once the model is loaded.</summary>
/// <remarks>
/// On the phone, whatever is compiled asks for the types that it names, and an assembly that was asked for and was not there is never asked
/// for again. So what names the model's types stands behind a call from here, which is compiled only when it is made.
/// </remarks>
internal static class RunFactory
{
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static IRun Begin(KeptRun kept) => RunningRehearsal.Begin(kept);

    [MethodImpl(MethodImplOptions.NoInlining)]
    public static Task<IRun> AgainAsync(KeptRun kept, IEnumerable<string> lines, Func<Task> breathe) =>
        RunningRehearsal.AgainAsync(kept, lines, breathe);
}
