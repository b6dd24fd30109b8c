using System.Reflection;

namespace Farhold.Tests.Architecture;

/// <summary>The rules of the house about what may use what, and about types nobody may extend.</summary>
public class ArchitectureTests
{
    /// <summary>Beside the framework's own assemblies.</summary>
    private static readonly Dictionary<string, string[]> MayUse = new()
    {
        ["Farhold.Core"] = ["NodaTime"],
        ["Farhold.WayOut"] = ["NodaTime", "Farhold.Core"],
        ["Farhold.Physiology"] = [],
        ["Farhold.Sync"] = ["NodaTime", "Farhold.Core"],
        ["Farhold.Exchange"] = ["NodaTime", "Farhold.Core", "QRCoder"],
    };

    public static TheoryData<string> Parts => [.. MayUse.Keys];

    [Theory, MemberData(nameof(Parts))]
    public void A_part_uses_only_what_it_may(string part) =>
        Assert.Empty(
            Assembly
                .Load(part)
                .GetReferencedAssemblies()
                .Select(a => a.Name!)
                .Where(n => !n.StartsWith("System", StringComparison.Ordinal) && n != "netstandard")
                .Except(MayUse[part])
        );

    /// <summary>
    /// The framework's XML weighs a twentieth of the app; what reads XML on the phone is a script (docs/decisions/reading-gpx.md).
    /// </summary>
    [Theory, MemberData(nameof(Parts))]
    public void No_part_that_goes_to_the_phone_uses_the_frameworks_xml(string part) =>
        Assert.DoesNotContain(Assembly.Load(part).GetReferencedAssemblies(), a => a.Name!.Contains("Xml", StringComparison.Ordinal));

    [Theory, MemberData(nameof(Parts))]
    public void Public_classes_are_sealed_static_or_closed_families(string part) =>
        Assert.Empty(Assembly.Load(part).GetExportedTypes().Where(t => t.IsClass && !t.IsSealed && !Closed(t)).Select(t => t.FullName));

    [Theory, MemberData(nameof(Parts))]
    public void Public_structs_are_read_only(string part) =>
        Assert.Empty(
            Assembly
                .Load(part)
                .GetExportedTypes()
                .Where(t =>
                    t is { IsValueType: true, IsEnum: false }
                    && !t.IsDefined(typeof(System.Runtime.CompilerServices.IsReadOnlyAttribute), false)
                )
                .Select(t => t.FullName)
        );

    /// <summary>Abstract, and only what is nested in it, or stands in its own part, can derive from it.</summary>
    private static bool Closed(Type type) =>
        type.IsAbstract
        && type.GetConstructors(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic)
            .All(c => c.IsPrivate || c.IsFamilyAndAssembly || c.GetParameters() is [var copied] && copied.ParameterType == type);
}
