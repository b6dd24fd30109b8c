using System.Globalization;
using NodaTime;

namespace Farhold.App.Words;

/// <summary>
/// Numbers and dates as the language writes them. The app runs without the framework's cultures; what differs is in the texts.
/// </summary>
public static class Figures
{
    extension(Texts t)
    {
        /// <summary>At most two decimals, none that is zero: <c>36.5</c>, or <c>36,5</c>.</summary>
        public string Number(double value) => t.Marked(Say.Number(value));

        /// <summary>A number that is written already, with a point: its decimal mark becomes that of the language.</summary>
        public string Marked(string number) => number.Replace(".", t.DecimalMark, StringComparison.Ordinal);

        /// <summary>With so many decimals, also where they are zero: <c>37.0</c>.</summary>
        public string Fixed(double value, int decimals) => t.Marked(value.ToString("F" + decimals, CultureInfo.InvariantCulture));

        /// <summary><c>3 May</c>, <c>3. Mai</c>.</summary>
        public string Day(LocalDate date) => t.DayOfMonth(Whole(date.Day), t.Month(date));

        /// <summary><c>3 May 2031</c>.</summary>
        public string DayAndYear(LocalDate date) =>
            t.DayOfYear(Whole(date.Day), t.Month(date), date.Year.ToString("0000", CultureInfo.InvariantCulture));

        private string Month(LocalDate date) => t.Months.Split(' ')[date.Month - 1];
    }

    /// <summary>
    /// A place typed with decimal commas, with points instead: <c>46,558 N 8,562 E</c>. Only where there are two of them and no point,
    /// since one alone may part latitude from longitude.
    /// </summary>
    public static string Pointed(string place)
    {
        int[] commas =
        [
            .. Enumerable
                .Range(1, Math.Max(0, place.Length - 2))
                .Where(i => place[i] == ',' && char.IsAsciiDigit(place[i - 1]) && char.IsAsciiDigit(place[i + 1])),
        ];
        return commas.Length == 2 && !place.Contains('.', StringComparison.Ordinal)
            ? string.Concat(place.Select((c, i) => commas.Contains(i) ? '.' : c))
            : place;
    }

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
