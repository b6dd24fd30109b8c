using System.Globalization;
using System.Xml.Linq;
using CsCheck;

namespace Farhold.Tests.Drawing;

public class LimbLineTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static LimbPicture At(Instant now) => LimbPicture.Of(Limb.LeftLeg, Demo.Record().Readings[0], ShippedProtocol.Protocol, now)!;

    private static readonly Gen<LimbPicture> Pictures = Gen.Select(
        Gen.Int[0, 1440],
        Gen.Int[0, 3000],
        Gen.Int[0, 900],
        Gen.Int[0, 900],
        Gen.Bool,
        (now, early, middle, late, light) =>
        {
            var at = Some.At("02:21") + Duration.FromMinutes(now);
            var help = at + Duration.FromMinutes(early);
            return At(at) with
            {
                Arrival = new(help, help + Duration.FromMinutes(middle), help + Duration.FromMinutes(middle + late), "way out")
                {
                    Names = ("10 %", "50 %", "90 %"),
                    Density = [(help, 0), (help + Duration.FromMinutes(middle), 2), (help + Duration.FromMinutes(middle + late), 0)],
                },
                Light = light ? [new(Some.At("00:00"), Some.At("04:30"), Sky.Night), new(Some.At("04:30"), Some.At("21:00"), Sky.Day)] : [],
            };
        }
    );

    [Fact]
    public void No_label_touches_another_or_leaves_the_picture() =>
        Gen.Select(Pictures, Gen.Int[320, 1200])
            .Sample(
                (picture, width) =>
                {
                    var svg = XDocument.Parse(LimbLine.Draw(picture, width)).Root!;
                    var height = double.Parse(svg.Attribute("height")!.Value, CultureInfo.InvariantCulture);
                    var boxes = svg.Descendants(Svg + "text").Select(Box).ToArray();
                    Assert.All(
                        boxes,
                        b => Assert.True(b.Left >= 0 && b.Right <= width + 0.5 && b.Top >= 0 && b.Bottom <= height, $"{b} at {width}")
                    );
                    for (var i = 0; i < boxes.Length; i++)
                    for (var j = 0; j < i; j++)
                        Assert.False(
                            boxes[i].Left < boxes[j].Right
                                && boxes[j].Left < boxes[i].Right
                                && boxes[i].Top < boxes[j].Bottom
                                && boxes[j].Top < boxes[i].Bottom,
                            $"{boxes[i]} and {boxes[j]} at {width}"
                        );
                },
                iter: 200,
                threads: 1
            );

    [Fact]
    public void The_picture_names_and_describes_itself_for_screen_readers()
    {
        var svg = XDocument.Parse(LimbLine.Draw(At(Some.At("05:00")), 360, idPrefix: "here")).Root!;
        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Equal("here-title here-desc", svg.Attribute("aria-labelledby")!.Value);
        Assert.Equal(LimbLine.Describe(At(Some.At("05:00"))), svg.Element(Svg + "desc")!.Value);
        Assert.Equal("here-title", svg.Element(Svg + "title")!.Attribute("id")!.Value);
    }

    [Fact]
    public void The_description_tells_stretches_attempts_limits_and_help()
    {
        var text = LimbLine.Describe(At(Some.At("05:00")));
        Assert.Contains("Perhaps no flow from 2031-05-04 01:50 to 2031-05-04 02:20", text);
        Assert.Contains("No flow from 2031-05-04 03:43 to 2031-05-04 04:36", text);
        Assert.Contains("Attempt 1 2031-05-04 03:24: bled", text);
        Assert.Contains("Attempt 2 2031-05-04 04:13: held", text);
        Assert.Contains("Limit of 6 h 00 min at 2031-05-04 07:50", text);
        Assert.Contains("Help, as told: earliest 2031-05-04 14:30, likely 2031-05-04 17:00, latest 2031-05-04 21:00", text);
    }

    [Theory]
    [InlineData("04:00", "07:50", "help before the limit, even at its latest")]
    [InlineData("04:00", "07:51", "help probably before the limit, not surely")]
    [InlineData("07:51", "07:52", "help only after the limit")]
    public void It_answers_whether_help_comes_before_the_limit(string early, string late, string answer)
    {
        var picture = At(Some.At("03:00")) with { Arrival = new(Some.At(early), Some.At(early), Some.At(late), "told") };
        Assert.Contains(answer, LimbLine.Describe(picture));
    }

    [Fact]
    public void Sure_and_possible_stretches_differ_by_pattern()
    {
        var svg = XDocument.Parse(LimbLine.Draw(At(Some.At("03:00")), 800)).Root!;
        Assert.Contains(svg.Elements(Svg + "rect"), r => r.Attribute("fill")!.Value == "url(#limb-line-left-leg-perhaps)");
        Assert.Contains(svg.Elements(Svg + "rect"), r => r.Attribute("fill")!.Value == LimbLineLook.Dark.Stopped);
    }

    /// <summary>Screen and paper draw the same shapes: what is laid out is written, each once, in its order.</summary>
    [Fact]
    public void The_picture_holds_the_shapes_that_were_laid_out_and_no_others() =>
        Gen.Select(Pictures, Gen.Int[320, 1200])
            .Sample(
                (picture, width) =>
                {
                    var laid = LimbLine.Lay(picture, width);
                    var svg = XDocument.Parse(LimbLine.Draw(picture, width)).Root!;
                    string[] ground = ["rect"];
                    Assert.Equal(
                        ground.Concat(laid.Shapes.Select(Element)),
                        svg.Elements().Select(e => e.Name.LocalName).Where(n => n is not ("title" or "desc" or "defs"))
                    );
                    Assert.Equal(laid.Shapes.OfType<Shape.Words>().Select(w => w.Text), svg.Elements(Svg + "text").Select(t => t.Value));
                    Assert.Equal(
                        laid.Shapes.OfType<Shape.Words>().Select(w => Math.Round(w.X, 1)),
                        svg.Elements(Svg + "text").Select(t => double.Parse(t.Attribute("x")!.Value, CultureInfo.InvariantCulture))
                    );
                },
                iter: 100,
                threads: 1
            );

    private static string Element(Shape shape) =>
        shape switch
        {
            Shape.Box => "rect",
            Shape.Line => "line",
            Shape.Area => "path",
            Shape.Disc => "circle",
            Shape.Words => "text",
            _ => shape.ToString()!,
        };

    [Fact]
    public void Text_from_outside_can_not_leave_its_place()
    {
        var picture = At(Some.At("03:00")) with
        {
            Arrival = new(Some.At("04:00"), Some.At("05:00"), Some.At("06:00"), "<script>\u0001&\"'"),
        };
        var svg = LimbLine.Draw(picture, 800);
        Assert.DoesNotContain("<script", svg);
        Assert.Contains("<script>&\"'", XDocument.Parse(svg).Root!.Element(Svg + "desc")!.Value);
    }

    [Fact]
    public void Arrival_out_of_order_is_a_mistake_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => new Arrival(Some.At("05:00"), Some.At("04:00"), Some.At("06:00"), ""));

    private static (double Left, double Right, double Top, double Bottom, string Text) Box(XElement text)
    {
        double Of(string name) => double.Parse(text.Attribute(name)!.Value, CultureInfo.InvariantCulture);
        var size = Of("font-size");
        var width = TextWidth.Of(text.Value, size);
        var left =
            Of("x")
            - (
                (string?)text.Attribute("text-anchor") switch
                {
                    "middle" => width / 2,
                    "end" => width,
                    _ => 0,
                }
            );
        return (left, left + width, Of("y") - (size * 0.75), Of("y") + (size * 0.2), text.Value);
    }
}
