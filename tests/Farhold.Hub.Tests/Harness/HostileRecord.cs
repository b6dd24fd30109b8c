using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Farhold.Hub.Tests.Harness;

/// <summary>A record of every kind the schema knows, whose every free text tries to run, to reach out or to turn the writing.</summary>
internal sealed class HostileRecord
{
    /// <summary>Controls, an escape sequence, line ends of several kinds, marks that turn the direction of writing.</summary>
    public const string Marks =
        "\u202Edesrever\u202C\u2066isolated\u2069\u200F\u200E\u061C\u0007\u001B[2J\u0085\u009B31m\u007F\u2028\u2029\tend";

    private const string Device = "evil";

    private static readonly string[] Attempts =
    [
        "<img src=x onerror=\"__pwn('img')\">",
        "<script>__pwn('script')</script>",
        "\"><svg/onload=__pwn('svg')>",
        "' onmouseover='__pwn(1)' style='background:url(https://evil.example/b)",
        "<iframe src=\"https://evil.example/f\"></iframe><link rel=stylesheet href=https://evil.example/s>",
        "]]></script></style></textarea></title><base href=\"https://evil.example/\">",
        "javascript:__pwn('address') [x](javascript:__pwn('mark-down')) https://evil.example/click",
        "{{constructor.constructor('__pwn(1)')()}} ${__pwn('template')} @(__pwn(2)) =HYPERLINK(\"https://evil.example\")",
    ];

    private static readonly JsonSerializerOptions Raw = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly List<string> lines = [];
    private readonly DateTimeOffset begin = DateTimeOffset.UtcNow.AddHours(-1);
    private int texts;

    public HostileRecord()
    {
        var kinds = JsonNode.Parse(File.ReadAllText(Path.Combine(Published.Root, "records", "record.schema.json")))!["allOf"]!
            .AsArray()
            .ToDictionary(k => (string)k!["if"]!["properties"]!["kind"]!["const"]!, k => k!["then"]!["properties"]!.AsObject());
        Kinds = [.. kinds.Keys];
        foreach (var (kind, fields) in kinds.Where(k => k.Key is not ("care.ended" or "entry.withdrawn" or "tourniquet.removed")))
            Add(kind, Filled(fields));
        Add("entry.withdrawn", Filled(kinds["entry.withdrawn"]), target: Add("note", Filled(kinds["note"])));
        Add(
            "wound.found",
            new()
            {
                ["wound"] = Name("w2"),
                ["region"] = "chest",
                ["nature"] = "other",
                ["note"] = Text(),
            }
        );
        Add(
            "tourniquet.tightened",
            new()
            {
                ["tourniquet"] = Name("t2"),
                ["limb"] = "left-leg",
                ["place"] = Text(),
            }
        );
        Add(
            "of a newer version " + Attempts[0] + Marks,
            new()
            {
                [Text()] = Text(),
                ["nested"] = new JsonObject { [Text()] = Text() },
            }
        );
        lines.Add("not JSON " + Attempts[0] + Marks.Replace("\u2028", "", StringComparison.Ordinal));
        Ended = Line("care.ended", Filled(kinds["care.ended"]), lines.Count);
    }

    /// <summary>All kinds of the schema.</summary>
    public IReadOnlyList<string> Kinds { get; }

    /// <summary>The entry that ends the care.</summary>
    public string Ended { get; }

    public byte[] Bytes => Encoding.UTF8.GetBytes(string.Concat(lines.Select(l => l + "\n")));

    /// <summary>The names of all entries.</summary>
    public IEnumerable<string> Ids => Enumerable.Range(1, lines.Count - 1).Select(Id);

    public string Text() => Attempts[texts++ % Attempts.Length] + Marks;

    /// <summary>The same for the same thing, and short enough.</summary>
    private static string Name(string of) => $"{of} <img src=x onerror=__pwn(3)>\"'\u202E\u0007\u001B[1m";

    private string Add(string kind, JsonObject fields, string? target = null)
    {
        if (target is not null)
            fields["target"] = target;
        lines.Add(Line(kind, fields, lines.Count + 1));
        return Id(lines.Count);
    }

    private string Line(string kind, JsonObject fields, int number)
    {
        var at = begin.AddMinutes(number).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
        var entry = new JsonObject
        {
            ["id"] = Id(number),
            ["happened"] = at,
            ["recorded"] = at,
            ["by"] = Name("Ane"),
            ["kind"] = kind,
        };
        foreach (var (name, value) in fields)
            entry[name] = value?.DeepClone();
        return entry.ToJsonString(Raw);
    }

    private static string Id(int number) => $"{Device}-{number}";

    private JsonObject Filled(JsonObject fields)
    {
        var filled = new JsonObject();
        foreach (var (name, schema) in fields)
            if (name is not "region" && Value(name, schema!.AsObject()) is { } value)
                filled[name] = value;
        return filled;
    }

    private JsonNode? Value(string name, JsonObject schema)
    {
        if (schema["anyOf"] is JsonArray any)
            return Value(name, any[0]!.AsObject());
        if (schema["enum"] is JsonArray words)
            return words[0]!.DeepClone();
        if ((string?)schema["$ref"] is { } kind)
            return kind.Split('/')[^1] switch
            {
                "text" => Text(),
                "name" => Name(name),
                "id" => Id(1),
                "instant" => begin.AddHours(9).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture),
                _ => null,
            };
        return (schema["type"] is JsonArray types ? (string)types[0]! : (string?)schema["type"]) switch
        {
            "string" => schema["pattern"] is null ? Text() : null,
            "array" when (string?)schema["items"]?["type"] == "string" => new JsonArray(Text(), Text()),
            "number" or "integer" => ((int)(double)schema["minimum"]! + (int)(double)schema["maximum"]!) / 2,
            "boolean" => true,
            "object" when name == "replace" => new JsonObject
            {
                ["note"] = Text(),
                ["alias"] = Text(),
                [Text()] = Text(),
            },
            _ => null,
        };
    }
}
