using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.CSharp;

namespace Farhold.TextGenerator;

/// <summary>
/// What a text asks to be given: <c>{0:name}</c> is a text, <c>{0:#name}</c> a whole number; a translation may say <c>{0}</c>.
/// </summary>
/// <remarks>
/// A bar parts two forms. The first stands where every number that it leaves out is one: <c>1 entry|{0:#count} entries</c>.
/// </remarks>
internal sealed class Wording
{
    private static readonly Regex Mark = new(
        "\\{(?<number>[0-9])(:(?<name>#?[a-z][A-Za-z0-9]*))?\\}",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture
    );

    private Wording(IReadOnlyList<Parameter> parameters, IReadOnlyList<int> one, string format)
    {
        Parameters = parameters;
        One = one;
        Format = format;
    }

    public IReadOnlyList<Parameter> Parameters { get; }

    /// <summary>The numbers that must be one for the first of two forms to stand; empty where there is one form.</summary>
    public IReadOnlyList<int> One { get; }

    /// <summary>As <see cref="string.Format(IFormatProvider, string, object[])"/> wants it, both forms.</summary>
    public string Format { get; }

    /// <param name="english">What English asks for, of which a translation may leave out the names.</param>
    /// <exception cref="WordingException">The text can't be used.</exception>
    public static Wording Of(string text, Wording? english)
    {
        if (string.IsNullOrWhiteSpace(text))
            throw new WordingException(Faults.Empty, "");
        var forms = text.Split('|');
        if (forms.Length > 2 || forms.Any(string.IsNullOrWhiteSpace))
            throw new WordingException(Faults.Forms, "a bar parts two forms, and neither is empty");
        if (Mark.Replace(text, "").IndexOfAny(['{', '}']) >= 0)
            throw new WordingException(Faults.Placeholder, "a placeholder is {0:name} for a text or {0:#name} for a number");
        var parameters = Named(text, english);
        if (english is not null && !parameters.SequenceEqual(english.Parameters))
            throw new WordingException(Faults.Differs, $"English has {Listed(english.Parameters)}, this has {Listed(parameters)}");
        var one = LeftOut(forms, parameters);
        if (english is not null && !one.SequenceEqual(english.One))
            throw new WordingException(Faults.Forms, "English has other forms, or its first form leaves out other numbers");
        return new Wording(parameters, one, Mark.Replace(text, m => $"{{{m.Groups["number"].Value}}}"));
    }

    private static List<Parameter> Named(string text, Wording? english)
    {
        var named = new SortedDictionary<int, string>();
        foreach (Match mark in Mark.Matches(text))
        {
            var number = int.Parse(mark.Groups["number"].Value, CultureInfo.InvariantCulture);
            var name =
                mark.Groups["name"] is { Success: true } said ? said.Value
                : english is null ? throw new WordingException(Faults.Placeholder, $"{mark.Value} has no name")
                : number < english.Parameters.Count ? english.Parameters[number].Mark
                : "";
            if (named.TryGetValue(number, out var before) && before != name)
                throw new WordingException(Faults.Placeholder, $"{{{number}}} is named both {before} and {name}");
            named[number] = name;
        }

        for (var number = 0; number < named.Count; number++)
            if (!named.ContainsKey(number))
                throw new WordingException(
                    english is null ? Faults.Gap : Faults.Differs,
                    $"there is {{{named.Keys.Last()}}}, but no {{{number}}}"
                );
        var parameters = named.Values.Select(m => new Parameter(m)).ToList();
        if (parameters.Select(p => p.Name).Distinct(StringComparer.Ordinal).Count() < parameters.Count)
            throw new WordingException(Faults.Placeholder, "two placeholders have one name");
        if (parameters.FirstOrDefault(p => SyntaxFacts.GetKeywordKind(p.Name) != SyntaxKind.None) is { } keyword)
            throw new WordingException(Faults.Placeholder, $"{keyword.Name} is a word of C#");
        return parameters;
    }

    private static int[] LeftOut(string[] forms, List<Parameter> parameters)
    {
        if (forms.Length == 1)
            return [];
        var all = Enumerable.Range(0, parameters.Count).ToList();
        if (!all.TrueForAll(n => Has(forms[1], n)))
            throw new WordingException(Faults.Forms, "the form for several leaves out a placeholder");
        int[] one = [.. all.Where(n => !Has(forms[0], n))];
        if (one.Length == 0 || one.Any(n => !parameters[n].IsNumber))
            throw new WordingException(Faults.Forms, "the form for one leaves out the numbers that are one, and nothing else");
        return one;
    }

    private static bool Has(string form, int number) =>
        Mark.Matches(form).Cast<Match>().Any(m => m.Groups["number"].Value == number.ToString(CultureInfo.InvariantCulture));

    private static string Listed(IReadOnlyList<Parameter> parameters) =>
        parameters.Count == 0 ? "no placeholder" : string.Join(", ", parameters.Select((p, n) => $"{{{n}:{p.Mark}}}"));
}

/// <summary>Why a text can't be used.</summary>
internal sealed class WordingException(Microsoft.CodeAnalysis.DiagnosticDescriptor fault, string what) : Exception(what)
{
    public Microsoft.CodeAnalysis.DiagnosticDescriptor Fault { get; } = fault;
}
