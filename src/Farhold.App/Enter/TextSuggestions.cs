namespace Farhold.App.Enter;

/// <summary>What a text of a form most likely is, to be tapped: nothing is typed that can be chosen.</summary>
public static class TextSuggestions
{
    /// <summary>Units of an amount as they stand on boxes and in orders (common practice).</summary>
    private static readonly string[] Units = ["mg", "g", "µg", "mL", "IU", "tablet"];

    public static IReadOnlyList<Choice<string>> For(Kind kind, string field, CareDesk desk, Texts texts) =>
        (kind, field) switch
        {
            (Kind.DrugGiven, "drug") =>
            [
                .. desk
                    .Rules.Formulary.Drugs.Select(d => Generic(d.Id))
                    .Distinct(StringComparer.Ordinal)
                    .Select(n => new Choice<string>(n, Shown(n, desk))),
            ],
            (Kind.DrugGiven, "unit") => [.. Units.Select(u => new Choice<string>(u, u))],
            (Kind.DrugGiven, "route") =>
            [
                new("mouth", texts.RouteMouth),
                new("vein", texts.RouteVein),
                new("muscle", texts.RouteMuscle),
                new("bone", texts.RouteBone),
                new("nose", texts.RouteNose),
                new("cheek", texts.RouteCheek),
                new("skin", texts.RouteSkin),
                new("breathed", texts.RouteBreathed),
            ],
            _ => [],
        };

    // One drug has an entry for each way of giving it; the way is asked for beside it.
    private static string Generic(string id) =>
        id.Replace("-vein", "", StringComparison.Ordinal)
            .Replace("-muscle", "", StringComparison.Ordinal)
            .Replace("-lozenge", "", StringComparison.Ordinal)
            .Replace('-', ' ');

    private static string Shown(string name, CareDesk desk) => name + (desk.Rules.Formulary.Named(name)?.OnBox ?? "");
}
