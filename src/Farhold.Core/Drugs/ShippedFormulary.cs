namespace Farhold.Drugs;

/// <summary>The formulary that ships with Farhold. It orders nothing.</summary>
public static class ShippedFormulary
{
    public const string FileName = "farhold-drugs.json";

    private static readonly Lazy<Formulary> Loaded = new(() => Shipped.Load(FileName, FormularyReader.Read));

    public static Formulary Formulary => Loaded.Value;
}
