using NodaTime;

namespace Farhold.Drawing;

/// <summary>What is written on a chart, in the language and the units of whoever looks at it. A sign goes by its field.</summary>
public interface IChartWords
{
    string Now { get; }

    string Mind { get; }

    string Score { get; }

    string Name(ChartedSign sign);

    string Unit(ChartedSign sign);

    string Value(ChartedSign sign, double value);

    /// <summary>Without a sign: <c>22 %</c>, <c>1.2</c>.</summary>
    string Change(ChartedSign sign, SignChange change);

    string Limb(LimbPicture limb);

    string MentalState(Mental mental);
}
