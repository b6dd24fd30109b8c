using System.Xml.Linq;
using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Extensions;
using ArchUnitNET.Loader;

namespace Farhold.Tests.Architecture;

/// <summary>The layers of a part: its namespaces, from the lowest up, as <c>eng/*.props</c> lists them.</summary>
internal sealed class Layers
{
    private readonly string assembly;
    private readonly string[] names;
    private readonly IType[] own;

    public Layers(string file, System.Reflection.Assembly part)
    {
        assembly = part.GetName().Name!;
        names =
        [
            .. XDocument.Load(Path.Combine(Repository.Root, "eng", file)).Descendants("Using").Select(u => u.Attribute("Include")!.Value),
        ];
        own = [.. new ArchLoader().LoadAssemblies(part).Build().Types.Where(Has)];
    }

    /// <summary>What knows a layer above its own.</summary>
    public string[] Upward() =>
        [
            .. from type in own
            from uses in type.Dependencies
            let target = uses.Target
            where Has(target) && Place(target) > Place(type)
            group uses by $"{type.FullName} knows {target.FullName}" into edges
            orderby edges.Key
            select edges.Key,
        ];

    /// <summary>Types that no layer holds.</summary>
    public IEnumerable<string> Outside() => own.Where(t => Place(t) < 0).Select(t => t.FullName);

    /// <summary>Layers that hold no type.</summary>
    public IEnumerable<string> Empty() => names.Except(own.Select(t => t.Namespace.FullName));

    // Generic parameters of one name are one to the library, wherever they stand; what the compiler makes has no namespace of ours.
    private bool Has(IType type) =>
        type is not GenericParameter
        && type.Assembly.Name.StartsWith(assembly, StringComparison.Ordinal)
        && type.Namespace?.FullName.StartsWith("Farhold", StringComparison.Ordinal) == true;

    private int Place(IType type) => Array.IndexOf(names, type.Namespace.FullName);
}
