using Farhold.App.Settings;
using Farhold.App.Words;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Settings;

public class LocalProtocolTests : LimbTest
{
    private const string Signed = """
        {
          "local": "vesterdal", "version": "3", "title": "Vesterdal rescue", "over": "farhold-base",
          "authority": { "name": "Dr. Sunniva Holm", "role": "medical director", "date": "2031-01-15" },
          "clock": { "limit": "PT7H" }
        }
        """;

    private LocalProtocolKeeper Keeper => Services.GetRequiredService<LocalProtocolKeeper>();

    [Fact]
    public void An_accepted_file_shows_who_authorised_it_and_every_hard_limit_it_loosens()
    {
        var panel = Take(Signed);
        Assert.Contains("Dr. Sunniva Holm, medical director, on 2031-01-15", panel.Markup, StringComparison.Ordinal);
        Assert.Contains("the time limit is 7 h 00 min instead of 6 h 00 min", panel.Markup, StringComparison.Ordinal);
        Assert.Equal(Duration.FromHours(7), Care.Protocol.Clock.Limit);
    }

    [Fact]
    public void Loosened_without_authority_it_is_refused_with_line_and_reason_and_the_shipped_one_stays()
    {
        var panel = Take(Signed.Replace("\"authority\": { \"name\": \"Dr. Sunniva Holm\", \"role\": \"medical director\", \"date\": \"2031-01-15\" },", "", StringComparison.Ordinal));
        var alert = panel.Find("[role=alert]").TextContent;
        Assert.Contains(Texts.LocalRefused, alert, StringComparison.Ordinal);
        Assert.Contains("Line 4, column", alert, StringComparison.Ordinal);
        Assert.Contains("needs a named authority", alert, StringComparison.Ordinal);
        Assert.Same(ShippedProtocol.Protocol, Care.Protocol);
        Assert.Equal("", Phone.Get("local-protocol"));
    }

    [Fact]
    public void It_is_in_force_again_after_a_new_start()
    {
        Take(Signed);
        Care.Use(ShippedProtocol.Protocol);
        new LocalProtocolKeeper(Phone, Care).Start();
        Assert.Equal("vesterdal", Care.Protocol.Local!.Id);
    }

    [Fact]
    public void A_refused_file_leaves_the_accepted_one_in_force()
    {
        Take(Signed);
        var panel = Take("{ \"local\": ");
        Assert.Contains(Texts.LocalRefusedOther, panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal("vesterdal", Care.Protocol.Local!.Id);
    }

    [Fact]
    public void Removed_it_is_gone_for_good()
    {
        var panel = Take(Signed);
        Button(panel, Texts.LocalRemove).Click();
        Button(panel, Texts.LocalRemoveYes).Click();
        Assert.Null(Care.Protocol.Local);
        new LocalProtocolKeeper(Phone, Care).Start();
        Assert.Null(Care.Protocol.Local);
        Assert.Empty(Keeper.Refusals);
    }

    [Fact]
    public void The_whole_protocol_can_be_read_with_how_well_each_source_is_known()
    {
        var screen = Render<ProtocolScreen>();
        var protocol = ShippedProtocol.Protocol;
        var lines = screen.FindAll("li").Select(li => li.TextContent).ToArray();
        bool Shown(string text, string besides) =>
            lines.Any(l => l.Contains(text, StringComparison.Ordinal) && l.Contains(besides, StringComparison.Ordinal));
        Assert.All(protocol.Criteria, c => Assert.True(Shown(c.Text, Texts.KnownAs(protocol.Sources[c.Sources[0]].Known))));
        Assert.All(protocol.Steps, s => Assert.True(Shown(s.Text, Texts.KnownAs(protocol.Sources[s.Sources[0]].Known))));
        Assert.All(protocol.Sources.Values, s => Assert.True(Shown(s.Title, Texts.KnownAs(s.Known))));
    }

    private IRenderedComponent<LocalProtocolPanel> Take(string json)
    {
        var panel = Render<LocalProtocolPanel>();
        panel.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromText(json, "vesterdal.json"));
        panel.WaitForState(() => panel.FindAll("[role=alert]").Count > 0 || Keeper.Local is not null);
        panel.Render();
        return panel;
    }
}
