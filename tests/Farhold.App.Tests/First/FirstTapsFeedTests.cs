using System.Text;
using System.Text.Json;
using Microsoft.Extensions.DependencyInjection;

namespace Farhold.App.Tests.First;

public class FirstTapsFeedTests : CareTest
{
    [Fact]
    public async Task Every_choice_is_an_entry_that_the_record_takes_and_none_hangs_on_the_verdict()
    {
        await FeedAsync();
        var entries = Options()
            .Select(o => o.GetProperty("entry").GetRawText())
            .Append(Kept().GetProperty("withdrawal").GetRawText())
            .ToList();
        var kinds = entries
            .Select(body =>
                Kinds.Of(
                    Assert
                        .IsType<Read<Entry>.Usable>(
                            new EntryReader().Read(Encoding.UTF8.GetBytes("{\"id\":\"7k3f-9\"," + body[1..]), "kept", 1)
                        )
                        .Value.Payload
                )
            )
            .ToHashSet();
        Assert.Equal(
            [
                Kind.WoundFound,
                Kind.TourniquetTightened,
                Kind.TourniquetSlackened,
                Kind.BleedingChecked,
                Kind.SignsTaken,
                Kind.Note,
                Kind.EntryWithdrawn,
            ],
            kinds.Order()
        );
        Assert.All(entries, e => Assert.Contains("\"by\":\"Ane\"", e, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_new_name_is_marked_so_that_it_is_given_away_once()
    {
        await FeedAsync();
        Assert.All(
            Options(),
            o =>
                Assert.Equal(
                    o.GetProperty("entry") is var e
                        && e.GetProperty("kind").GetString() switch
                        {
                            "wound.found" => true,
                            "tourniquet.tightened" => e.GetProperty("tourniquet").GetString() != "t1",
                            _ => false,
                        },
                    o.TryGetProperty("takes", out _)
                )
        );
        Assert.Equal(
            ["t2", "w2"],
            Options().Where(o => o.TryGetProperty("takes", out _)).Select(o => o.GetProperty("takes").GetString()).Distinct().Order()
        );
    }

    [Fact]
    public async Task Bleeding_is_answered_with_what_to_do_at_once()
    {
        await FeedAsync();
        var advised = Assert.Single(Options(), o => o.TryGetProperty("advice", out _));
        Assert.Equal("active", advised.GetProperty("entry").GetProperty("bleeding").GetString());
        Assert.Contains(
            "tighten until bleeding and the pulse below it stop",
            advised.GetProperty("advice").GetString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_choices_follow_the_names_in_the_record_and_the_casualty()
    {
        await FeedAsync();
        await LogAsync(0, new Payload.TourniquetTightened("t2", Limb.RightArm));
        Time.Advance(TimeSpan.FromSeconds(1));
        Assert.Contains(Options(), o => o.TryGetProperty("takes", out var name) && name.GetString() == "t3");

        var other = await OpenCasualtyAsync("Doll", practice: true);
        Time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(other, Kept().GetProperty("casualty").GetString());
        Assert.All(Options(), o => Assert.True(o.GetProperty("entry").GetProperty("practice").GetBoolean()));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Nothing_is_kept_once_care_has_ended_or_the_casualty_is_left(bool ended)
    {
        await FeedAsync();
        if (ended)
            await LogAsync(0, new Payload.CareEnded(CareEnd.HandedOver));
        else
            Session.Close();
        Time.Advance(TimeSpan.FromSeconds(1));
        Assert.Empty(Phone.Get("first-taps"));
    }

    private async Task FeedAsync()
    {
        await TightAsync();
        new FirstTapsFeed(Desk, Session, Preferences, Services.GetRequiredService<Ticker>(), Phone, Texts, Clock).Start();
        Time.Advance(TimeSpan.FromSeconds(1));
    }

    private JsonElement Kept() => JsonDocument.Parse(Phone.Get("first-taps")).RootElement;

    private List<JsonElement> Options() =>
        [
            .. from quick in Kept().GetProperty("quicks").EnumerateArray()
            from part in quick.GetProperty("groups").EnumerateArray()
            from option in part.GetProperty("options").EnumerateArray()
            select option,
        ];
}
