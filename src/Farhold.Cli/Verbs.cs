using Spectre.Console.Cli;

namespace Farhold.Cli;

/// <summary>The verbs as they are registered: what <c>help VERB</c> means, and which verb was meant by a mistyped one.</summary>
internal sealed class Verbs(IConfigurator config)
{
    private readonly List<string> names = ["keys"];

    public ICommandConfigurator Add<T>(string name)
        where T : class, ICommand
    {
        names.Add(name);
        return config.AddCommand<T>(name);
    }

    /// <summary><c>help tell</c> is <c>tell --help</c>; <c>help</c> alone is <c>--help</c>.</summary>
    public static string[] Asked(string[] args) => args is ["help", .. var rest] ? [.. rest, "--help"] : args;

    /// <summary>The verb that was meant, where one is near enough; null where none is, or it is one.</summary>
    public string? Meant(string typed) =>
        names.Contains(typed)
            ? null
            : names
                .Select(n => (Name: n, Apart: EditDistance.Between(n, typed.ToLowerInvariant())))
                .Where(n => n.Apart <= 2 && n.Apart < n.Name.Length - 1)
                .OrderBy(n => n.Apart)
                .ThenBy(n => n.Name, StringComparer.Ordinal)
                .Select(n => n.Name)
                .FirstOrDefault();
}
