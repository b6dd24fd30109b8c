using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Farhold.Hub.Tests.Harness;

/// <summary>A film of codes for a camera that is none: what another phone showed, drawn pixel by pixel from its page.</summary>
/// <remarks>YUV4MPEG2, one plane of grey and two of no colour; Chromium plays it round and round.</remarks>
internal static partial class CodeFilm
{
    private const int Width = 1280;
    private const int Height = 720;

    /// <param name="pictures">Side in modules, and the path of the dark ones.</param>
    public static void Write(string file, IEnumerable<(int Side, string Path)> pictures, int perSecond)
    {
        using var film = File.Create(file);
        film.Write(
            Encoding.ASCII.GetBytes(
                string.Create(CultureInfo.InvariantCulture, $"YUV4MPEG2 W{Width} H{Height} F{perSecond}:1 Ip A1:1 C420jpeg\n")
            )
        );
        var colour = new byte[Width * Height / 2];
        Array.Fill(colour, (byte)128);
        foreach (var (side, path) in pictures)
        {
            film.Write("FRAME\n"u8);
            film.Write(Grey(side, path));
            film.Write(colour);
        }
    }

    private static byte[] Grey(int side, string path)
    {
        var grey = new byte[Width * Height];
        Array.Fill(grey, (byte)225);
        var module = Height / side;
        var (left, top) = ((Width - (side * module)) / 2, (Height - (side * module)) / 2);
        foreach (Match run in Run().Matches(path))
        {
            var (column, row, length) = (Number(run, 1), Number(run, 2), Number(run, 3));
            for (var y = top + (row * module); y < top + ((row + 1) * module); y++)
                grey.AsSpan((y * Width) + left + (column * module), length * module).Fill(30);
        }

        return grey;
    }

    private static int Number(Match run, int group) => int.Parse(run.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("M([0-9]+) ([0-9]+)h([0-9]+)v1h-[0-9]+z")]
    private static partial Regex Run();
}
