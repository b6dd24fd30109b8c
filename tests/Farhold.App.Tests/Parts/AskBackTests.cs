namespace Farhold.App.Tests.Parts;

public class AskBackTests : ScreenTest
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Changing_it_gives_the_focus_back_to_what_asked(bool byEscape)
    {
        var changed = 0;
        var asked = Render<AskBack>(p => p.Add(a => a.Slips, ["Unlikely."]).Add(a => a.OnNo, () => changed++));
        Assert.Equal((1, 0), Phone.Focus);
        if (byEscape)
            asked.Find("[role=group]").KeyDown("Escape");
        else
            Button(asked, Texts.AskBackNo).Click();
        Assert.Equal((1, (1, 1)), (changed, Phone.Focus));
    }
}
