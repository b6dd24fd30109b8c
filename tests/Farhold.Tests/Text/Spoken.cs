using System.Globalization;

namespace Farhold.Tests.Text;

internal static class Spoken
{
    /// <summary>What is said where a culture is spoken.</summary>
    public static T In<T>(string culture, Func<T> said)
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = new CultureInfo(culture);
            return said();
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }
}
