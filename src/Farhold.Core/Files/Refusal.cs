using System.Collections.Immutable;
using System.Globalization;

namespace Farhold.Files;

/// <summary>Why something from outside can't be used, where, in a sentence a person can act on.</summary>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1, counted in characters.</param>
public sealed record Refusal(string File, int Line, int Column, string Reason)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}: {Reason}");
}

/// <summary>What came of reading something from outside: usable, or refused with every reason in file order.</summary>
public abstract record Read<T>
{
    private Read() { }

    public sealed record Usable(T Value) : Read<T>;

    public sealed record Refused(ImmutableArray<Refusal> Refusals) : Read<T>;
}
