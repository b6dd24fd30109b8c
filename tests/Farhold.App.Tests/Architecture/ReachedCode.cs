using Mono.Cecil;

namespace Farhold.App.Tests.Architecture;

/// <summary>Follows compiled code from what people use: what a method names, and what the methods it names do.</summary>
/// <remarks>Of a type that is reached, every override counts as called; so too much may be reached, never too little.</remarks>
public sealed class ReachedCode : IDisposable
{
    private static readonly string[] Roots = ["Farhold.App", "farhold", "Farhold.Hub", "Farhold.Documents"];

    private readonly ByName resolver = new();
    private readonly HashSet<TypeDefinition> types = [];
    private readonly HashSet<MethodDefinition> methods = [];
    private readonly Queue<MethodDefinition> next = new();

    public ReachedCode()
    {
        foreach (var folder in (string[])[AppContext.BaseDirectory, Beside("Farhold.Cli"), Beside("Farhold.Hub")])
            resolver.AddSearchDirectory(folder);
        foreach (var type in Roots.SelectMany(TypesOf))
        {
            Reach(type);
            foreach (var method in type.Methods)
                Reach(method);
        }

        while (next.TryDequeue(out var method))
            Follow(method);
    }

    /// <summary>Types of the part's own namespaces, not nested in others.</summary>
    /// <remarks>Constants are copied to where they are used, so a class of nothing else is left out.</remarks>
    public string[] Unreached(string part) =>
        [
            .. from type in TypesOf(part)
            where type.DeclaringType is null && type.Namespace.StartsWith("Farhold", StringComparison.Ordinal)
            where !type.Name.StartsWith('<') && !types.Contains(type) && !OnlyConstants(type)
            orderby type.FullName
            select type.FullName,
        ];

    public void Dispose() => resolver.Dispose();

    /// <summary>Where the same build put what this project only has built.</summary>
    private static string Beside(string project)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        return Path.Combine(folder.Parent!.Parent!.FullName, project, folder.Name);
    }

    private static bool OnlyConstants(TypeDefinition type) =>
        !type.IsEnum && type.Methods.Count == 0 && type.Fields.Count > 0 && type.Fields.All(f => f.IsLiteral);

    private IEnumerable<TypeDefinition> TypesOf(string assembly) =>
        resolver.Resolve(new AssemblyNameReference(assembly, null)).MainModule.GetTypes();

    private static bool IsOwn(TypeReference type) =>
        (type.Scope as ModuleDefinition)?.Assembly.Name.Name is { } inside ? IsOwn(inside) : IsOwn(type.Scope.Name);

    private static bool IsOwn(string assembly) => assembly.StartsWith("Farhold", StringComparison.OrdinalIgnoreCase);

    private void Follow(MethodDefinition method)
    {
        Reach(method.ReturnType);
        foreach (var parameter in method.Parameters)
            Reach(parameter.ParameterType);
        if (!method.HasBody)
            return;
        foreach (var variable in method.Body.Variables)
            Reach(variable.VariableType);
        foreach (var handler in method.Body.ExceptionHandlers)
            Reach(handler.CatchType);
        foreach (var instruction in method.Body.Instructions)
            switch (instruction.Operand)
            {
                case MethodReference named:
                    Reach(named);
                    break;
                case FieldReference named:
                    Reach(named.DeclaringType);
                    Reach(named.FieldType);
                    break;
                case TypeReference named:
                    Reach(named);
                    break;
            }
    }

    private void Reach(MethodReference method)
    {
        Reach(method.DeclaringType);
        if (method is GenericInstanceMethod generic)
            foreach (var argument in generic.GenericArguments)
                Reach(argument);
        if (method.DeclaringType is ArrayType || !IsOwn(method.DeclaringType.GetElementType()))
            return;
        if (method.Resolve() is { } own && methods.Add(own))
            next.Enqueue(own);
    }

    private void Reach(TypeReference? type)
    {
        if (type is null or GenericParameter)
            return;
        if (type is GenericInstanceType generic)
            foreach (var argument in generic.GenericArguments)
                Reach(argument);
        if (type is TypeSpecification specification)
            Reach(specification.ElementType);
        else if (IsOwn(type) && type.Resolve() is { } own && types.Add(own))
            Open(own);
    }

    private void Open(TypeDefinition type)
    {
        Reach(type.BaseType);
        Reach(type.DeclaringType);
        foreach (var attribute in type.CustomAttributes)
            Reach(attribute.AttributeType);
        foreach (var kept in type.Interfaces)
            Reach(kept.InterfaceType);
        foreach (var field in type.Fields)
            Reach(field.FieldType);
        foreach (var method in type.Methods.Where(m => m.IsVirtual || (m.IsConstructor && m.IsStatic)))
            Reach(method);
    }

    /// <summary>One definition for each name: asked for without a version, an assembly would else be read a second time.</summary>
    private sealed class ByName : DefaultAssemblyResolver
    {
        private readonly Dictionary<string, AssemblyDefinition> read = [];

        public override AssemblyDefinition Resolve(AssemblyNameReference name) =>
            read.TryGetValue(name.Name, out var known) ? known : read[name.Name] = base.Resolve(name);
    }
}
