using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using CsCheck;

namespace Farhold.Tests.Drawing;

public class LimbLanesTests
{
    private static LimbPicture At(Instant now) => LimbPicture.Of(Limb.LeftLeg, Demo.Record().Readings[0], ShippedProtocol.Protocol, now)!;

    /// <summary>Every moment of the demo's three days, every width of a phone or a tablet.</summary>
    [Fact]
    public void No_word_leaves_the_picture_or_touches_another_and_nothing_is_drawn_outside() =>
        Gen.Select(Gen.Int[0, 4000], Gen.Int[280, 900], Gen.Int[1, 4])
            .Sample(
                (minutes, width, limbs) =>
                {
                    var picture = At(Some.At("02:21") + Duration.FromMinutes(minutes));
                    var root = XDocument.Parse(LimbLanes.Draw([.. Enumerable.Repeat(picture, limbs)], width, "l")).Root!;
                    var texts = root.Elements("text").Select(Box).ToArray();
                    Assert.NotEmpty(texts);
                    Assert.All(texts, t => Assert.True(t.Left >= -0.5 && t.Right <= width + 0.5, $"{t} at {width}"));
                    for (var i = 0; i < texts.Length; i++)
                    for (var j = 0; j < i; j++)
                        Assert.False(
                            Math.Abs(texts[i].Y - texts[j].Y) < 12 && texts[i].Left < texts[j].Right && texts[j].Left < texts[i].Right,
                            $"{texts[i]} and {texts[j]} at {width}"
                        );
                    Assert.All(root.Elements("rect"), r => Assert.InRange(Number(r, "x") + Number(r, "width"), 0, width + 2.5));
                },
                iter: 300,
                threads: 1
            );

    /// <summary>By hand: the demo's leg, first tightened between 01:50 and 02:20, at 03:00: striped first, then solid, up to now.</summary>
    [Fact]
    public void What_may_be_tight_is_striped_and_what_surely_is_is_solid_up_to_now()
    {
        var picture = At(Some.At("03:00"));
        var root = XDocument.Parse(LimbLanes.Draw([picture], 328, "l")).Root!;
        var striped = root.Elements("rect").Single(r => (string)r.Attribute("fill")! == "url(#l-u)");
        var solid = root.Elements("rect").Where(r => (string)r.Attribute("fill")! == "var(--act)").ToArray();
        var now = double.Parse(
            (
                (string)
                    root.Elements("path").Last(p => ((string)p.Attribute("d")!).Contains(" 0V", StringComparison.Ordinal)).Attribute("d")!
            ).Split(' ')[0][1..],
            CultureInfo.InvariantCulture
        );
        Assert.Equal(Number(striped, "x") + Number(striped, "width"), Number(solid[0], "x"), 0.11);
        Assert.Equal(now, Number(solid[^1], "x") + Number(solid[^1], "width"), 0.11);
        Assert.Equal(["2 h 03:50", "6 h 07:50"], root.Elements("text").Take(2).Select(t => t.Value));
    }

    [Fact]
    public void Two_limbs_share_one_axis_and_each_lane_is_named()
    {
        var leg = At(Some.At("03:00"));
        var arm = leg with { Clock = leg.Clock with { Limb = Limb.RightArm } };
        var root = XDocument.Parse(LimbLanes.Draw([leg, arm], 328, "l")).Root!;
        var names = root.Elements("text").Select(t => t.Value).ToArray();
        Assert.Contains("left leg", names);
        Assert.Contains("right arm", names);
        Assert.Contains(LimbLine.Describe(leg), (string)root.Attribute("aria-label")!, StringComparison.Ordinal);
    }

    private static double Number(XElement e, string name) => double.Parse((string)e.Attribute(name)!, CultureInfo.InvariantCulture);

    /// <summary>As wide as the widest face that the tests' browser has would set it, which no phone's does.</summary>
    private static (double Left, double Right, double Y, string Text) Box(XElement text)
    {
        var width = TextWidth.Of(text.Value, 13.5);
        var x = Number(text, "x");
        var left = (string?)text.Attribute("text-anchor") == "middle" ? x - (width / 2) : x;
        return (left, left + width, Number(text, "y"), text.Value);
    }
}
