using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Care;

/// <summary>Drink and urine by mass, for a body that an adult's figures do not fit.</summary>
public static class ChildFigures
{
    /// <summary>Younger ones are reckoned by mass, whatever it is (design).</summary>
    public const double BelowYears = 12;

    /// <summary>Lighter ones too, unless they are known to be grown up (design).</summary>
    public const double BelowKg = 40;

    private const double AdultYears = 16;

    /// <summary>From one year on a child's figures are the same at any age.</summary>
    private const double PaperYears = 6;

    /// <summary>Least urine of a child, mL/kg/h (Emergency War Surgery, NATO handbook, chapter III: under 30 kg).</summary>
    private const double LeastUrineMlPerKg = 1;

    /// <summary>Whether figures go by mass; unknown age and mass are taken as an adult's.</summary>
    public static bool Fit(Payload.CasualtyOpened? person) =>
        person is { AgeYears: < BelowYears } or { AgeYears: null or < AdultYears, MassKg: < BelowKg };

    /// <summary>Of the need over so long, by the 4-2-1 rule, to the nearest 10 mL. Null without a mass.</summary>
    /// <param name="over">Null: an hour.</param>
    public static double? DrinkMl(double? massKg, Duration? over) =>
        massKg is > 0 and { } mass
            ? Math.Max(10, Math.Round(Intake.MaintenanceMlPerHour(mass) * (over?.TotalHours ?? 1) / 10, MidpointRounding.AwayFromZero) * 10)
            : null;

    /// <summary>The words of a task for this body: its own where the task has them, and the figures in their places.</summary>
    internal static CareTask Worded(CareTask task, Payload.CasualtyOpened? person, Duration? interval) =>
        Fit(person) ? Worded(task, person!.AgeYears, person.MassKg, interval, CareTexts.EnterMass) : task;

    /// <summary>The words of a task on a sheet for a child of 1 to 11 years, each drink that of the task's usual interval.</summary>
    /// <param name="massKg">Null: as long as nobody knows it.</param>
    public static CareTask OnPaper(CareTask task, double? massKg) => Worded(task, PaperYears, massKg, task.Every, "");

    /// <param name="ask">Follows a figure that wants the mass.</param>
    private static CareTask Worded(CareTask task, double? ageYears, double? massKg, Duration? interval, string ask)
    {
        if (task.Child is not { } child)
            return task;
        string Filled(string words) =>
            words
                .Replace("{drink}", Drink(massKg, interval, ask), StringComparison.Ordinal)
                .Replace("{urine}", Urine(UrineTarget.Of(ageYears, massKg, KidneyLoad.None)), StringComparison.Ordinal)
                .Replace(
                    "{kidneys}",
                    Urine(UrineTarget.ByMass(2 * LeastUrineMlPerKg, 2 * LeastUrineMlPerKg, massKg, "")), // RCEM: twice the ordinary
                    StringComparison.Ordinal
                );
        return task with
        {
            Text = Filled(child.Text ?? task.Text),
            Reason = (child.Reason ?? task.Reason) is { } reason ? Filled(reason) : null,
        };
    }

    private static string Drink(double? massKg, Duration? over, string ask) =>
        DrinkMl(massKg, over) is { } ml
            ? CareTexts.DrinkAbout(Say.Number(ml))
            : CareTexts.DrinkExamples(Say.Number(DrinkMl(10, over)!.Value), Say.Number(DrinkMl(20, over)!.Value), ask);

    private static string Urine(UrineTarget target) =>
        target.MlPerHour is { } ml
            ? CareTexts.UrineHour(Range(Math.Ceiling(ml.Low), Math.Ceiling(ml.High)))
            : CareTexts.UrineHourEachKg(Range(target.MlPerKgHour!.Value.Low, target.MlPerKgHour.Value.High));

    private static string Range(double low, double high) =>
        low == high ? Say.Number(high) : CareTexts.Range(Say.Number(low), Say.Number(high));
}
