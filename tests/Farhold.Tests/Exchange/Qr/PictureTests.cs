using Farhold.Exchange.Qr;
using ZXing;

namespace Farhold.Tests.Exchange.Qr;

/// <summary>Frames as pictures, seen by a reader that shares no code with what drew them.</summary>
public class PictureTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(3, 1)]
    [InlineData(-11, 2)]
    [InlineData(47, 2)]
    [InlineData(180, 1)]
    public void A_record_crosses_by_pictures_turned_blurred_and_a_third_lost(double degrees, int blur)
    {
        var sender = new FrameSender(Pack.Of(Demo.Record()));
        var (collector, random, seen, missed, n) = (new FrameCollector(), new Random(7), 0, 0, 0);
        for (var result = FrameResult.Foreign; result != FrameResult.Complete && n < 10 * sender.Blocks; n++)
        {
            if (random.Next(100) < 30)
                continue;
            seen++;
            var text = Read(new Photograph(QrPicture.Of(sender[n].Text()), 5, degrees + random.NextDouble(), blur, random));
            if (text is null)
                missed++;
            else
                result = collector.Add(text);
        }

        output.WriteLine($"{degrees}°, blur {blur}: {sender.Blocks} frames at least, {n} shown, {seen} seen, {missed} of them unread");
        using var expected = new MemoryStream();
        RecordReader.Write(expected, Demo.Record().Entries, []);
        Assert.Equal(expected.ToArray(), collector.Record);
    }

    [Fact]
    public void The_path_draws_the_dark_modules_and_no_other()
    {
        var picture = QrPicture.Of(new FrameSender(Pack.Of(Demo.Record()))[0].Text());
        var drawn = new bool[picture.Side, picture.Side];
        foreach (var run in picture.Path().Split('M', StringSplitOptions.RemoveEmptyEntries))
        {
            var numbers = run.Split([' ', 'h', 'v', '-', 'z'], StringSplitOptions.RemoveEmptyEntries).Select(int.Parse).ToArray();
            for (var i = 0; i < numbers[2]; i++)
                drawn[numbers[1], numbers[0] + i] = true;
        }

        for (var row = 0; row < picture.Side; row++)
        for (var column = 0; column < picture.Side; column++)
            Assert.Equal(picture[row, column], drawn[row, column]);
    }

    [Fact]
    public void A_usual_frame_makes_a_code_of_57_modules() =>
        Assert.Equal(57 + 8, QrPicture.Of(new FrameSender(Pack.Of(Demo.Record()))[0].Text()).Side);

    private static string? Read(Photograph photograph)
    {
        var reader = new BarcodeReaderGeneric { Options = { PossibleFormats = [BarcodeFormat.QR_CODE], TryHarder = true } };
        return reader
            .Decode(new RGBLuminanceSource(photograph.Grey, photograph.Side, photograph.Side, RGBLuminanceSource.BitmapFormat.Gray8))
            ?.Text;
    }
}
