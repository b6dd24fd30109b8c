namespace Farhold.App.Tests.Parts;

public class NumberPadTests : ScreenTest
{
    [Fact]
    public void Three_presses_are_a_heart_rate_without_the_phones_keyboard()
    {
        double? taken = null;
        var pad = Render<NumberPad>(p =>
            p.Add(n => n.Label, "Heart rate")
                .Add(n => n.Unit, "/min")
                .Add(n => n.Min, 20)
                .Add(n => n.Max, 250)
                .Add(n => n.ValueChanged, v => taken = v)
        );
        foreach (var key in new[] { "1", "1", "8" })
            Button(pad, key).Click();
        Assert.Equal(118, taken);
        Assert.Equal("118", pad.Find("output").TextContent);
        Assert.Empty(pad.FindAll("input"));
    }

    [Fact]
    public void A_number_out_of_range_is_refused_with_the_range()
    {
        double? taken = 0;
        var pad = Render<NumberPad>(p =>
            p.Add(n => n.Label, "Heart rate")
                .Add(n => n.Unit, "/min")
                .Add(n => n.Min, 20)
                .Add(n => n.Max, 250)
                .Add(n => n.ValueChanged, v => taken = v)
        );
        foreach (var key in new[] { "9", "9", "9" })
            Button(pad, key).Click();
        Assert.Null(taken);
        Assert.Equal("Possible: 20 to 250 /min", pad.Find("[role=alert]").TextContent);
    }

    /// <summary>The pad is drawn once more with the old value while the new one is still on its way up.</summary>
    [Fact]
    public void A_number_out_of_range_stays_as_typed_with_the_range_beside_it()
    {
        double? kept = null;
        var pad = Render<NumberPad>(p =>
            p.Add(n => n.Label, "Heart rate")
                .Add(n => n.Unit, "/min")
                .Add(n => n.Min, 20)
                .Add(n => n.Max, 250)
                .Add(n => n.ValueChanged, v => kept = v)
        );
        foreach (var key in new[] { "9", "2", "0" })
        {
            var before = kept;
            Button(pad, key).Click();
            pad.Render(p => p.Add(n => n.Value, before));
            pad.Render(p => p.Add(n => n.Value, kept));
        }

        Assert.Equal("920", pad.Find("output").TextContent);
        Assert.Equal("Possible: 20 to 250 /min", pad.Find(".pad-shown [role=alert]").TextContent);
        pad.Render(p => p.Add(n => n.Value, 88));
        Assert.Equal("88", pad.Find("output").TextContent);
    }

    [Fact]
    public void The_last_digit_can_be_taken_back()
    {
        double? taken = null;
        var pad = Render<NumberPad>(p => p.Add(n => n.Label, "Pain").Add(n => n.Max, 10).Add(n => n.ValueChanged, v => taken = v));
        Button(pad, "7").Click();
        Button(pad, "Delete last digit").Click();
        Button(pad, "3").Click();
        Assert.Equal(3, taken);
    }
}
