using Farhold.Hub.Tests.Harness;
using Xunit.Sdk;
using Xunit.v3;

[assembly: TestCollectionOrderer(typeof(LongFirst))]

namespace Farhold.Hub.Tests.Harness;

/// <summary>The classes with the longest tests begin, so that the run does not end with one of them alone.</summary>
public sealed class LongFirst : ITestCollectionOrderer
{
    private static readonly string[] Long =
    [
        nameof(AccessibilityTests),
        nameof(AttemptGeometryTests),
        nameof(CareStoryTests),
        nameof(KillTests),
    ];

    public IReadOnlyCollection<TTestCollection> OrderTestCollections<TTestCollection>(IReadOnlyCollection<TTestCollection> testCollections)
        where TTestCollection : ITestCollection =>
        [.. testCollections.OrderByDescending(c => Long.Any(l => c.TestCollectionDisplayName.Contains(l, StringComparison.Ordinal)))];
}
