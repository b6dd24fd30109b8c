using SkiaSharp;
using Svg.Skia;
using Svg.Skia.TypefaceProviders;

namespace Farhold.Cli;

/// <summary>An SVG of ours as PNG. The two faces it needs are built in, so that it works on a machine without fonts.</summary>
internal static class Png
{
    /// <summary>Pixels of the picture for each pixel of the drawing: sharp on screens and in print.</summary>
    private const float Scale = 2;

    public static byte[] Of(string svg)
    {
        using var drawing = new SKSvg();
        drawing.Settings.TypefaceProviders?.Insert(0, new BuiltIn());
        drawing.FromSvg(svg);
        using var stream = new MemoryStream();
        if (!drawing.Save(stream, SKColors.Transparent, SKEncodedImageFormat.Png, 100, Scale, Scale))
            throw new InvalidOperationException("the picture can't be turned into PNG");
        return stream.ToArray();
    }

    private sealed class BuiltIn : ITypefaceProvider
    {
        private static readonly SKTypeface Regular = Load("DejaVuSans.ttf");
        private static readonly SKTypeface Bold = Load("DejaVuSans-Bold.ttf");

        public SKTypeface FromFamilyName(
            string fontFamily,
            SKFontStyleWeight fontWeight,
            SKFontStyleWidth fontWidth,
            SKFontStyleSlant fontStyle
        ) => fontWeight >= SKFontStyleWeight.SemiBold ? Bold : Regular;

        private static SKTypeface Load(string name)
        {
            using var stream =
                typeof(Png).Assembly.GetManifestResourceStream(name)
                ?? throw new System.Diagnostics.UnreachableException("the font is built into the assembly");
            return SKTypeface.FromStream(stream);
        }
    }
}
