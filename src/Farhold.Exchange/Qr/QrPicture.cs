using System.Text;
using QRCoder;

namespace Farhold.Exchange.Qr;

/// <summary>A QR code as a picture, dark on light, with the quiet zone of four modules that readers need.</summary>
/// <remarks>Source: ISO/IEC 18004 for the quiet zone (from memory); the code itself is drawn by QRCoder.</remarks>
public sealed class QrPicture
{
    private const int Quiet = 4;
    private readonly bool[,] dark;

    private QrPicture(bool[,] dark) => this.dark = dark;

    /// <summary>Modules along one side, quiet zone included.</summary>
    public int Side => dark.GetLength(0);

    public bool this[int row, int column] => dark[row, column];

    /// <param name="text">Base45 makes the densest code.</param>
    /// <param name="robust">Bears more damage, at the price of a finer picture.</param>
    public static QrPicture Of(string text, bool robust = false)
    {
        using var code = QRCodeGenerator.GenerateQrCode(text, robust ? QRCodeGenerator.ECCLevel.M : QRCodeGenerator.ECCLevel.L);
        var modules = code.ModuleMatrix; // with a quiet zone of four
        var dark = new bool[modules.Count, modules.Count];
        for (var row = 0; row < modules.Count; row++)
        for (var column = 0; column < modules.Count; column++)
            dark[row, column] = modules[row][column];
        return new(dark);
    }

    /// <summary>Path data of an SVG whose view box is <see cref="Side"/> wide and high: one rectangle a run of dark modules.</summary>
    public string Path()
    {
        var path = new StringBuilder();
        for (var row = Quiet; row < Side - Quiet; row++)
        {
            for (var column = Quiet; column < Side - Quiet; column++)
            {
                var from = column;
                while (column < Side - Quiet && dark[row, column])
                    column++;
                if (column > from)
                    path.Append(System.Globalization.CultureInfo.InvariantCulture, $"M{from} {row}h{column - from}v1h-{column - from}z");
            }
        }

        return path.ToString();
    }
}
