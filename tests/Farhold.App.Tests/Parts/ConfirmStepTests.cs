namespace Farhold.App.Tests.Parts;

public class ConfirmStepTests : ScreenTest
{
    private int done;

    [Fact]
    public void One_press_does_nothing_yet()
    {
        Button(Step(), "Withdraw").Click();
        Assert.Equal(0, done);
    }

    [Fact]
    public void The_second_button_names_the_deed_and_does_it()
    {
        var step = Step();
        Button(step, "Withdraw").Click();
        Assert.Equal("Withdraw this entry?", step.Find("[role=alert]").TextContent);
        Button(step, "Withdraw the entry").Click();
        Assert.Equal(1, done);
    }

    [Fact]
    public void No_goes_back_and_does_nothing()
    {
        var step = Step();
        Button(step, "Withdraw").Click();
        Button(step, "No").Click();
        Assert.NotNull(Button(step, "Withdraw"));
        Assert.Equal(0, done);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_safe_answer_has_the_focus_and_gives_it_back(bool byEscape)
    {
        var step = Step();
        Button(step, "Withdraw").Click();
        JSInterop.VerifyFocusAsyncInvoke(1);
        if (byEscape)
            step.Find("[role=group]").KeyDown("Escape");
        else
            Button(step, "No").Click();
        Assert.Single(step.FindAll("button"));
        JSInterop.VerifyFocusAsyncInvoke(2)[^1].Arguments[0].ShouldBeElementReferenceTo(Button(step, "Withdraw"));
    }

    private IRenderedComponent<ConfirmStep> Step() =>
        Render<ConfirmStep>(p =>
            p.Add(c => c.Text, "Withdraw")
                .Add(c => c.Question, "Withdraw this entry?")
                .Add(c => c.Yes, "Withdraw the entry")
                .Add(c => c.OnConfirmed, () => done++)
        );
}
