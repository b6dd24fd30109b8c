using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Text;
using Farhold.Physiology.Reference;
using Farhold.Rehearsal.Scenarios;
using Farhold.Rehearsal.Trust;

namespace Farhold.App.Rehearse;

/// <summary>A scenario as it is offered: what it will come to is not said.</summary>
/// <param name="Limbs">That have a wound.</param>
/// <param name="File">Its own text where it did not come with the app.</param>
public sealed record ScenarioOffer(
    string Id,
    string Title,
    string Briefing,
    ImmutableArray<Limb> Limbs,
    double AgeYears,
    double AirC,
    bool IsDark,
    ulong Seed,
    string? Zone,
    string? File
);

/// <summary>The scenarios at hand. Touched only once the model is loaded.</summary>
internal static class Shelf
{
    public static ImmutableArray<ScenarioOffer> Offers
    {
        [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
        get => [.. ShippedScenarios.All.Select(s => Offer(s, null))];
    }

    public static TrustShown Trust
    {
        [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
        get =>
            new(
                TrustText.Parts(),
                TrustText.Heads(),
                [.. TrustText.Groups().Select(g => (g.Title, g.Targets.Select(TrustText.Row).ToImmutableArray()))]
            );
    }

    /// <summary>How many courses of the model are checked to the bit.</summary>
    public static int Courses
    {
        [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
        get => BitGate.Names.Count();
    }

    /// <summary>Whether this phone works them out as the machine did that the model was tested on.</summary>
    /// <returns>After each piece: how many are worked out, and how many of them are not the same to the last bit.</returns>
    [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
    public static IEnumerable<(int Done, int Differing)> CheckBits() => BitGate.InPieces();

    public static Scenario Find(string id, string? file) =>
        file is null
            ? ShippedScenarios.All.First(s => s.Id == id)
            : ((Read<Scenario>.Usable)ScenarioReader.Read(Encoding.UTF8.GetBytes(file), id)).Value;

    /// <summary>The one of that very text, shipped or this phone's own; else one of that name; null where there is none.</summary>
    /// <param name="own">Files by their ids.</param>
    public static Scenario? Find(string id, string hash, IReadOnlyDictionary<string, string> own)
    {
        Scenario[] named =
        [
            .. ShippedScenarios.All.Where(s => s.Id == id),
            .. own.TryGetValue(id, out var file) && ScenarioReader.Read(Encoding.UTF8.GetBytes(file), id) is Read<Scenario>.Usable(var mine)
                ? [mine]
                : (Scenario[])[],
        ];
        return Array.Find(named, s => s.Hash == hash) ?? named.FirstOrDefault();
    }

    private static ScenarioOffer Offer(Scenario s, string? file) =>
        new(s.Id, s.Title, s.Briefing, s.Limbs, s.Casualty.AgeYears, s.Surroundings.AirC, s.Surroundings.Dark, s.Seed, s.Zone?.Id, file);
}
