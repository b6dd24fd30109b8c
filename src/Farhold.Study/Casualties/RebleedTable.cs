using System.Collections.Immutable;
using System.Globalization;
using Farhold.Physiology.Body;
using Farhold.Physiology.Constants;
using Farhold.Study.Reports;

namespace Farhold.Study.Casualties;

/// <summary>What came of one bleed.</summary>
/// <param name="ExtraPercent">Lost from the opening on, in % of blood volume at rest.</param>
/// <param name="LowestPressure">Mean arterial, mmHg.</param>
/// <param name="DiesAfter">Minutes from the opening to arrest; null where the casualty lives an hour longer.</param>
public readonly record struct Rebleed(double ExtraPercent, double LowestPressure, double? DiesAfter);

/// <summary>A wound that is let out at 1:30 h and bleeds, by how soon the tourniquet is tight again.</summary>
/// <remarks>
/// The model's default man, tied two minutes after the wound; stepped by half a second, and watched for an hour after he is tied again.
/// Conditions are those of the reference's courses of the same kind (R05): 22 °C, pain 6 and 8, anxiety 1, depressor strength 0.4.
/// </remarks>
public static class RebleedTable
{
    public static readonly ImmutableArray<double> Minutes = [1, 2, 5, 10, 15, 30];

    /// <summary>Initial bleed in mL/min, and how much of the wound is open once the tourniquet is out.</summary>
    public static readonly ImmutableArray<(double Bleed, double Open)> Wounds =
    [
        (700, 1),
        (700, 0.25),
        (300, 1),
        (300, 0.25),
        (150, 1),
        (150, 0.25),
    ];

    public static Rebleed Find(double bleed, double open, double minutes)
    {
        var casualty = new CasualtySimulation(Models.Current, new() { DepressorStrength = 0.4 }, wounds: 2);
        var hurt = new Conditions
        {
            AirTemperature = 22,
            Pain = 6,
            Anxiety = 1,
            NociceptiveBlock = 0.8,
        };
        var wound = WoundConditions.Bleeding(WoundKind.LimbArtery, bleed);
        var tied = hurt with { ArterialOcclusion = 1, VenousOcclusion = 1, Pain = 8 };
        var volume = casualty.State[Slot("ArterialVolume")] + casualty.State[Slot("VenousVolume")] + casualty.State[Slot("LimbVolume")];
        var lowest = double.PositiveInfinity;
        void For(double seconds, Conditions conditions, bool look = false)
        {
            casualty.Conditions = conditions;
            for (var second = 0; second < seconds && !casualty.IsArrested; second++)
            {
                casualty.Advance((int)Math.Round(1 / casualty.Step));
                if (look)
                    lowest = Math.Min(lowest, casualty.Vitals().MeanArterialPressure);
            }
        }

        For(120, hurt with { Wounds = [wound] });
        For(5400, tied);
        var (lost, opened) = (casualty.State[Slot("LostVolume")], casualty.Time);
        ImmutableArray<WoundConditions> leak = [new(), wound with { Opening = open }];
        For(60 * minutes, hurt with { Wounds = leak }, look: true);
        For(3600, tied with { Wounds = leak }, look: true);
        return new(
            100 * (casualty.State[Slot("LostVolume")] - lost) / volume,
            lowest,
            casualty.IsArrested ? (casualty.Time - opened) / 60 : null
        );
    }

    public static StudyTable Table() =>
        new(
            "rebleed",
            StudyTexts.RebleedTitle,
            [StudyTexts.RebleedWound, .. Minutes.Select(m => StudyTexts.RebleedAfter(Whole(m)))],
            [
                .. Wounds.Select(w =>
                    ImmutableArray.CreateRange(
                        Minutes
                            .Select(m => Find(w.Bleed, w.Open, m))
                            .Select(r =>
                                r.DiesAfter is { } dead
                                    ? StudyTexts.RebleedDead(dead.ToString("0.0", CultureInfo.InvariantCulture))
                                    : StudyTexts.RebleedCell(Whole(r.ExtraPercent), Whole(r.LowestPressure))
                            )
                            .Prepend(w.Open < 1 ? StudyTexts.RebleedPacked(Whole(w.Bleed)) : StudyTexts.RebleedNone(Whole(w.Bleed)))
                    )
                ),
            ]
        );

    private static string Whole(double value) => Math.Round(value).ToString(CultureInfo.InvariantCulture);

    private static int Slot(string name)
    {
        for (var i = 0; i < Slots.Body.Length; i++)
            if (Slots.Body[i].Name == name)
                return i;
        throw new ArgumentException($"No number of the state is called {name}.", nameof(name));
    }
}
