using System.Reflection;
using Farhold.Tests.Architecture;
using Mono.Cecil;

namespace Farhold.Physiology.Tests.Architecture;

/// <summary>The part calls nothing whose last bit a platform may choose. That it stands alone is among the rules for all parts.</summary>
public class PurityTests
{
    private static readonly Assembly Part = typeof(CasualtySimulation).Assembly;
    private static readonly Layers Layers = new("Physiology.props", Part);

    /// <summary>Fixed to the last bit by IEEE 754, or a choice between two numbers.</summary>
    private static readonly string[] Allowed = ["Sqrt", "Floor", "Abs", "Min", "Max", "Clamp", "Round"];

    private static readonly string[] Forbidden =
    [
        "FusedMultiplyAdd",
        "MultiplyAddEstimate",
        "ReciprocalEstimate",
        "ReciprocalSqrtEstimate",
        "MultiplyAdd",
        "MultiplySubtract",
        "Lerp",
        "Exp",
        "Exp2",
        "Log",
        "Log2",
        "Pow",
        "Cbrt",
        "RootN",
        "Hypot",
        "Sin",
        "Cos",
        "SinCos",
        "Sum",
        "Dot",
    ];

    [Fact]
    public void No_layer_knows_one_above_it() => Assert.Empty(Layers.Upward());

    [Fact]
    public void Every_type_is_in_a_layer() => Assert.Empty(Layers.Outside());

    [Fact]
    public void Every_layer_has_types() => Assert.Empty(Layers.Empty());

    [Fact]
    public void Of_the_frameworks_arithmetic_only_the_exact_part_is_called() => Assert.Empty(Inexact(typeof(CasualtySimulation)));

    /// <summary>The analyser passes over a file of another name, and says nothing: one had such a name.</summary>
    [Fact]
    public void Files_of_banned_symbols_have_names_that_the_analyser_reads()
    {
        var files = Directory.GetFiles(Path.Combine(Repository.Root, "eng"), "*BannedSymbols*").Select(f => Path.GetFileName(f)!).ToArray();
        Assert.Equal(2, files.Length);
        Assert.All(files, f => Assert.Matches(@"^BannedSymbols\..*\.txt$", f));
    }

    /// <summary>This class calls some on purpose: the check must see them.</summary>
    [Fact]
    public void The_check_sees_what_is_inexact()
    {
        Assert.True(Math.Exp(1) > 2 && double.Exp2(1) > 1 && System.Numerics.Vector.Sum(System.Numerics.Vector<double>.One) > 0);
        var found = Inexact(typeof(PurityTests)).ToArray();
        Assert.Contains(found, f => f.EndsWith("Math::Exp", StringComparison.Ordinal));
        Assert.Contains(found, f => f.EndsWith("Double::Exp2", StringComparison.Ordinal));
        Assert.Contains(found, f => f.EndsWith("Vector::Sum", StringComparison.Ordinal));
    }

    [Fact]
    public void There_is_no_number_of_single_precision()
    {
        using var module = ModuleDefinition.ReadModule(Part.Location);
        Assert.DoesNotContain(module.GetTypes().SelectMany(t => t.Fields), f => f.FieldType.FullName == "System.Single");
        Assert.DoesNotContain(Bodies(module).SelectMany(m => m.Body.Variables), v => v.VariableType.FullName == "System.Single");
    }

    /// <summary>Calls in the module of <paramref name="type"/>; of the tests' own module in that class alone.</summary>
    private static string[] Inexact(Type type)
    {
        using var module = ModuleDefinition.ReadModule(type.Assembly.Location);
        return
        [
            .. from method in Bodies(module)
            where type.Assembly == Part || method.DeclaringType.FullName == type.FullName
            from instruction in method.Body.Instructions
            let called = instruction.Operand as MethodReference
            where called is not null && IsInexact(called)
            select $"{method.FullName} calls {called.DeclaringType.FullName}::{called.Name}",
        ];
    }

    private static bool IsInexact(MethodReference called) =>
        called.DeclaringType.FullName switch
        {
            "System.Math" => !Allowed.Contains(called.Name),
            "System.MathF" => true,
            var name => name.StartsWith("System.", StringComparison.Ordinal)
                && !name.StartsWith("System.Linq", StringComparison.Ordinal)
                && Forbidden.Contains(called.Name),
        };

    private static IEnumerable<MethodDefinition> Bodies(ModuleDefinition module) =>
        module.GetTypes().SelectMany(t => t.Methods).Where(m => m.HasBody);
}
