using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Farhold.Sync;

namespace Farhold.App.Tests.Doubles;

/// <summary>A hub that holds one casualty in memory and speaks the real messages.</summary>
internal sealed class SmallHub
{
    public const string Id = "00112233445566778899aabbccddeeff";

    public LineSet Lines { get; } = new();

    /// <summary>What others have said exists; told on.</summary>
    public ImmutableSortedDictionary<string, int> Known { get; set; } = ImmutableSortedDictionary<string, int>.Empty;

    /// <summary>Every request is refused so; null: none is.</summary>
    public HubAnswer? Refusal { get; set; }

    public bool IsConfirmed { get; set; } = true;

    public string Role { get; set; } = "carer";

    public HubAnswer? Answer(string method, string path, ReadOnlyMemory<byte> body)
    {
        if (Refusal is not null)
            return Refusal;
        return path switch
        {
            "/hub/devices" or "/hub/me" => FakeHubLine.Good(
                JsonSerializer.Serialize(
                    new
                    {
                        thumb = new string('a', 64),
                        role = Role,
                        team = "Skarvedal watch",
                        name = "Ane",
                        digits = "482 913",
                        confirmed = IsConfirmed,
                    }
                )
            ),
            "/hub/casualties/find" => FakeHubLine.Good($"{{\"id\":\"{Id}\",\"opened\":{(Lines.Count == 0 ? "true" : "false")}}}"),
            $"/hub/casualties/{Id}/sync" => Sync(body),
            _ => null,
        };
    }

    private HubAnswer Sync(ReadOnlyMemory<byte> body)
    {
        var reader = new MessageReader(Lines, "message");
        Assert.True(reader.Push(body.Span), string.Join(' ', reader.Refusals));
        foreach (var line in reader.TakeLines())
            Lines.Add(line);
        using var stream = new MemoryStream();
        Outgoing.To(reader.Head, Lines, known: Known).Write(stream);
        return FakeHubLine.Good(Encoding.UTF8.GetString(stream.ToArray()));
    }
}
