using System.Text.Json;
using Farhold.App.Tests.Doubles;

namespace Farhold.App.Tests.First;

public class GlanceTests
{
    private static readonly Instant Noon = Instant.FromUtc(2031, 5, 4, 12, 0);

    private readonly FakePhone phone = new();

    [Fact]
    public void A_picture_is_kept_as_plain_values()
    {
        Save("c1", "Tor");
        var casualty = Assert.Single(Casualties());
        var limb = casualty.GetProperty("limbs")[0];
        Assert.Equal("Check first", limb.GetProperty("verdictText").GetString());
        Assert.Equal((Noon - Duration.FromMinutes(80)).ToUnixTimeMilliseconds(), limb.GetProperty("tightenedEarliest").GetInt64());
        Assert.Equal((Noon + Duration.FromHours(4)).ToUnixTimeMilliseconds(), limb.GetProperty("limit").GetInt64());
        Assert.Equal("Give the time, not only how long.", casualty.GetProperty("cautions")[0].GetString());
    }

    [Fact]
    public void A_newer_picture_takes_the_place_of_the_last_and_leaves_other_casualties_alone()
    {
        Save("c1", "Tor");
        Save("c2", "Siv");
        Save("c1", "Tor again");
        Assert.Equal(["Siv", "Tor again"], Casualties().Select(c => c.GetProperty("alias").GetString()));
    }

    [Fact]
    public void A_casualty_handed_over_is_forgotten()
    {
        Save("c1", "Tor");
        new Glance(phone, Texts.In("en")).Forget("c1");
        Assert.Empty(Casualties());
    }

    private List<JsonElement> Casualties() =>
        [.. JsonDocument.Parse(phone.Get("glance")).RootElement.GetProperty("casualties").EnumerateArray()];

    private void Save(string id, string alias) =>
        new Glance(phone, Texts.In("en")).Save(
            new GlancePicture(
                id,
                alias,
                false,
                Noon,
                [
                    new GlanceLimb(
                        "left-leg",
                        "Left leg",
                        "check-first",
                        "Check first",
                        new Happened(Noon - Duration.FromMinutes(80), Noon - Duration.FromMinutes(62)),
                        Noon + Duration.FromHours(4)
                    ),
                ],
                ["Give the time, not only how long."]
            )
        );
}
