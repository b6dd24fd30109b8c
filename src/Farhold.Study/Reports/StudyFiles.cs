using System.Text;

namespace Farhold.Study.Reports;

/// <summary>The files of a report: text, page, tables for a spreadsheet, pictures.</summary>
public static class StudyFiles
{
    /// <summary>Name and content of each.</summary>
    public static IEnumerable<(string Name, string Content)> Of(StudyResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var report = new StudyReport(result);
        using var text = new StringWriter();
        report.Write(text);
        yield return ("report.txt", text.ToString());
        yield return ("tables.md", Page(report));
        foreach (var table in report.Full())
            yield return ($"{table.Id}.csv", table.Csv());
        foreach (var (name, svg) in StudyPictures.Of(result))
            yield return ($"{name}.svg", svg);
    }

    private static string Page(StudyReport report)
    {
        var page = new StringBuilder();
        foreach (var line in report.Head())
            page.Append(line).Append(line.Length > 0 ? "\n\n" : "");
        foreach (var table in report.Short())
            page.Append(table.Markdown()).Append('\n');
        return page.Append(StudyTexts.Unknown).Append('\n').ToString();
    }
}
