using System.Xml.Linq;

namespace Farhold.Rehearsal.Tests;

/// <summary>Three pairs of eyes, what was not known when, and a dot for each casualty alike.</summary>
public class EyesPictureTests
{
    private static readonly Debrief Debriefed = Of("bled-at-slackening");

    /// <summary>At every minute the picture says what the eyes said.</summary>
    [Fact]
    public void Each_pair_of_eyes_has_its_spells_from_start_to_end()
    {
        var picture = SightsPicture.Of(Debriefed);
        foreach (
            var (sight, of) in new (Sight, Func<SightTurn, Verdict?>)[]
            {
                (Debriefed.Known[0], t => t.Known),
                (Debriefed.Hindsight[0], t => t.Hindsight),
                (Debriefed.AllSeeing[0], t => t.AllSeeing),
            }
        )
        {
            var spells = picture.Spells(sight.Limb, of).ToArray();
            Assert.Equal(0, spells[0].From);
            Assert.Equal(picture.Until, spells[^1].To);
            Assert.All(spells.Zip(spells.Skip(1)), p => Assert.True(p.First.To == p.Second.From && p.First.Said != p.Second.Said));
            for (var at = 0.0; at < picture.Until; at += 60)
                Assert.Equal(sight.Of(at)?.Verdict, spells.Last(s => s.From <= at).Said);
        }

        // The record came to know it later than the truth allowed it: known at the second look, decidable from the start.
        Assert.Equal(Verdict.Attempt, picture.Turns[0].AllSeeing);
        Assert.Equal(Verdict.CheckFirst, picture.Turns[0].Known);
    }

    [Fact]
    public void What_was_open_is_a_band_as_long_as_it_was_and_marked_where_the_truth_said_otherwise()
    {
        var picture = IgnorancePicture.Of(Debriefed);
        Assert.NotEmpty(picture.Spells);
        for (var at = 0.0; at < picture.Until; at += 60)
        {
            var (known, seeing) = (Debriefed.Known[0].Of(at), Debriefed.AllSeeing[0].Of(at));
            var open = picture.Spells.Where(s => s.From <= at && at < s.To).ToArray();
            Assert.Equal((known?.CheckFirst ?? []).Order(StringComparer.Ordinal), open.Select(s => s.Input).Order(StringComparer.Ordinal));
            Assert.All(open, s => Assert.Equal(known!.Verdict != seeing?.Verdict, s.Mattered));
        }
    }

    [Theory]
    [InlineData(320)]
    [InlineData(720)]
    public void A_band_lies_from_its_start_to_its_end(double width)
    {
        var svg = XElement.Parse(
            BandDrawing.Draw("x", 1_000, [new("row", [new(250, 500, "other", Hatched: true)], [(250, 300)])], width, "label").Svg
        );
        var clock = BandDrawing.Clock(1_000, width);
        var band = svg.Descendants().Single(e => e.Name.LocalName == "rect");
        Assert.Equal(clock.X(250), (double)band.Attribute("x")!, 1);
        Assert.Equal(clock.X(500) - clock.X(250), (double)band.Attribute("width")!, 1);
        Assert.Equal("url(#x-hatch)", (string)band.Attribute("fill")!);
        Assert.Contains(svg.Descendants(), e => (string?)e.Attribute("class") == "c-line");
    }

    /// <summary>200 dots in ten rows of twenty, counted one by one, in the order held, saved, worse, bled.</summary>
    [Fact]
    public void Dots_are_the_casualties_alike_one_by_one()
    {
        CasualtyCourse Course(bool bled) => new(0, 0, 0, 0, 0, 0, false, bled);
        CasualtyCourse[] same = [.. Enumerable.Range(0, 200).Select(i => Course(i % 2 == 0))];
        CasualtyCourse[] other = [.. Enumerable.Range(0, 200).Select(i => Course(i % 10 == 0 || i == 1))];
        var picture = DotsPicture.Of(same, other);
        Assert.Equal(
            (99, 80, 1, 20),
            (picture.Count(DotKind.Held), picture.Count(DotKind.Saved), picture.Count(DotKind.Worse), picture.Count(DotKind.Bled))
        );
        var drawn = picture.Draw();
        Assert.Equal(["99 of 200", "80 of 200", "1 of 200", "20 of 200"], drawn.Table.Rows.Select(r => r[1]));
        var svg = XElement.Parse(drawn.Svg);
        string[] looks = [.. svg.Descendants().Where(e => e.Name.LocalName == "circle").Select(c => (string)c.Attribute("class")!)];
        Assert.Equal((99 + 80, 80 + 20), (looks.Count(l => l == "c-clear"), looks.Count(l => l == "c-hollow")));
        Assert.Single(svg.Descendants(), e => (string?)e.Attribute("class") == "c-line");
        Assert.Equal(
            10,
            svg.Descendants().Where(e => e.Name.LocalName == "circle").Select(c => (string)c.Attribute("cy")!).Distinct().Count()
        );
        Assert.All(drawn.Table.Rows, r => Assert.Contains(r[1], (string)svg.Attribute("aria-label")!, StringComparison.Ordinal));
    }

    private static Debrief Of(string name)
    {
        var session = Shipped.Run(name);
        return Debrief.Of(new(session, null), [.. session.Record], ShippedRules.Book);
    }
}
