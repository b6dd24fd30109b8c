using System.Collections.Immutable;

namespace Farhold.Exchange.HandOver;

/// <summary>Who the casualty is, as far as the record says. Nothing in a list: not known; several: the record disagrees.</summary>
/// <param name="Allergies">Every allergy ever stated; empty: asked, none known. Null: nobody asked.</param>
/// <param name="Medicines">Likewise.</param>
public sealed record Person(
    ImmutableArray<string> Aliases,
    ImmutableArray<Sex> Sexes,
    ImmutableArray<double> AgesYears,
    ImmutableArray<double> MassesKg,
    ImmutableArray<string>? Allergies,
    ImmutableArray<string>? Medicines,
    ImmutableArray<string> Histories
)
{
    internal static Person Of(Source source)
    {
        ImmutableArray<T> Last<T>(Func<Payload.CasualtyOpened, T?> of)
            where T : struct =>
            [
                .. source
                    .Last(Kind.CasualtyOpened, p => of((Payload.CasualtyOpened)p) is not null)
                    .Select(s => of(s.As<Payload.CasualtyOpened>())!.Value)
                    .Distinct(),
            ];

        ImmutableArray<string> LastText(Func<Payload.CasualtyOpened, string?> of) =>
            [
                .. source
                    .Last(Kind.CasualtyOpened, p => of((Payload.CasualtyOpened)p) is not null)
                    .Select(s => of(s.As<Payload.CasualtyOpened>())!)
                    .Distinct(),
            ];

        // An allergy once stated stays until its entry is amended or withdrawn, whatever a later opening leaves out.
        ImmutableArray<string>? Ever(Func<Payload.CasualtyOpened, ImmutableArray<string>> of)
        {
            var stated = source.Of(Kind.CasualtyOpened).Select(s => of(s.As<Payload.CasualtyOpened>())).Where(a => !a.IsDefault).ToArray();
            return stated.Length == 0 ? null : [.. stated.SelectMany(a => a).Distinct()];
        }

        return new(
            LastText(o => o.Alias),
            Last(o => o.Sex),
            Last(o => o.AgeYears),
            Last(o => o.MassKg),
            Ever(o => o.Allergies),
            Ever(o => o.Medicines),
            LastText(o => o.History)
        );
    }
}
