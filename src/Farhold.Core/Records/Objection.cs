namespace Farhold.Records;

/// <summary>Why a value can't be believed as it stands, and what to ask.</summary>
/// <param name="Field">The field's name in the record.</param>
/// <param name="Text">The question, for a person.</param>
/// <param name="Against">The field it contradicts; null where it is implausible by itself.</param>
/// <param name="BySaying">False: no living casualty has it, so only another look settles it.</param>
public sealed record Objection(string Field, string Text, string? Against = null, bool BySaying = true);
