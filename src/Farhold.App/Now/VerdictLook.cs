namespace Farhold.App.Now;

/// <summary>How an answer looks: shape and word lead, hue comes last.</summary>
/// <param name="Name">Class of the block: <c>stop</c>, <c>ask</c>, <c>wait</c> or <c>go</c>.</param>
public sealed record VerdictLook(string Name, Glyph Shape)
{
    public static readonly VerdictLook Stop = new("stop", Glyph.Alarm);
    public static readonly VerdictLook Ask = new("ask", Glyph.Ask);
    public static readonly VerdictLook Wait = new("wait", Glyph.Wait);
    public static readonly VerdictLook Go = new("go", Glyph.Go);

    public static VerdictLook For(Verdict verdict) =>
        verdict switch
        {
            Verdict.LeaveOn => Stop,
            Verdict.CheckFirst => Ask,
            Verdict.AwaitHelp => Wait,
            Verdict.Attempt => Go,
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>Of a limb that is watched with its tourniquet loose.</summary>
    public static VerdictLook For(ObservedLimb limb) =>
        limb.Bleeding switch
        {
            Truth.Met => Stop,
            Truth.NotMet => Wait,
            _ => Ask,
        };
}
