namespace Farhold.Doses;

/// <summary>From a dose to what can be counted or drawn up, never above it.</summary>
internal static class DoseRounding
{
    /// <summary>
    /// The lower end of the dose, rounded down; if that is nothing, the least that can be measured, where it is within the dose.
    /// Null where not even that is.
    /// </summary>
    public static Portion? Down(DrugForm form, double lowMg, double highMg)
    {
        var step = form.StepMg(lowMg);
        var steps = Math.Floor((lowMg / step) + 1e-9); // a dose that is a whole number of steps but for rounding stays one
        if (steps < 1)
            steps = 1;
        var mg = Math.Round(steps * step, 9);
        if (mg > highMg * (1 + 1e-9))
            return null;
        return new(form, mg, form.PieceMg is { } piece ? mg / piece : null, form.MgPerMl is { } perMl ? mg / perMl : null);
    }
}
