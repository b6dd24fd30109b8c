namespace Farhold.Exchange.HandOver;

/// <summary>An entry of the record as it counts.</summary>
/// <param name="Corrected">An amendment stands: what counts is not what was written first.</param>
/// <param name="Disputed">It depends on how the record's conflicts are read: there is another entry of this id, or of one that withdraws
/// it.</param>
public sealed record Stated(Dated Entry, bool Corrected, bool Disputed)
{
    public EntryId Id => Entry.Id;

    public Happened When => Entry.When;

    public string By => Entry.By;

    public Payload What => Entry.What;

    /// <summary>What it says, in one line.</summary>
    public string Text => EntryText.Of(What);

    public T As<T>()
        where T : Payload => Entry.As<T>();
}
