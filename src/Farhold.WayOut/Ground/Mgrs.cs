using System.Globalization;

namespace Farhold.WayOut.Ground;

/// <summary>Grid references of the military grid reference system.</summary>
/// <remarks>
/// Source: NGA.STND.0037 2.0.0, 2014 (citation from memory). Digits are cut off, never rounded: a reference names the square it lies in.
/// </remarks>
public static class Mgrs
{
    private const long Square = 100_000;

    /// <param name="digits">Digits for each axis, 1 to 5: squares of 10 km down to 1 m.</param>
    /// <returns>Without spaces, as 32VKN9735300648.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="digits"/> is not 1 to 5.</exception>
    public static string Format(GeoPoint place, int digits = 5)
    {
        if (digits is < 1 or > 5)
            throw new ArgumentOutOfRangeException(nameof(digits), digits, "A grid reference has 1 to 5 digits for each axis.");
        var grid = GridPosition.Of(place);
        var (east, north) = (WholeMetres(grid.Easting), WholeMetres(grid.Northing));
        if (!grid.North && grid.Zone != 0)
            north = Math.Min(north, 9_999_999); // a hair south of the equator still lies in the last row of the south
        var unit = (long)Math.Pow(10, 5 - digits);
        var (x, y) = (east % Square / unit, north % Square / unit);
        var letters = Letters(grid, place.Latitude, (int)(east / Square), (int)(north / Square));
        return letters + x.ToString("D" + digits, CultureInfo.InvariantCulture) + y.ToString("D" + digits, CultureInfo.InvariantCulture);
    }

    /// <summary>Spaces and lower case are accepted; anything else that is not a reference is refused with its column.</summary>
    public static Read<MgrsSquare> Parse(string text, string source = "grid-reference") => MgrsText.Parse(text, source);

    // Rounding of a micrometre first, so that 99,999.9999999 is not cut down by the arithmetic's last bit.
    private static long WholeMetres(double metres) => (long)Math.Floor(metres * 1e6) / 1_000_000;

    private static string Letters(GridPosition grid, double latitude, int column, int row)
    {
        if (grid.Zone == 0)
        {
            var east = column >= 20;
            var band = (grid.North ? 2 : 0) + (east ? 1 : 0);
            var origin = MgrsLetters.PolarOrigin(grid.North);
            return new string([
                MgrsLetters.PolarBands[band],
                MgrsLetters.PolarColumnsOf(band)[column - (east ? 20 : origin)],
                MgrsLetters.PolarRowsOf(grid.North)[row - origin],
            ]);
        }

        return grid.Zone.ToString("D2", CultureInfo.InvariantCulture)
            + new string([
                MgrsLetters.BandOf(latitude),
                MgrsLetters.ColumnsOf(grid.Zone)[column - 1],
                MgrsLetters.Rows[(row + MgrsLetters.RowShift(grid.Zone)) % 20],
            ]);
    }
}
