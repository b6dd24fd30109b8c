using System.Globalization;
using System.Text;

namespace Farhold.Hub.Tests.Harness;

/// <summary>A record file of an invented casualty, told in minutes before now.</summary>
internal sealed class RecordFile
{
    private readonly List<(double MinutesAgo, string Kind, string Fields)> entries = [];
    private readonly DateTimeOffset now = DateTimeOffset.UtcNow;
    private readonly string device;

    private RecordFile(string device, string alias)
    {
        (this.device, Alias) = (device, alias);
        At(60, "casualty.opened", $"\"alias\":\"{alias}\",\"ageYears\":34");
    }

    public string Alias { get; }

    /// <summary>Bleeding left leg, tourniquet t1 on for 40 minutes; all that an attempt needs is known and met, help is far.</summary>
    public static RecordFile Ready(string device, string alias)
    {
        var far = DateTimeOffset.UtcNow.AddHours(20).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
        return new RecordFile(device, alias)
            .At(
                41,
                "wound.found",
                """
                "wound":"w1","limb":"left-leg","nature":"bleeding"
                """
            )
            .At(
                40,
                "tourniquet.tightened",
                """
                "tourniquet":"t1","limb":"left-leg","place":"high-thigh","make":"windlass","wound":"w1"
                """
            )
            .At(25, "supplies.stated", "\"item\":\"haemostatic-gauze\",\"count\":2")
            .At(25, "supplies.stated", "\"item\":\"pressure-dressing\",\"count\":2")
            .At(25, "watch.stated", "\"able\":true")
            .At(25, "help.expected", $"\"care\":\"surgery\",\"likely\":\"{far}\",\"earliest\":\"{far}\",\"latest\":\"{far}\"")
            .LookedOver(25)
            .At(25, "bleeding.checked", "\"wound\":\"w1\",\"bleeding\":\"none\"")
            .Well(36)
            .Well(24);
    }

    /// <summary>Signs that speak against shock.</summary>
    public RecordFile Well(double minutesAgo) =>
        At(
            minutesAgo,
            "signs.taken",
            """
            "heartRate":84,"breathRate":16,"systolic":124,"mental":"alert","radialPulse":"strong","dizzy":false,"pale":false,"cool":false,"clammy":false
            """
        );

    /// <summary>The rest of the casualty was looked over, and nothing found.</summary>
    public RecordFile LookedOver(double minutesAgo) =>
        At(
            minutesAgo,
            "casualty.looked-over",
            """
            "bleedingElsewhere":false,"trunkWound":false,"breathingHard":false,"veryCold":false,"bloodThinner":false
            """
        );

    /// <summary>A second tourniquet beside the first.</summary>
    public RecordFile Second(double minutesAgo) =>
        At(
            minutesAgo,
            "tourniquet.tightened",
            """
            "tourniquet":"t2","limb":"left-leg","place":"above the knee","make":"elastic","wound":"w1"
            """
        );

    /// <summary>Strong signs of shock, more than fit a small screen.</summary>
    public RecordFile InShock(double minutesAgo) =>
        At(
            minutesAgo,
            "signs.taken",
            """
            "heartRate":136,"breathRate":34,"systolic":82,"mental":"voice","radialPulse":"absent","dizzy":true,"pale":true,"cool":true,"clammy":true
            """
        );

    public RecordFile At(double minutesAgo, string kind, string fields)
    {
        entries.Add((minutesAgo, kind, fields.Trim()));
        return this;
    }

    /// <summary>Begun as the verdict allowed: the second look is a minute old.</summary>
    public RecordFile Attempt(double minutesAgo) =>
        Well(minutesAgo + 1).Looked(minutesAgo + 1, "none").At(minutesAgo, "attempt.started", "\"wound\":\"w1\",\"tourniquet\":\"t1\"");

    public RecordFile Packed(double minutesAgo) => At(minutesAgo, "wound.packed", "\"wound\":\"w1\",\"material\":\"haemostatic-gauze\"");

    public RecordFile Held(double minutesAgo) => At(minutesAgo, "pressure.held", "\"wound\":\"w1\",\"minutes\":4");

    public RecordFile Dressed(double minutesAgo) => At(minutesAgo, "dressing.applied", "\"wound\":\"w1\",\"dressing\":\"pressure\"");

    public RecordFile Looked(double minutesAgo, string bleeding) =>
        At(minutesAgo, "bleeding.checked", $"\"wound\":\"w1\",\"bleeding\":\"{bleeding}\"");

    public RecordFile Slackened(double minutesAgo, string tourniquet = "t1") =>
        At(minutesAgo, "tourniquet.slackened", $"\"tourniquet\":\"{tourniquet}\"");

    /// <summary>In the order in which it happened, as one device writes it: out of order its clock would have run back.</summary>
    public byte[] Bytes =>
        Encoding.UTF8.GetBytes(string.Concat(entries.OrderByDescending(e => e.MinutesAgo).Select((e, i) => Line(i + 1, e))));

    private string Line(int number, (double MinutesAgo, string Kind, string Fields) entry)
    {
        var at = now.AddMinutes(-entry.MinutesAgo).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{{\"id\":\"{device}-{number}\",\"happened\":\"{at}\",\"recorded\":\"{at}\",\"by\":\"Ane\",\"kind\":\"{entry.Kind}\","
                + $"{entry.Fields}}}\n"
        );
    }
}
