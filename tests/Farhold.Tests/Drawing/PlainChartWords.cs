using System.Globalization;

namespace Farhold.Tests.Drawing;

/// <summary>English words for charts, made longer where a test asks how other languages fare.</summary>
public sealed class PlainChartWords(double longer = 1) : IChartWords
{
    public string Now => Longer("now");

    public string Mind => Longer("Mental state");

    public string Score => Longer("NEWS2, 0 to 20");

    public string Name(ChartedSign sign) =>
        Longer(
            sign.Field switch
            {
                "heartRate" => "Pulse",
                "breathRate" => "Breathing",
                "systolic" => "Upper pressure",
                "spo2" => "Oxygen saturation",
                "temperatureC" => "Temperature",
                _ => "Pain, 0 to 10",
            }
        );

    public string Unit(ChartedSign sign) => sign.Range.Unit;

    public string Value(ChartedSign sign, double value) => Math.Round(value, 1).ToString("0.#", CultureInfo.InvariantCulture);

    public string Change(ChartedSign sign, SignChange change) =>
        Math.Round(Math.Abs(change.By), change.InPercent ? 0 : 1).ToString("0.#", CultureInfo.InvariantCulture)
        + (change.InPercent ? " %" : "");

    public string Limb(LimbPicture limb) => Longer($"{Say.Limb(limb.Limb)}: loose since 13:46");

    public string MentalState(Mental mental) => Wire.Word(mental);

    private string Longer(string text) => text + new string('e', (int)(text.Length * (longer - 1)));
}
