using System.Diagnostics;

namespace Farhold;

/// <summary>The formulary that ships with Farhold. It orders nothing.</summary>
public static class ShippedFormulary
{
    public const string FileName = "farhold-drugs.json";

    private static readonly Lazy<Formulary> Loaded = new(() => FormularyReader.Read(Shipped.File(FileName), FileName) switch
    {
        Read<Formulary>.Usable usable => usable.Value,
        Read<Formulary>.Refused refused => throw new InvalidOperationException(string.Join("; ", refused.Refusals)),
        _ => throw new UnreachableException(),
    });

    public static Formulary Formulary => Loaded.Value;
}
