namespace Farhold.App.Tests.ThisPhone;

public class UpdateRuleTests
{
    private static readonly CopyState Ready = new(true, "present", "newer", false, 1);

    [Fact]
    public void Nothing_newer_nothing_to_start() =>
        Assert.Equal(UpdateAnswer.NothingReady, UpdateRule.Answer(Ready with { Ready = "" }, false, false));

    [Theory]
    [InlineData(true, false, 1, UpdateAnswer.CasualtyOpen)]
    [InlineData(true, true, 2, UpdateAnswer.CasualtyOpen)]
    [InlineData(false, true, 1, UpdateAnswer.FormOpen)]
    [InlineData(false, false, 2, UpdateAnswer.OtherTabs)]
    [InlineData(false, false, 1, UpdateAnswer.May)]
    public void It_may_start_only_with_nothing_open_in_the_only_tab(bool casualty, bool form, int tabs, UpdateAnswer expected) =>
        Assert.Equal(expected, UpdateRule.Answer(Ready with { Tabs = tabs }, casualty, form));
}
