using System.Collections.Immutable;

namespace Farhold.Protocols;

/// <summary>Somebody to be asked: an adviser of the service.</summary>
/// <param name="Role">The office in which they answer, as <see cref="Allowance"/> names it.</param>
/// <param name="Hours">When they can be reached; null: at any hour.</param>
public sealed record Contact(string Name, string Role, ImmutableArray<ContactWay> Ways, ContactHours? Hours);

public enum ContactChannel
{
    Phone,
    Satellite,
    Message,
    Radio,
}

/// <param name="To">A number to dial; by radio the call sign.</param>
/// <param name="On">The radio channel; null for a number.</param>
public sealed record ContactWay(ContactChannel By, string To, string? On);

/// <summary>A number for emergencies, beside the advisers.</summary>
public sealed record EmergencyNumber(string Name, string Number);
