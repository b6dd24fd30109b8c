using NodaTime;

namespace Farhold.Values;

/// <summary>Where a figure comes from, and how well that is known.</summary>
/// <param name="Known"><c>read</c>, <c>read-2</c> (seen in a secondary text), <c>memory</c>, <c>design</c> or <c>common
/// practice</c>.</param>
public sealed record Source(string Key, string Title, string Known);

/// <summary>Who authorises a local protocol, in what role, and on what day.</summary>
public sealed record Authority(string Name, string Role, LocalDate Date);
