using System.Collections.Immutable;

namespace Farhold.App.First;

/// <summary>What can be logged for a casualty from plain HTML, before the app is up (wwwroot/first-taps.js).</summary>
/// <param name="Withdrawal">An entry that withdraws another; its target is filled in.</param>
/// <remarks>
/// Kept on the phone as <c>{"v":1,"casualty","words":{…},"withdrawal":{…},"quicks":[{"title","groups":[{"label",
/// "options":[{"text","said","entry":{…},"takes"?,"advice"?}]}]}]}</c>. Entries are as the store takes them, with a time
/// that the tap replaces.
/// </remarks>
public sealed record FirstTaps(string Casualty, string Withdrawal, ImmutableArray<FirstQuick> Quicks)
{
    private const string Key = "first-taps";
    private const int Version = 1;

    public static void Forget(IPhone phone) => phone.Set(Key, "");

    /// <returns>False if the phone has no room for it.</returns>
    public bool Save(IPhone phone, Texts texts) =>
        phone.Set(
            Key,
            Json.Text(w =>
            {
                w.WriteNumber("v", Version);
                w.WriteString("casualty", Casualty);
                w.WriteStartObject("words");
                foreach (var (name, text) in texts.FirstTapWords)
                    w.WriteString(name, text);
                w.WriteEndObject();
                w.WritePropertyName("withdrawal");
                w.WriteRawValue(Withdrawal);
                w.WriteStartArray("quicks");
                foreach (var quick in Quicks)
                {
                    w.WriteStartObject();
                    w.WriteString("title", quick.Title);
                    w.WriteStartArray("groups");
                    foreach (var group in quick.Groups)
                    {
                        w.WriteStartObject();
                        w.WriteString("label", group.Label);
                        w.WriteStartArray("options");
                        foreach (var option in group.Options)
                        {
                            w.WriteStartObject();
                            w.WriteString("text", option.Text);
                            w.WriteString("said", option.Said);
                            w.WritePropertyName("entry");
                            w.WriteRawValue(option.Entry);
                            if (option.Takes is { } name)
                                w.WriteString("takes", name);
                            if (option.Advice is { } advice)
                                w.WriteString("advice", advice);
                            w.WriteEndObject();
                        }
                        w.WriteEndArray();
                        w.WriteEndObject();
                    }
                    w.WriteEndArray();
                    w.WriteEndObject();
                }
                w.WriteEndArray();
            })
        );
}

public sealed record FirstQuick(string Title, ImmutableArray<FirstGroup> Groups);

/// <param name="Label">Empty where there is one group only.</param>
public sealed record FirstGroup(string Label, ImmutableArray<FirstOption> Options);

/// <param name="Said">What is confirmed once the entry is on disk.</param>
/// <param name="Entry">The entry as JSON, without its id.</param>
/// <param name="Takes">The new name it gives away: no second option may give away the same one.</param>
/// <param name="Advice">What to do at once; null for nothing.</param>
public sealed record FirstOption(string Text, string Said, string Entry, string? Takes, string? Advice);
