namespace Farhold.Text;

/// <summary>The program by name and version, for what it shows and what it writes.</summary>
public static class Product
{
    /// <summary>The one of Directory.Build.props, such as 0.1.0.</summary>
    public static string Version { get; } = typeof(Product).Assembly.GetName().Version!.ToString(3);

    public static string Named { get; } = "Farhold " + Version;
}
