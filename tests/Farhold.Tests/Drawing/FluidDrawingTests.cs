using System.Xml.Linq;
using CsCheck;

namespace Farhold.Tests.Drawing;

public class FluidDrawingTests
{
    private static readonly FluidChartWords Words = new("In 750 mL", "Urine 180 mL", ml => $"{Say.Number(ml)} mL", w => Wire.Word(w));

    private static readonly CareRecord Record = Story.Written(
        ("10:00", new Payload.FluidGiven(Fluid.OralWater, 300, "mouth")),
        ("11:00", new Payload.FluidGiven(Fluid.OralRehydration, 200, "mouth")),
        ("11:30", new Payload.FluidGiven(Fluid.Crystalloid, 250, "vein")),
        ("11:40", new Payload.UrineMeasured(180))
    );

    [Fact]
    public void What_went_in_is_told_apart_by_its_way()
    {
        var picture = FluidPicture.At(Record, Some.At("12:00"))!;
        Assert.Equal(
            [(FluidWay.Drink, Between.Exactly(500)), (FluidWay.Drip, Between.Exactly(250))],
            picture.Parts.Select(p => (p.Way, p.Millilitres))
        );
        Assert.Equal((Between.Exactly(750), Between.Exactly(180)), (picture.In, picture.Out!.Value));
        Assert.Equal(Some.At("10:00"), picture.Since);
    }

    /// <summary>750 mL on 320 px, the ends at 4 and 324: steps of 250 mL make three; 500 mL is 213.3 px, 180 mL 76.8 px.</summary>
    [Fact]
    public void Bars_stand_end_to_end_on_a_round_scale()
    {
        var layout = FluidLayout.For(FluidPicture.At(Record, Some.At("12:00"))!, 328);
        Assert.Equal([0, 250, 500, 750], layout.Ticks);
        Assert.Equal(217.333, layout.Parts[0].X.To, 1e-3);
        Assert.Equal((layout.Parts[0].X.To, 324), (layout.Parts[1].X.From, layout.Parts[1].X.To));
        Assert.Equal(80.8, layout.Out.To, 1e-6);
        Assert.Equal(layout.InPerhaps.From, layout.InPerhaps.To);
    }

    [Fact]
    public void What_may_not_have_happened_yet_is_perhaps()
    {
        var record = Story.Written(
            ("10:00", new Payload.FluidGiven(Fluid.OralWater, 100, "mouth")),
            ("11:00-13:00", new Payload.FluidGiven(Fluid.OralWater, 100, "mouth"))
        );
        var picture = FluidPicture.At(record, Some.At("12:00"))!;
        Assert.Equal(new Between(100, 200), picture.In);
        Assert.Null(picture.Out);
        var layout = FluidLayout.For(picture, 328);
        Assert.Equal(layout.X(100), layout.InPerhaps.From);
        Assert.Equal(layout.X(200), layout.InPerhaps.To);
    }

    [Fact]
    public void Nothing_on_record_is_no_picture() => Assert.Null(FluidPicture.At(Record, Some.At("09:00")));

    [Fact]
    public void Bars_stay_in_the_picture_and_the_words_of_the_scale_apart() =>
        Gen.Select(
                Gen.Select(Gen.Int[0, 900], Gen.Int[0, 90], Gens.Any<Fluid>(), Gens.Within(FieldRange.Millilitres)).Array[0, 12],
                Gen.Int[0, 5000],
                Gen.OneOf(328.0, 656.0)
            )
            .Sample(
                (given, urine, width) =>
                {
                    var said = given
                        .Select(g =>
                            (
                                new Happened(
                                    Some.At("00:00") + Duration.FromMinutes(g.Item1),
                                    Some.At("00:00") + Duration.FromMinutes(g.Item1 + g.Item2)
                                ),
                                (Payload)new Payload.FluidGiven(g.Item3, g.Item4, "mouth")
                            )
                        )
                        .Append((Happened.At(Some.At("00:00")), new Payload.UrineMeasured(urine)))
                        .Select((s, i) => EntryWriting.Write(new("a", i + 1), s.Item1, Some.At("20:00"), "Ane", s.Item2));
                    var picture = FluidPicture.At(new(said, []), Some.At("09:00"))!;
                    var layout = FluidLayout.For(picture, width);
                    Assert.All(
                        layout.Parts.Select(p => p.X).Concat([layout.InPerhaps, layout.Out, layout.OutPerhaps]),
                        x => Assert.True(x.From >= FluidLayout.Left && x.From <= x.To && x.To <= width - FluidLayout.Left + 1e-6, $"{x}")
                    );
                    Assert.Equal(layout.X(picture.In.High), Math.Max(layout.InPerhaps.To, layout.X(0)), 1e-6);
                    var words = FluidDrawing.Scale(layout, Words).ToArray();
                    Assert.All(words, w => Assert.True(w.Left >= 0 && w.Right <= width + 1e-6 && w.Size >= 14));
                    Assert.All(words.Zip(words.Skip(1)), w => Assert.True(w.First.Right <= w.Second.Left, $"{w}"));
                    _ = XDocument.Parse(FluidDrawing.Draw(picture, Words, width, "Fluids"));
                },
                iter: Gens.Cases(300),
                threads: 1
            );
}
