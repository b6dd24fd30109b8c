using System.Globalization;
using System.Text;

namespace Farhold.Hub.Tests.Harness;

/// <summary>A record file of an invented casualty, told in minutes before now.</summary>
internal sealed class RecordFile
{
    private readonly StringBuilder lines = new();
    private readonly DateTimeOffset now = DateTimeOffset.UtcNow;
    private readonly string device;
    private int number;

    private RecordFile(string device, string alias)
    {
        (this.device, Alias) = (device, alias);
        At(60, "casualty.opened", $"\"alias\":\"{alias}\"");
    }

    public string Alias { get; }

    /// <summary>Bleeding left leg, tourniquet t1 on for 40 minutes; all that an attempt needs is known and met, help is far.</summary>
    public static RecordFile Ready(string device, string alias)
    {
        var far = DateTimeOffset.UtcNow.AddHours(20).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
        return new RecordFile(device, alias)
            .At(41, "wound.found", """
                "wound":"w1","limb":"left-leg","nature":"bleeding"
                """)
            .At(40, "tourniquet.tightened", """
                "tourniquet":"t1","limb":"left-leg","place":"high-thigh","make":"windlass","wound":"w1"
                """)
            .At(25, "supplies.stated", "\"item\":\"haemostatic-gauze\",\"count\":2")
            .At(25, "supplies.stated", "\"item\":\"pressure-dressing\",\"count\":2")
            .At(25, "watch.stated", "\"able\":true")
            .At(25, "help.expected", $"\"likely\":\"{far}\",\"earliest\":\"{far}\",\"latest\":\"{far}\"")
            .At(25, "bleeding.checked", "\"wound\":\"w1\",\"bleeding\":\"none\"")
            .Well(24);
    }

    /// <summary>Signs that speak against shock.</summary>
    public RecordFile Well(double minutesAgo) => At(minutesAgo, "signs.taken", """
        "heartRate":84,"breathRate":16,"systolic":124,"mental":"alert","radialPulse":"strong","dizzy":false,"pale":false,"cool":false,"clammy":false
        """);

    /// <summary>A second tourniquet beside the first.</summary>
    public RecordFile Second(double minutesAgo) => At(minutesAgo, "tourniquet.tightened", """
        "tourniquet":"t2","limb":"left-leg","place":"above the knee","make":"elastic","wound":"w1"
        """);

    /// <summary>Strong signs of shock, more than fit a small screen.</summary>
    public RecordFile InShock(double minutesAgo) => At(minutesAgo, "signs.taken", """
        "heartRate":136,"breathRate":34,"systolic":82,"mental":"voice","radialPulse":"absent","dizzy":true,"pale":true,"cool":true,"clammy":true
        """);

    public RecordFile At(double minutesAgo, string kind, string fields)
    {
        var at = now.AddMinutes(-minutesAgo).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
        lines.Append(CultureInfo.InvariantCulture,
            $"{{\"id\":\"{device}-{++number}\",\"happened\":\"{at}\",\"recorded\":\"{at}\",\"by\":\"Ane\",\"kind\":\"{kind}\",{fields.Trim()}}}\n");
        return this;
    }

    public RecordFile Attempt(double minutesAgo) => At(minutesAgo, "attempt.started", "\"wound\":\"w1\",\"tourniquet\":\"t1\"");

    public RecordFile Packed(double minutesAgo) => At(minutesAgo, "wound.packed", "\"wound\":\"w1\",\"material\":\"haemostatic-gauze\"");

    public RecordFile Held(double minutesAgo) => At(minutesAgo, "pressure.held", "\"wound\":\"w1\",\"minutes\":4");

    public RecordFile Dressed(double minutesAgo) => At(minutesAgo, "dressing.applied", "\"wound\":\"w1\",\"dressing\":\"pressure\"");

    public RecordFile Looked(double minutesAgo, string bleeding) => At(minutesAgo, "bleeding.checked", $"\"wound\":\"w1\",\"bleeding\":\"{bleeding}\"");

    public RecordFile Slackened(double minutesAgo, string tourniquet = "t1") =>
        At(minutesAgo, "tourniquet.slackened", $"\"tourniquet\":\"{tourniquet}\"");

    public byte[] Bytes => Encoding.UTF8.GetBytes(lines.ToString());
}
