namespace Farhold.App.Tests.ThisPhone;

public class UpdateNoticeTests : ScreenTest
{
    [Fact]
    public void A_newer_build_is_shown_and_started_only_by_a_tap()
    {
        var notice = Render<UpdateNotice>();
        Assert.Equal("", notice.Markup.Trim());
        Copy.Becomes(Copy.State with { Ready = "newer" });
        notice.WaitForAssertion(() => Button(notice, "Start the newer build"));
        Assert.Equal(0, Copy.Started);
        Button(notice, "Start the newer build").Click();
        Assert.Equal(1, Copy.Started);
    }

    [Fact]
    public async Task With_a_casualty_open_there_is_nothing_to_tap()
    {
        Copy.Becomes(Copy.State with { Ready = "newer" });
        await OpenCasualtyAsync();
        var notice = Render<UpdateNotice>();
        notice.WaitForAssertion(() => Assert.Contains("once no casualty is open", notice.Markup, StringComparison.Ordinal));
        Assert.Empty(notice.FindAll("button"));
    }

    [Fact]
    public void With_a_form_open_there_is_nothing_to_tap()
    {
        Copy.Becomes(Copy.State with { Ready = "newer" });
        var form = Session.Editing();
        var notice = Render<UpdateNotice>();
        notice.WaitForAssertion(() => Assert.Contains("once the open form is closed", notice.Markup, StringComparison.Ordinal));
        form.Dispose();
        form.Dispose();
        Assert.False(Session.FormOpen);
    }
}
