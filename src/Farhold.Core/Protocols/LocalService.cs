using System.Collections.Immutable;

namespace Farhold.Protocols;

/// <summary>Terms for which a service may have a word of its own; the shipped one stays beside it.</summary>
public enum Term
{
    Adviser,
    Tourniquet,
    Conversion,
    ReSiting,
    PressureDressing,
    Litter,
    Shelter,
    HigherCare,
    HandOver,
}

/// <summary>What a service says of itself: whom to call and when, its numbers, what is written on its boxes, its words.</summary>
/// <param name="StockNames">By the id of a kit item or of a drug.</param>
public sealed record LocalService(
    ImmutableArray<Contact> Contacts,
    ImmutableArray<EmergencyNumber> Emergency,
    ImmutableSortedDictionary<string, string> StockNames,
    ImmutableSortedDictionary<Term, string> Words
)
{
    public static readonly LocalService None = new(
        [],
        [],
        ImmutableSortedDictionary<string, string>.Empty,
        ImmutableSortedDictionary<Term, string>.Empty
    );
}
