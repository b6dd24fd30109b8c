namespace Farhold.WayOut.Ground;

/// <summary>The letters of a grid reference: bands of latitude, columns and rows of 100 km squares.</summary>
/// <remarks>Source: NGA.STND.0037 2.0.0, 2014 (citation from memory). I and O are never used.</remarks>
internal static class MgrsLetters
{
    public const string Bands = "CDEFGHJKLMNPQRSTUVWX";

    /// <summary>Rows repeat every 2,000 km; even zones begin five rows further on.</summary>
    public const string Rows = "ABCDEFGHJKLMNPQRSTUV";

    /// <summary>West and east of the south pole, west and east of the north pole.</summary>
    public const string PolarBands = "ABYZ";

    private static readonly string[] Columns = ["STUVWXYZ", "ABCDEFGH", "JKLMNPQR"];
    private static readonly string[] PolarColumns = ["JKLPQRSTUXYZ", "ABCFGHJKLPQR", "RSTUXYZ", "ABCFGHJ"];
    private static readonly string[] PolarRows = ["ABCDEFGHJKLMNPQRSTUVWXYZ", "ABCDEFGHJKLMNP"];

    public static char BandOf(double latitude) => Bands[Math.Clamp(((int)Math.Floor(latitude) + 80) / 8, 0, 19)];

    /// <summary>The first letter stands for eastings from 100 km.</summary>
    public static string ColumnsOf(int zone) => Columns[zone % 3];

    public static int RowShift(int zone) => zone % 2 == 0 ? 5 : 0;

    public static string PolarColumnsOf(int polarBand) => PolarColumns[polarBand];

    public static string PolarRowsOf(bool north) => PolarRows[north ? 1 : 0];

    /// <summary>Number of the first polar row and, west of the pole, of the first column, in squares of 100 km.</summary>
    public static int PolarOrigin(bool north) => north ? 13 : 8;

    /// <summary>The row, in squares of 100 km north of the equator, that a row letter means within a band.</summary>
    /// <param name="band">Index in <see cref="Bands"/>, 0 to 19.</param>
    /// <param name="column">Easting in squares, 1 to 8.</param>
    /// <param name="row">0 to 19, the shift of even zones taken off.</param>
    /// <returns>−90 to 94; <c>null</c> if no part of that square lies in the band.</returns>
    /// <remarks>Source: the bounds of GeographicLib's MGRS class, Karney; see NOTICE.md.</remarks>
    public static int? RowIn(int band, int column, int row)
    {
        var fromEquator = band - 10;
        var north = fromEquator >= 0;
        var centre = 100 * ((8 * fromEquator) + 4) / 90.0;
        var least = fromEquator > -10 ? (int)Math.Floor(centre - 4.3 - (north ? 0.1 : 0)) : -90;
        var most = fromEquator < 9 ? (int)Math.Floor(centre + 4.4 - (north ? 0.1 : 0)) : 94;
        var start = ((least + most) / 2) - 10;
        var candidate = ((row - start + 100) % 20) + start;
        return candidate >= least && candidate <= most || Straddles(fromEquator, column, candidate) ? candidate : null;
    }

    // The parallels of 64 and 72 degrees cut these rows: what side a square is on depends on its column.
    private static bool Straddles(int fromEquator, int column, int row)
    {
        var band = fromEquator >= 0 ? fromEquator : -fromEquator - 1;
        var mirrored = row >= 0 ? row : -row - 1;
        var inward = column <= 4 ? column - 1 : 8 - column;
        return (mirrored, band) switch
        {
            (70, 8) => inward >= 2,
            (71, 7) => inward <= 2,
            (79, 9) => inward >= 1,
            (80, 8) => inward <= 1,
            _ => false,
        };
    }
}
