using System.Globalization;
using System.Text;

namespace Farhold.Tests.Verdicts;

/// <summary>A row of <c>tables/decision_cases.csv</c>: its columns are the fields of a record.</summary>
/// <remarks>Minutes are before the instant judged, except those of help, which are after it.</remarks>
public sealed class DecisionCase
{
    public static readonly Instant Now = Some.At("12:00");

    private readonly Dictionary<string, string> row;
    private readonly List<(double MinutesAgo, string Json)> said = [];

    private DecisionCase(Dictionary<string, string> row) => this.row = row;

    public string Id => row["id"];

    public Verdict Expected => Wire.Parse<Verdict>(row["expectedVerdict"])!.Value;

    public Limb Limb => Wire.Parse<Limb>(Fields(row["woundNature"])["limb"])!.Value;

    public static IReadOnlyList<DecisionCase> All { get; } =
    [.. Csv.Rows(Path.Combine(AppContext.BaseDirectory, "tables", "decision_cases.csv")).Select(r => new DecisionCase(r))];

    public override string ToString() => $"{Id}: {row["story"]}";

    public CareRecord Record
    {
        get
        {
            said.Clear();
            Person();
            Wounds();
            Looks();
            Rest();
            var lines = said.OrderByDescending(s => s.MinutesAgo).Select((s, i) => Line(i + 1, s.MinutesAgo, s.Json));
            var file = (Read<RecordFile>.Usable)RecordReader.Read(Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n"), Id);
            Assert.Empty(file.Value.Damaged);
            return CareRecord.Of(file.Value);
        }
    }

    private double First => Number(row["minutesOnEarliest"]);

    private void Person()
    {
        var medicines = row["medicines"];
        var history = medicines.StartsWith("history=", StringComparison.Ordinal) ? medicines["history=".Length..] : null;
        var list = medicines == "none" || history is not null ? [] : medicines.Split(';', StringSplitOptions.TrimEntries);
        var more = history is null ? "" : $",\"history\":\"{history}\"";
        Say(
            First,
            $"\"kind\":\"casualty.opened\",\"alias\":\"{Id}\",\"sex\":\"{row["sex"]}\",\"ageYears\":{row["ageYears"]},"
                + $"\"medicines\":[{Quoted(list)}]{more}"
        );
    }

    private void Wounds()
    {
        var main = Fields(row["woundNature"]);
        Say(First, $"\"kind\":\"wound.found\",\"wound\":\"w1\",\"limb\":\"{main["limb"]}\",\"nature\":\"{main["nature"]}\"");
        var latest = Number(row["minutesOnLatest"]);
        var make = main.TryGetValue("make", out var m) ? $",\"make\":\"{m}\"" : "";
        said.Add(
            (
                First,
                $"{Between(First, latest)},\"kind\":\"tourniquet.tightened\",\"tourniquet\":\"t1\",\"limb\":\"{main["limb"]}\","
                    + $"\"wound\":\"w1\"{make}"
            )
        );
        var number = 2;
        foreach (var other in Parts(row["otherWounds"]))
        {
            var fields = Fields(other);
            var place = fields.TryGetValue("limb", out var limb) ? $"\"limb\":\"{limb}\"" : $"\"region\":\"{fields["region"]}\"";
            Say(First, $"\"kind\":\"wound.found\",\"wound\":\"w{number}\",{place},\"nature\":\"{fields["nature"]}\"");
            if (fields.TryGetValue("tourniquet", out var name))
                Say(
                    Number(fields["minutesOn"]),
                    $"\"kind\":\"tourniquet.tightened\",\"tourniquet\":\"{name}\",\"limb\":\"{limb}\",\"wound\":\"w{number}\""
                );
            if (fields.TryGetValue("bleeding", out var bleeding))
                Say(Age, $"\"kind\":\"bleeding.checked\",\"wound\":\"w{number}\",\"bleeding\":\"{bleeding}\"");
            number++;
        }

        foreach (var attempt in row["attemptsSoFar"].Split(';', StringSplitOptions.TrimEntries).Where(a => a != "none"))
            Attempt(attempt);
    }

    /// <summary><c>held, loosened 310</c> or <c>bled 40</c>: minutes ago.</summary>
    private void Attempt(string attempt)
    {
        var minutes = Number(attempt[(attempt.LastIndexOf(' ') + 1)..]);
        if (attempt.StartsWith("held", StringComparison.Ordinal))
        {
            Say(minutes + 5, "\"kind\":\"attempt.started\",\"wound\":\"w1\",\"tourniquet\":\"t1\"");
            Say(minutes, "\"kind\":\"tourniquet.slackened\",\"tourniquet\":\"t1\"");
            Say(minutes - 15, "\"kind\":\"attempt.ended\",\"wound\":\"w1\",\"tourniquet\":\"t1\",\"outcome\":\"held\"");
            return;
        }

        if (!row["attemptsSoFar"].Contains("held", StringComparison.Ordinal))
            Say(minutes + 8, "\"kind\":\"attempt.started\",\"wound\":\"w1\",\"tourniquet\":\"t1\"");
        Say(minutes, $"\"kind\":\"tourniquet.tightened\",\"tourniquet\":\"t1\",\"limb\":\"{Wire.Word(Limb)}\",\"wound\":\"w1\"");
        if (!row["attemptsSoFar"].Contains("held", StringComparison.Ordinal))
            Say(minutes, "\"kind\":\"attempt.ended\",\"wound\":\"w1\",\"tourniquet\":\"t1\",\"outcome\":\"bled\"");
    }

    private double Age => row["signsAgeMin"].Length == 0 ? 0 : Number(row["signsAgeMin"]);

    /// <summary>The last look, and earlier ones as differences from it at minutes from now.</summary>
    private void Looks()
    {
        var looks = Parts(row["signs"]);
        if (looks.Length == 0)
            return;
        var last = Fields(looks[0]);
        Look(Age, last);
        foreach (var earlier in looks.Skip(1))
        {
            var end = earlier.IndexOf(')', StringComparison.Ordinal);
            var minutes = -Number(earlier["earlier (".Length..end]);
            var look = new Dictionary<string, string>(last);
            if (earlier[(end + 1)..].Trim() is var changed && changed != "as now")
                foreach (var (name, value) in Fields(changed))
                    look[name] = value;
            Look(minutes, look);
        }
    }

    private void Look(double ago, Dictionary<string, string> signs)
    {
        Say(
            ago,
            "\"kind\":\"signs.taken\","
                + string.Join(',', signs.Where(s => s.Key != "bleeding").Select(s => $"\"{s.Key}\":{Value(s.Value)}"))
        );
        if (signs.TryGetValue("bleeding", out var bleeding))
            Say(ago, $"\"kind\":\"bleeding.checked\",\"wound\":\"w1\",\"bleeding\":\"{bleeding}\"");
    }

    private void Rest()
    {
        if (row["lookedOver"] != "none")
            Say(
                Age,
                "\"kind\":\"casualty.looked-over\"," + string.Join(',', Fields(row["lookedOver"]).Select(f => $"\"{f.Key}\":{f.Value}"))
            );
        Say(Age, $"\"kind\":\"watch.stated\",\"able\":{row["watchAble"]}");
        foreach (var (item, count) in Fields(row["supplies"]))
            Say(Age, $"\"kind\":\"supplies.stated\",\"item\":\"{item}\",\"count\":{count}");
        foreach (var help in Parts(row["help"]))
        {
            var fields = Fields(help);
            var care = fields["care"].Length == 0 ? "" : $",\"care\":\"{fields["care"]}\"";
            Say(
                Age,
                $"\"kind\":\"help.expected\"{care},\"earliest\":{In(fields["earliest"])},\"likely\":{In(fields["likely"])},"
                    + $"\"latest\":{In(fields["latest"])}"
            );
        }

        foreach (var contact in row["contact"].Split(';', StringSplitOptions.TrimEntries).Where(c => c != "none"))
            Contact(contact);
    }

    private void Contact(string contact)
    {
        var words = contact.Split(' ');
        var ago = Number(words[1]);
        Say(ago, $"\"kind\":\"contact.tried\",\"reached\":{(words[0] == "tried-not-reached" ? "false" : "true")}");
        if (words[0] == "reached-allows")
            Say(ago, "\"kind\":\"advice.received\",\"from\":\"duty doctor\",\"text\":\"go ahead\",\"allows\":[\"attempt\"]");
        else if (contact.EndsWith("allows=[]", StringComparison.Ordinal))
            Say(ago, "\"kind\":\"advice.received\",\"from\":\"duty doctor\",\"text\":\"leave it on\",\"allows\":[]");
    }

    private void Say(double minutesAgo, string json) => said.Add((minutesAgo, $"\"happened\":{In(-minutesAgo)},{json.Trim()}"));

    private static string Line(int number, double minutesAgo, string json) =>
        $"{{\"id\":\"a-{number.ToString(CultureInfo.InvariantCulture)}\",\"recorded\":{In(-Math.Min(minutesAgo, 0))},\"by\":\"Ane\","
        + $"{json}}}";

    private static string Between(double earliestAgo, double latestAgo) =>
        earliestAgo == latestAgo
            ? $"\"happened\":{In(-latestAgo)}"
            : $"\"happened\":{{\"earliest\":{In(-Math.Max(earliestAgo, latestAgo))},\"latest\":{In(-Math.Min(earliestAgo, latestAgo))}}}";

    private static string In(string minutes) => In(Number(minutes));

    private static string In(double minutes) => $"\"{WrittenInstant.Write(Now + Duration.FromMinutes(minutes))}\"";

    private static string Value(string value) =>
        value is "true" or "false" || double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out _)
            ? value
            : $"\"{value}\"";

    private static string Quoted(IEnumerable<string> texts) => string.Join(',', texts.Select(t => $"\"{t}\""));

    private static string[] Parts(string value) =>
        value is "" or "none" ? [] : value.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static Dictionary<string, string> Fields(string value) =>
        value
            .Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(f => f.Split('=', 2))
            .ToDictionary(f => f[0], f => f[1]);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
