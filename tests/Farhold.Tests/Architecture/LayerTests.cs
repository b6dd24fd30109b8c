using System.Xml.Linq;
using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Extensions;
using ArchUnitNET.Loader;

namespace Farhold.Tests.Architecture;

/// <summary>Each folder of a part is a namespace, and knows only itself and those before it in the part's list of layers.</summary>
/// <remarks>The list is <c>eng/Core.props</c>: what gives the code its usings gives the order too.</remarks>
public class LayerTests
{
    private static readonly string[] Layers =
    [
        .. XDocument.Load(Path.Combine(AppContext.BaseDirectory, "eng", "Core.props")).Descendants("Using").Select(u => u.Attribute("Include")!.Value),
    ];

    private static readonly ArchUnitNET.Domain.Architecture Core = new ArchLoader().LoadAssemblies(typeof(Kind).Assembly).Build();

    [Fact]
    public void No_layer_knows_one_above_it()
    {
        string[] upward =
        [
            .. from type in Own
               from uses in type.Dependencies
               let target = uses.Target
               where IsOwn(target) && Place(target) > Place(type)
               group uses by $"{type.FullName} knows {target.FullName}" into edges
               orderby edges.Key
               select edges.Key,
        ];
        Assert.True(upward.Length == 0, string.Join('\n', upward));
    }

    [Fact]
    public void Every_type_is_in_a_layer() => Assert.Empty(Own.Where(t => Place(t) < 0).Select(t => t.FullName));

    [Fact]
    public void Every_layer_has_types() => Assert.Empty(Layers.Except(Own.Select(t => t.Namespace.FullName)));

    private static IEnumerable<IType> Own => Core.Types.Where(IsOwn);

    // Generic parameters of one name are one to the library, wherever they stand.
    private static bool IsOwn(IType type) =>
        type is not GenericParameter && type.Namespace?.FullName.StartsWith("Farhold", StringComparison.Ordinal) == true;

    private static int Place(IType type) => Array.IndexOf(Layers, type.Namespace.FullName);
}
