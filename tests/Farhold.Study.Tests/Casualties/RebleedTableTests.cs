namespace Farhold.Study.Tests.Casualties;

public class RebleedTableTests
{
    /// <summary>
    /// The reference's table (study, section 1.3), worked out there with another program: more blood lost in %, lowest mean pressure where
    /// it is printed, minutes to arrest. Rounded as printed.
    /// </summary>
    public static TheoryData<double, double, double, double, double?, double?> Printed =>
        new()
        {
            { 700, 1, 1, 10, null, null },
            { 700, 1, 2, 16, null, null },
            { 700, 1, 5, 0, null, 6.4 },
            { 700, 1, 15, 0, null, 6.4 },
            { 700, 0.25, 1, 3, null, null },
            { 700, 0.25, 2, 6, null, null },
            { 700, 0.25, 5, 12, 59, null },
            { 700, 0.25, 10, 17, 45, null },
            { 700, 0.25, 15, 19, null, null },
            { 700, 0.25, 30, 20, null, null },
            { 300, 1, 1, 6, null, null },
            { 300, 1, 2, 11, null, null },
            { 300, 1, 5, 23, 50, null },
            { 300, 1, 10, 32, 27, null },
            { 300, 1, 15, 35, 22, null },
            { 300, 1, 30, 0, null, 19.5 },
            { 300, 0.25, 1, 1, null, null },
            { 300, 0.25, 2, 3, null, null },
            { 300, 0.25, 5, 6, null, null },
            { 300, 0.25, 10, 8, null, null },
            { 300, 0.25, 30, 10, null, null },
            { 150, 1, 1, 3, null, null },
            { 150, 1, 2, 6, null, null },
            { 150, 1, 5, 13, null, null },
            { 150, 1, 10, 22, null, null },
            { 150, 1, 15, 27, null, null },
            { 150, 1, 30, 29, null, null },
        };

    [Theory, MemberData(nameof(Printed))]
    public void The_table_is_the_printed_one(double bleed, double open, double minutes, double extra, double? pressure, double? dies)
    {
        var found = RebleedTable.Find(bleed, open, minutes);
        if (dies is { } after)
        {
            Assert.Equal(after, Assert.NotNull(found.DiesAfter), 0.2);
            return;
        }

        Assert.Null(found.DiesAfter);
        Assert.Equal(extra, found.ExtraPercent, 1.1);
        if (pressure is { } lowest)
            Assert.Equal(lowest, found.LowestPressure, 1.2);
    }
}
