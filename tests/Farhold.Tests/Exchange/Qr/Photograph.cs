using Farhold.Exchange.Qr;

namespace Farhold.Tests.Exchange.Qr;

/// <summary>A code as a camera sees it: enlarged, turned, out of focus, noisy, not quite black on not quite white.</summary>
internal sealed class Photograph
{
    private const int Dark = 40;
    private const int Light = 215;

    /// <param name="blur">Radius of a box, pixels, run over twice.</param>
    public Photograph(QrPicture code, int pixelsPerModule, double degrees, int blur, Random random)
    {
        Side = (int)(code.Side * pixelsPerModule * 1.5);
        var grey = new double[Side, Side];
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        for (var y = 0; y < Side; y++)
        {
            for (var x = 0; x < Side; x++)
            {
                var (dx, dy) = (x - (Side / 2.0), y - (Side / 2.0));
                var column = (int)Math.Floor((((dx * cos) + (dy * sin)) / pixelsPerModule) + (code.Side / 2.0));
                var row = (int)Math.Floor((((dy * cos) - (dx * sin)) / pixelsPerModule) + (code.Side / 2.0));
                var inside = row >= 0 && column >= 0 && row < code.Side && column < code.Side;
                grey[y, x] = inside && code[row, column] ? Dark : Light;
            }
        }

        for (var pass = 0; pass < 2 && blur > 0; pass++)
            grey = Blurred(grey, blur);
        Grey = new byte[Side * Side];
        for (var i = 0; i < Grey.Length; i++)
            Grey[i] = (byte)Math.Clamp(grey[i / Side, i % Side] + random.Next(-12, 13), 0, 255);
    }

    public int Side { get; }

    /// <summary>Row by row, a byte a pixel.</summary>
    public byte[] Grey { get; }

    private double[,] Blurred(double[,] grey, int radius)
    {
        var once = new double[Side, Side];
        var twice = new double[Side, Side];
        for (var y = 0; y < Side; y++)
        for (var x = 0; x < Side; x++)
            once[y, x] = Mean(radius, x, i => grey[y, i]);
        for (var y = 0; y < Side; y++)
        for (var x = 0; x < Side; x++)
            twice[y, x] = Mean(radius, y, i => once[i, x]);
        return twice;
    }

    private double Mean(int radius, int at, Func<int, double> of)
    {
        var (sum, count) = (0.0, 0);
        for (var i = Math.Max(0, at - radius); i <= Math.Min(Side - 1, at + radius); i++, count++)
            sum += of(i);
        return sum / count;
    }
}
