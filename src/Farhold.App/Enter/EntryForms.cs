using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Farhold.App.Enter;

/// <summary>
/// The form of every kind of entry that a person can make or correct: its fields are those of the record, their words and looks are in
/// <see cref="FieldLooks"/>.
/// </summary>
public static class EntryForms
{
    /// <summary>Made by the app, or by a form of their own.</summary>
    private static readonly ImmutableArray<Kind> NotByForm =
    [
        Kind.RulesStated,
        Kind.EntryAmended,
        Kind.EntryWithdrawn,
        Kind.OfNewerVersion,
    ];

    /// <summary>What is wanted most comes first; a kind that is not here, after them.</summary>
    private static readonly ImmutableArray<Kind> First =
    [
        Kind.TourniquetTightened,
        Kind.WoundFound,
        Kind.BleedingChecked,
        Kind.SignsTaken,
        Kind.CasualtyLookedOver,
        Kind.RegionLooked,
        Kind.InjuryStated,
        Kind.StepLooked,
        Kind.TourniquetSlackened,
        Kind.TourniquetRemoved,
        Kind.AttemptStarted,
        Kind.WoundPacked,
        Kind.PressureHeld,
        Kind.DressingApplied,
        Kind.AttemptEnded,
        Kind.HelpExpected,
        Kind.ContactTried,
        Kind.QuestionAsked,
        Kind.QuestionTaken,
        Kind.AdviceReceived,
        Kind.WatchStated,
        Kind.SuppliesStated,
        Kind.CasualtyMoved,
        Kind.PositionNoted,
        Kind.WeatherStated,
        Kind.StageNoted,
        Kind.DrugGiven,
        Kind.FluidGiven,
        Kind.UrineMeasured,
        Kind.TaskDone,
        Kind.Note,
        Kind.CasualtyOpened,
        Kind.CareEnded,
        Kind.OutcomeReported,
    ];

    private static readonly ConcurrentDictionary<Kind, ImmutableArray<FormField>> Known = [];

    /// <summary>In the order in which they are offered.</summary>
    public static ImmutableArray<Kind> Made { get; } = [.. First.Union(Enum.GetValues<Kind>()).Except(NotByForm)];

    /// <summary>Why a form can't be logged; what is missing by the name that stands above it.</summary>
    public static string Objection(Kind kind, string reason, Texts texts) =>
        Of(kind).FirstOrDefault(f => reason == $"the field {f.Wire} is missing") is { } field
            ? texts.FieldMissing(field.Label(texts))
            : reason;

    public static ImmutableArray<FormField> Of(Kind kind) => Known.GetOrAdd(kind, k => NotByForm.Contains(k) ? [] : Form(k));

    private static ImmutableArray<FormField> Form(Kind kind)
    {
        var first = FieldLooks.First(kind);
        return
        [
            .. Kinds
                .Fields(kind)
                .Where(f => !FieldLooks.Hidden.Contains(f.Name))
                .OrderBy(f => first.IndexOf(f.Name) is var place and >= 0 ? place : first.Length)
                .Select(f => Field(kind, f)),
        ];
    }

    private static FormField Field(Kind kind, EntryField field)
    {
        var look = FieldLooks.Of(kind, field.Name);
        return (field.Type, field.Name) switch
        {
            (FieldType.Name, "wound") => new FormField.Name(field.Name, look.Label, Wound: true, MayBeNew: kind == Kind.WoundFound),
            (FieldType.Name, "tourniquet") => new FormField.Name(
                field.Name,
                look.Label,
                Wound: false,
                MayBeNew: kind == Kind.TourniquetTightened
            ),
            (FieldType.Texts, "allows") => new FormField.Allows(field.Name, look.Label, Payload.AdviceReceived.AllowsAttempt),
            (FieldType.Text or FieldType.Name, _) => new FormField.Text(field.Name, look.Label, look.Long),
            (FieldType.Number, _) => new FormField.Number(field.Name, look.Label, field.Range!, look.Decimals),
            (FieldType.Flag, _) => new FormField.Flag(field.Name, look.Label),
            (FieldType.Word, _) => new FormField.Word(field.Name, look.Label, field.Words, look.Named),
            (FieldType.Time, _) => new FormField.Time(field.Name, look.Label),
            (FieldType.Texts, _) => new FormField.Lines(field.Name, look.Label),
            (FieldType.Id, _) => new FormField.Question(field.Name, look.Label),
            (FieldType.Object or FieldType.ByLimb, _) => new FormField.Group(
                field.Name,
                look.Label,
                [.. field.Members.Select(m => Field(kind, m))]
            ),
            _ => throw new System.Diagnostics.UnreachableException(field.Name),
        };
    }
}
