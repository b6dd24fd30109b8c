using System.Reflection;
using Farhold.Tests.Architecture;

namespace Farhold.Rehearsal.Tests;

public class ArchitectureTests
{
    private static readonly Assembly Part = typeof(Scenario).Assembly;
    private static readonly Layers Layers = new("Rehearsal.props", Part);

    [Fact]
    public void It_knows_the_core_and_the_casualty_model_and_nothing_else() =>
        Assert.Empty(
            Part.GetReferencedAssemblies()
                .Select(a => a.Name!)
                .Where(n => !n.StartsWith("System", StringComparison.Ordinal) && n != "netstandard")
                .Except(["NodaTime", "Farhold.Core", "Farhold.Physiology"])
        );

    [Fact]
    public void No_layer_knows_one_above_it() => Assert.Empty(Layers.Upward());

    [Fact]
    public void Every_type_is_in_a_layer() => Assert.Empty(Layers.Outside());
}
