using Microsoft.CodeAnalysis;

namespace Farhold.TextGenerator;

/// <summary>What can be wrong with a file of texts. Each fails the build, at its line.</summary>
internal static class Faults
{
    public static DiagnosticDescriptor Unreadable { get; } = Fault(1, "{0}: a file of texts is one JSON object of strings");

    public static DiagnosticDescriptor Key { get; } = Fault(2, "{0} can't be a key: {1}");

    public static DiagnosticDescriptor Empty { get; } = Fault(3, "{0} has no text{1}");

    public static DiagnosticDescriptor Placeholder { get; } = Fault(4, "{0} has a malformed placeholder: {1}");

    public static DiagnosticDescriptor Gap { get; } = Fault(5, "{0} numbers its placeholders with a gap: {1}");

    public static DiagnosticDescriptor Forms { get; } = Fault(6, "{0} has wrong forms: {1}");

    public static DiagnosticDescriptor Missing { get; } = Fault(7, "{0} is in {1}, but not here");

    public static DiagnosticDescriptor Extra { get; } = Fault(8, "{0} is not in {1}");

    public static DiagnosticDescriptor Differs { get; } = Fault(9, "{0} has other placeholders than in English: {1}");

    public static DiagnosticDescriptor Name { get; } = Fault(10, "{0}: {1}");

    public static DiagnosticDescriptor Order { get; } =
        Fault(11, "{0} stands at another place than in {1}; what is fetched is read in order");

    private static DiagnosticDescriptor Fault(int number, string says) =>
        new($"TEXT{number:000}", "A text can't be used", says, "Texts", DiagnosticSeverity.Error, isEnabledByDefault: true);
}
