using System.Text;
using Farhold.App.Tests.Doubles;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.Settings;

public class LocalProtocolTests : LimbTest
{
    private const string Text = """
        {
          "local": "vesterdal", "version": "3", "title": "Vesterdal rescue", "over": "farhold-base",
          "authority": { "name": "Dr. Sunniva Holm", "role": "medical director", "date": "2031-01-15" },
          "clock": { "limit": "PT5H", "soon": "PT1H" }, "orders": ["paracetamol"]
        }
        """;

    private const string Numbers = """{"local":"vesterdal","version":"3","over":"farhold-base","clock":{"limit":"PT5H"}}""";

    private readonly InventedRescue rescue = new();

    public LocalProtocolTests() => Services.AddSingleton<IPrinter>(new Nothing());

    private LocalProtocolKeeper Keeper => Services.GetRequiredService<LocalProtocolKeeper>();

    private TrustedIssuers Issuers => Services.GetRequiredService<TrustedIssuers>();

    [Fact]
    public async Task A_signed_file_is_in_force_only_after_all_that_differs_was_read_and_a_yes()
    {
        await TrustAsync();
        var panel = Take((Text, true));
        var offered = panel.Find($"[aria-label='{Texts.LocalOffered}']");
        Assert.Contains("Signed by Vesterdal rescue (invented), medical director, serial 1", offered.TextContent, StringComparison.Ordinal);
        Assert.Contains("Dr. Sunniva Holm, medical director, on 2031-01-15", offered.TextContent, StringComparison.Ordinal);
        Assert.Equal(
            [
                "differs, stricter: the time limit is 5 h 00 min instead of 6 h 00 min [Dr. Sunniva Holm, medical director]",
                "differs, laxer: help counts as soon within 1 h 00 min instead of 2 h 00 min [Dr. Sunniva Holm, medical director]",
                "differs, laxer: drug ordered: paracetamol [Dr. Sunniva Holm, medical director]",
            ],
            offered.QuerySelectorAll("details[open] li").Select(l => l.TextContent)
        );
        Assert.Same(ShippedProtocol.Protocol, Care.Protocol);

        Button(panel, Texts.LocalAccept).Click();
        Assert.Equal(Duration.FromHours(5), Care.Protocol.Clock.Limit);
        Assert.Equal(Standing.Verified, Care.Protocol.Local!.Standing);
    }

    [Fact]
    public async Task Declined_it_changes_nothing()
    {
        await TrustAsync();
        Button(Take((Text, true)), Texts.LocalDecline).Click();
        Assert.Same(ShippedProtocol.Protocol, Care.Protocol);
        Assert.Equal("", Phone.Get("local-protocol"));
    }

    [Theory]
    [InlineData(false, "needs a signature: without one a local protocol may only tighten numbers")]
    [InlineData(true, "is trusted here")]
    public void Unsigned_or_by_nobody_trusted_it_is_refused_with_line_and_reason_and_the_shipped_one_stays(bool signed, string reason)
    {
        var alert = Take((Text, signed)).Find("[role=alert]").TextContent;
        Assert.Contains(Texts.LocalRefused, alert, StringComparison.Ordinal);
        Assert.Contains(reason, alert, StringComparison.Ordinal);
        Assert.Same(ShippedProtocol.Protocol, Care.Protocol);
        Assert.Equal("", Phone.Get("local-protocol"));
    }

