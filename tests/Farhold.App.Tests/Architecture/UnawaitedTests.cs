using Microsoft.AspNetCore.Components;
using Mono.Cecil;

namespace Farhold.App.Tests.Architecture;

/// <summary>No failure is lost: what nobody awaits is begun in one place, which tells what becomes of it.</summary>
public sealed class UnawaitedTests : IDisposable
{
    private readonly AssemblyDefinition app = AssemblyDefinition.ReadAssembly(typeof(Root).Assembly.Location);

    private IEnumerable<MethodDefinition> Methods => app.MainModule.GetTypes().SelectMany(t => t.Methods);

    public void Dispose() => app.Dispose();

    [Fact]
    public void No_method_is_async_and_answers_nothing() =>
        Assert.Empty(
            Methods
                .Where(m => m.ReturnType.FullName == "System.Void")
                .Where(m => m.CustomAttributes.Any(a => a.AttributeType.Name == "AsyncStateMachineAttribute"))
                .Select(m => m.FullName)
        );

    [Fact]
    public void A_component_draws_itself_again_from_elsewhere_only_as_Redrawn_does() =>
        Assert.Equal(
            [typeof(Redrawn).FullName],
            from method in Methods
            where method.HasBody
            where
                method.Body.Instructions.Any(i =>
                    i.Operand is MethodReference { Name: "InvokeAsync" } called
                    && called.DeclaringType.FullName == typeof(ComponentBase).FullName
                )
            let type = method.DeclaringType.DeclaringType ?? method.DeclaringType
            group method by type.FullName into types
            select types.Key
        );
}
