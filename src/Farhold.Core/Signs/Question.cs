namespace Farhold.Signs;

/// <summary>A value in the record that is asked back: unknown until it is settled.</summary>
/// <param name="About">The entry that says it.</param>
/// <param name="Field">The field's name in the record.</param>
/// <param name="Text">The question, for a person.</param>
/// <param name="Contradicts">
/// It contradicts another value of the same look: it is no good news, but a bad one still acts. False: it is implausible by itself, and
/// says nothing.
/// </param>
/// <param name="Settled">Nothing is left to ask: somebody said which is right, or a later reading has taken its place.</param>
/// <param name="Believed">Somebody looked again and said that it is right: it counts like any other.</param>
/// <param name="BySaying">Saying so settles it; false where only another look does.</param>
public sealed record Question(EntryId About, string Field, string Text, bool Contradicts, bool Settled, bool Believed, bool BySaying)
{
    /// <summary>A <c>task.done</c> of this id says that somebody looked again, and that the value is right.</summary>
    public string Task => TaskOf(About, Field);

    public static string TaskOf(EntryId about, string field) => $"{Settle}{about}-{field}";

    /// <summary>The value that a task of this name asks back; null where it is another task.</summary>
    public static (EntryId About, string Field)? Parse(string task)
    {
        var dash = task.LastIndexOf('-');
        return
            dash > Settle.Length
            && task.StartsWith(Settle, StringComparison.Ordinal)
            && EntryId.TryParse(task.AsSpan(Settle.Length, dash - Settle.Length)) is { } about
            ? (about, task[(dash + 1)..])
            : null;
    }

    private const string Settle = "settle-";
}
