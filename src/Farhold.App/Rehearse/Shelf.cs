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

/// <summary>The common fields of a scenario's text; null where the text says nothing of one, or nothing that can be read.</summary>
/// <param name="Start">An instant, as it stands there.</param>
/// <param name="Place">Of the first wound.</param>
/// <param name="Difficulty">Of holding the first wound, 0 to 1.</param>
/// <param name="TiedMinutes">How long before the start the tourniquet was tied.</param>
/// <param name="HelpMinutes">When higher care is likely, from the start.</param>
public sealed record ScenarioForm(
    string? Title,
    string? Briefing,
    string? Start,
    double? AgeYears,
    double? MassKg,
    Limb? Place,
    double? Difficulty,
    int? TiedMinutes,
    int? HelpMinutes
);

/// <summary>The scenarios at hand. Touched only once the model is loaded.</summary>
internal static class Shelf
{
    public static ImmutableArray<ScenarioOffer> Offers
    {
        [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
        get => [.. ShippedScenarios.All.Select(s => Offer(s, null))];
    }

    /// <summary>Those of this phone's carer; what can't be read any more is left out.</summary>
    /// <param name="files">Each by its id.</param>
    [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
    public static ImmutableArray<ScenarioOffer> OwnOffers(IEnumerable<(string Id, string File)> files) =>
        [
            .. files
                .Select(f => (f.File, Read: ScenarioReader.Read(Encoding.UTF8.GetBytes(f.File), f.Id) as Read<Scenario>.Usable))
                .Where(f => f.Read is not null)
                .Select(f => Offer(f.Read!.Value, f.File)),
        ];

    /// <summary>Whether a text is a scenario that can be kept among a carer's own.</summary>
    /// <returns>What it offers, or why it is of no use, each with its place.</returns>
    [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
    public static (ScenarioOffer? Offer, ImmutableArray<Refusal> Refusals) Check(string text) =>
        ScenarioReader.Read(Encoding.UTF8.GetBytes(text), "") switch
        {
            Read<Scenario>.Usable(var scenario) when ShippedScenarios.TextOf(scenario.Id) is not null => (
                null,
                [new("", 1, 1, $"{scenario.Id} is the name of a scenario that ships: give this one another under scenario")]
            ),
            Read<Scenario>.Usable(var scenario) => (Offer(scenario, text), []),
            Read<Scenario>.Refused(var why) => (null, why),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    /// <summary>A text to begin with: that of a scenario that ships, under another name, or an empty one.</summary>
    /// <param name="id">Null, or the id of one that ships.</param>
    [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
    public static string Begin(string? id) =>
        id is not null && ShippedScenarios.TextOf(id) is { } text ? ScenarioText.WithId(text, $"our-{id}") : ScenarioText.New;

    /// <summary>The common fields of a scenario's text.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
    public static ScenarioForm Form(string text) =>
        new(
            ScenarioText.Title(text),
            ScenarioText.Briefing(text),
            ScenarioText.Start(text),
            ScenarioText.AgeYears(text),
            ScenarioText.MassKg(text),
            ScenarioText.Place(text),
            ScenarioText.Difficulty(text),
            ScenarioText.TiedMinutes(text),
            ScenarioText.HelpMinutes(text)
        );

    /// <summary>The text with what differs in a form written into it.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)] // see RunFactory
    public static string Fill(string text, ScenarioForm form)
    {
        var was = Form(text);
        if (form.Title is { } title && title != was.Title)
            text = ScenarioText.WithTitle(text, title);
        if (form.Briefing is { } briefing && briefing != was.Briefing)
            text = ScenarioText.WithBriefing(text, briefing);
        if (form.Start is { } start && start != was.Start)
            text = ScenarioText.WithStart(text, start);
        if (form.AgeYears is { } age && age != was.AgeYears)
            text = ScenarioText.WithAgeYears(text, age);
        if (form.MassKg is { } mass && mass != was.MassKg)
            text = ScenarioText.WithMassKg(text, mass);
        if (form.Place is { } place && place != was.Place)
            text = ScenarioText.WithPlace(text, place);
        if (form.Difficulty is { } difficulty && difficulty != was.Difficulty)
            text = ScenarioText.WithDifficulty(text, difficulty);
        if (form.TiedMinutes is { } tied && tied != was.TiedMinutes)
            text = ScenarioText.WithTiedMinutes(text, tied);
        return form.HelpMinutes is { } help && help != was.HelpMinutes ? ScenarioText.WithHelpMinutes(text, help) : text;
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
        new(
            s.Id,
            s.ShownTitle,
            s.ShownBriefing,
            s.Limbs,
            s.Casualty.AgeYears,
            s.Surroundings.AirC,
            s.Surroundings.Dark,
            s.Seed,
            s.Zone?.Id,
            file
        );
}
