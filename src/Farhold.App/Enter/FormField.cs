using System.Collections.Immutable;

namespace Farhold.App.Enter;

/// <summary>One field of an entry form.</summary>
/// <param name="Wire">Its name in the record.</param>
public abstract record FormField(string Wire, Func<Texts, string> Label)
{
    private FormField()
        : this("", _ => "") { }

    /// <param name="Named">A word as it stands on its button; null: as in the record.</param>
    public sealed record Word(
        string Wire,
        Func<Texts, string> Label,
        ImmutableArray<string> Words,
        Func<Texts, string, string>? Named = null
    ) : FormField(Wire, Label)
    {
        public string Button(string word, Texts texts) => Named?.Invoke(texts, word) ?? Labels.Plain(word);
    }

    /// <summary>The name of a wound or tourniquet.</summary>
    /// <param name="MayBeNew">Else it has to be one that the record knows.</param>
    public sealed record Name(string Wire, Func<Texts, string> Label, bool Wound, bool MayBeNew) : FormField(Wire, Label);

    public sealed record Number(string Wire, Func<Texts, string> Label, FieldRange Range, int Decimals) : FormField(Wire, Label);

    /// <param name="Long">Several lines.</param>
    public sealed record Text(string Wire, Func<Texts, string> Label, bool Long = false) : FormField(Wire, Label);

    /// <summary>Yes, no, or not given.</summary>
    public sealed record Flag(string Wire, Func<Texts, string> Label) : FormField(Wire, Label);

    /// <summary>A time that may lie ahead.</summary>
    public sealed record Time(string Wire, Func<Texts, string> Label) : FormField(Wire, Label);

    /// <summary>Several texts, one a line.</summary>
    public sealed record Lines(string Wire, Func<Texts, string> Label) : FormField(Wire, Label);

    /// <summary>A list that holds the word, is expressly empty, or is not given.</summary>
    public sealed record Allows(string Wire, Func<Texts, string> Label, string What) : FormField(Wire, Label);

    /// <summary>The id of a question that was asked.</summary>
    public sealed record Question(string Wire, Func<Texts, string> Label) : FormField(Wire, Label);

    /// <summary>An object of fields.</summary>
    public sealed record Group(string Wire, Func<Texts, string> Label, ImmutableArray<FormField> Fields) : FormField(Wire, Label);
}
