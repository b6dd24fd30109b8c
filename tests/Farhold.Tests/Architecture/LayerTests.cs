using System.Xml.Linq;
using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Extensions;
using ArchUnitNET.Loader;

namespace Farhold.Tests.Architecture;

/// <summary>Each folder of a part is a namespace, and knows only itself and those before it in the part's list of layers.</summary>
/// <remarks>The lists are <c>eng/*.props</c>: what gives the code its usings gives the order too.</remarks>
public class LayerTests
{
    private static readonly Dictionary<string, Part> Parts = new()
    {
        ["Core"] = new("Core.props", typeof(Kind).Assembly),
        ["WayOut"] = new("WayOut.props", typeof(Plan).Assembly),
    };

    public static TheoryData<string> Names => [.. Parts.Keys];

    [Theory, MemberData(nameof(Names))]
    public void No_layer_knows_one_above_it(string name)
    {
        var part = Parts[name];
        string[] upward =
        [
            .. from type in part.Own
               from uses in type.Dependencies
               let target = uses.Target
               where part.Has(target) && part.Place(target) > part.Place(type)
               group uses by $"{type.FullName} knows {target.FullName}" into edges
               orderby edges.Key
               select edges.Key,
        ];
        Assert.True(upward.Length == 0, string.Join('\n', upward));
    }

    [Theory, MemberData(nameof(Names))]
    public void Every_type_is_in_a_layer(string name) =>
        Assert.Empty(Parts[name].Own.Where(t => Parts[name].Place(t) < 0).Select(t => t.FullName));

    [Theory, MemberData(nameof(Names))]
    public void Every_layer_has_types(string name) =>
        Assert.Empty(Parts[name].Layers.Except(Parts[name].Own.Select(t => t.Namespace.FullName)));

    private sealed class Part(string file, System.Reflection.Assembly assembly)
    {
        private readonly ArchUnitNET.Domain.Architecture code = new ArchLoader().LoadAssemblies(assembly).Build();

        public string[] Layers { get; } =
        [
            .. XDocument.Load(Path.Combine(AppContext.BaseDirectory, "eng", file)).Descendants("Using").Select(u => u.Attribute("Include")!.Value),
        ];

        public IEnumerable<IType> Own => code.Types.Where(Has);

        // Generic parameters of one name are one to the library, wherever they stand; what the compiler makes has no namespace of ours.
        public bool Has(IType type) => type is not GenericParameter && type.Assembly.Name.StartsWith(assembly.GetName().Name!, StringComparison.Ordinal)
            && type.Namespace?.FullName.StartsWith("Farhold", StringComparison.Ordinal) == true;

        public int Place(IType type) => Array.IndexOf(Layers, type.Namespace.FullName);
    }
}