    [Fact]
    public void Unsigned_it_may_tighten_numbers_and_shows_no_word_of_its_own()
    {
        var panel = Take((Numbers, false));
        Assert.DoesNotContain("vesterdal 3", panel.Markup, StringComparison.Ordinal);
        Button(panel, Texts.LocalAccept).Click();
        Assert.Equal(Duration.FromHours(5), Care.Protocol.Clock.Limit);
        Assert.Contains(Texts.LocalUnsigned, Render<LocalProtocolPanel>().Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_loosening_stands_on_every_screen_whether_a_casualty_is_open_or_not()
    {
        await rescue.GiveAsync(Text, Issuers, Keeper);
        const string Loosened = "LOOSENED by the local protocol: help counts as soon within 1 h 00 min instead of 2 h 00 min";
        Assert.Contains(Loosened, Render<Frame>().Markup, StringComparison.Ordinal);
        await ReadyAsync();
        Assert.Contains(Loosened, AttemptShown().Markup, StringComparison.Ordinal);
        Assert.Contains(Loosened, Render<TripSheetScreen>().Markup, StringComparison.Ordinal);
        Assert.Contains(Loosened, Render<FormsScreen>().Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_in_force_again_after_a_new_start_and_checked_again()
    {
        await rescue.GiveAsync(Text, Issuers, Keeper);
        await Anew().StartAsync();
        Assert.Equal("vesterdal", Care.Protocol.Local!.Id);
        Phone.Set("local-protocol", Text.Replace("PT5H", "PT4H", StringComparison.Ordinal));
        var changed = Anew();
        await changed.StartAsync();
        Assert.Same(ShippedProtocol.Protocol, Care.Protocol);
        Assert.Contains("does not fit", Assert.Single(changed.Refusals).Reason, StringComparison.Ordinal);
        Assert.True(changed.IsOut);
        await Keeper.StartAsync();
        Assert.Contains(Texts.LocalIsOut, Render<Frame>().Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_its_time_is_over_the_screens_say_so_and_what_it_allowed_ends()
    {
        await rescue.GiveAsync(Text, Issuers, Keeper);
        Assert.Equal(["paracetamol"], Care.Protocol.Local!.Orders);
        Time.Advance(TimeSpan.FromDays(6));
        Assert.Equal((Standing.Expired, 0), (Care.Protocol.Local!.Standing, Care.Protocol.Local.Orders.Length));
        Assert.Equal((Duration.FromHours(5), Duration.FromHours(2)), (Care.Protocol.Clock.Limit, Care.Protocol.Clock.Soon));
        Assert.Contains("LOCAL PROTOCOL EXPIRED", Render<Frame>().Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_older_serial_is_refused_after_a_newer_one_and_leaves_that_in_force()
    {
        await TrustAsync();
        await Keeper.OfferAsync([("n.json", Encoding.UTF8.GetBytes(Text)), ("n.json.sig", rescue.Sign(Text, 4))]);
        Keeper.Accept();
        var panel = Take((Text.Replace("\"3\"", "\"2\"", StringComparison.Ordinal), true));
        Assert.Contains(Texts.LocalRefusedOther, panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Contains("serial 1 is older than 4", panel.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Equal("3", Care.Protocol.Local!.Version);
    }

    [Fact]
    public async Task Removed_it_is_gone_for_good()
    {
        await rescue.GiveAsync(Text, Issuers, Keeper);
        var panel = Render<LocalProtocolPanel>();
        Button(panel, Texts.LocalRemove).Click();
        Button(panel, Texts.LocalRemoveYes).Click();
        Assert.Null(Care.Protocol.Local);
        await Anew().StartAsync();
        Assert.Null(Care.Protocol.Local);
    }

    [Fact]
    public async Task With_its_issuer_trusted_no_more_it_is_out_at_once()
    {
        await rescue.GiveAsync(Text, Issuers, Keeper);
        Issuers.Drop(rescue.Key.Code.Digits);
        Assert.Null(Care.Protocol.Local);
        Assert.True(Keeper.IsOut);
    }

    [Fact]
    public async Task The_rules_in_force_stand_in_the_record_by_their_hash_once_and_again_when_they_change()
    {
        await ReadyAsync();
        Assert.Empty(State.Of(Kind.RulesStated));
        await rescue.GiveAsync(Text, Issuers, Keeper);
        await TellAsync(new Payload.NoteWritten("one"));
        await TellAsync(new Payload.NoteWritten("two"));
        var stated = Assert.Single(State.Of(Kind.RulesStated)).As<Payload.RulesStated>();
        Assert.Equal(
            (ShippedProtocol.Protocol.Hash, FileHash.Of(Encoding.UTF8.GetBytes(Text)), Standing.Verified),
            (stated.Hash, stated.LocalHash, stated.Standing)
        );
        Keeper.Remove();
        await TellAsync(new Payload.NoteWritten("three"));
        Assert.Equal(RulesWords.Stated(ShippedProtocol.Protocol), State.Of(Kind.RulesStated)[^1].What);
        Assert.Empty(Care.Picture!.Doubts);
    }

    [Fact]
    public async Task Without_proof_it_is_used_for_one_casualty_twelve_hours_with_a_reason_that_is_logged()
    {
        await ReadyAsync();
        var panel = Take((Text, false));
        panel.Find($"input[type=radio]").Change(true);
        Assert.True(Button(panel, Texts.EmergencyUse).HasAttribute("disabled"));
        panel.Find("textarea").Input("the duty doctor said so by radio");
        Button(panel, Texts.EmergencyUse).Click();
        panel.WaitForState(() => Care.Protocol.Local is not null);

        Assert.Equal((Standing.Emergency, 0), (Care.Protocol.Local!.Standing, Care.Protocol.Local.Orders.Length));
        Assert.Contains("NOBODY HAS PROVEN THIS", AttemptShown().Markup, StringComparison.Ordinal);
        var stated = Assert.Single(State.Of(Kind.RulesStated)).As<Payload.RulesStated>();
        Assert.Equal((Standing.Emergency, "the duty doctor said so by radio"), (stated.Standing, stated.Reason));
        Assert.Contains("NOBODY HAS PROVEN THIS", EntryText.Of(stated), StringComparison.Ordinal);

        await OpenCasualtyAsync("Eir");
        Assert.Null(Care.Protocol.Local);
        await Session.OpenAsync(Casualty);
        Assert.NotNull(Care.Protocol.Local);
        Assert.NotNull(Anew().Emergency.Casualty(Now));
        Time.Advance(TimeSpan.FromHours(12));
        Assert.Null(Care.Protocol.Local);
    }

    [Fact]
    public async Task An_issuer_is_trusted_only_after_somebody_said_that_the_twenty_digits_match()
    {
        var panel = Render<IssuersPanel>();
        panel.Find("textarea").Input(rescue.Code);
        Button(panel, Texts.IssuerTake).Click();
        Assert.Contains(rescue.Key.Code.Digits, panel.Markup, StringComparison.Ordinal);
        Assert.Empty(Issuers.Keyring.Issuers);
        Button(panel, Texts.IssuerDiffer).Click();
        Assert.Empty(Issuers.Keyring.Issuers);
        Button(panel, Texts.IssuerTake).Click();
        Button(panel, Texts.IssuerMatch).Click();
        Assert.Equal(rescue.Key.Code, Assert.Single(Issuers.Keyring.Issuers).Code);
        Assert.Equal(
            rescue.Key.Code,
            Assert.Single(new TrustedIssuers(Phone, Signing.FrameworkSignatures.CheckAsync).Keyring.Issuers).Code
        );

        var next = new InventedRescue();
        await Issuers.TakeAsync(Encoding.UTF8.GetString(rescue.Key.Rotate(next.Key.Code).Write()));
        Assert.Equal(next.Key.Code, Assert.Single(Issuers.Keyring.Issuers).Code);
    }

    [Fact]
    public void An_issuers_code_is_read_by_the_camera_past_codes_that_are_none()
    {
        var panel = Render<IssuersPanel>();
        Button(panel, Texts.IssuerScan).Click();
        HandOver.See("https://example.org/menu");
        panel.WaitForAssertion(() => Assert.Contains(Texts.IssuerRefused, panel.Markup, StringComparison.Ordinal));
        HandOver.See(rescue.Code.TrimEnd());
        panel.WaitForAssertion(() => Assert.Contains(rescue.Key.Code.Digits, panel.Markup, StringComparison.Ordinal));
        Assert.DoesNotContain(Texts.IssuerRefused, panel.Markup, StringComparison.Ordinal);
        Button(panel, Texts.IssuerScan); // the camera is off again
        Button(panel, Texts.IssuerMatch).Click();
        Assert.Equal(rescue.Key.Code, Assert.Single(Issuers.Keyring.Issuers).Code);
    }

    [Fact]
    public async Task An_invisible_name_and_a_spoilt_keyring_are_said()
    {
        await Issuers.TakeAsync(rescue.Code.Replace("Vesterdal", "\u202E\u200B", StringComparison.Ordinal));
        Assert.Contains("can't be seen", Assert.Single(Issuers.Refusals).Reason, StringComparison.Ordinal);
        Assert.Null(Issuers.Offered);
        Phone.Set("issuers", "{\"issuers\":[{}]}");
        Assert.True(new TrustedIssuers(Phone, Signing.FrameworkSignatures.CheckAsync).Spoilt);
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

    private sealed class Nothing : IPrinter
    {
        public void Print() { }
    }

    private async Task TrustAsync()
    {
        await Issuers.TakeAsync(rescue.Code);
        Issuers.Trust();
    }

    /// <summary>As if the app were started anew.</summary>
    private LocalProtocolKeeper Anew() =>
        new(
            Phone,
            Care,
            Logbook,
            Services.GetRequiredService<RulesInForce>(),
            new TrustedIssuers(Phone, Signing.FrameworkSignatures.CheckAsync),
            Signing.FrameworkSignatures.CheckAsync,
            new Background(),
            ShippedRules.Book
        );

    private IRenderedComponent<LocalProtocolPanel> Take((string Text, bool Signed) file)
    {
        var panel = Render<LocalProtocolPanel>();
        var chosen = new List<InputFileContent> { InputFileContent.CreateFromText(file.Text, "vesterdal.json") };
        if (file.Signed)
            chosen.Add(InputFileContent.CreateFromBinary(rescue.Sign(file.Text), "vesterdal.json.sig"));
        panel.FindComponent<InputFile>().UploadFiles([.. chosen]);
        panel.WaitForState(() => panel.FindAll("[role=alert]").Count > 0 || Keeper.Offered is not null);
        panel.Render();
        return panel;
    }
}
