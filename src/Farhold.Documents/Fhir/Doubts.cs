using System.Globalization;
using Farhold.Exchange.Document;
using Hl7.Fhir.Model;

namespace Farhold.Documents.Fhir;

/// <summary>Why the record may not be whole, each as a detected issue, so that a reader of the data alone is warned too.</summary>
internal static class Doubts
{
    public static IEnumerable<DetectedIssue> Of(CareRecord record, Draft draft)
    {
        var damaged = record.Damaged.ToLookup(d => Doubt.OfLine(d).Id);
        foreach (var doubt in record.Doubts.DistinctBy(d => d.Id))
            yield return Issue(draft, doubt.Id, "record-doubt", doubt.Text, damaged[doubt.Id].FirstOrDefault());

        // Two lines that read alike share a doubt; each is carried all the same.
        foreach (var line in damaged.SelectMany(g => g.Skip(1)))
            yield return Issue(draft, "line " + Names.OfContent(line.Raw), "record-doubt", Doubt.OfLine(line).Text, line);
        foreach (var (remark, number) in record.Remarks.Select((r, i) => (r, i)))
            yield return Issue(
                draft,
                $"remark {number} {remark.About} {remark.Text}",
                "record-remark",
                $"{remark.About}: {remark.Text}",
                null
            );
    }

    private static DetectedIssue Issue(Draft draft, string name, string code, string text, DamagedLine? damaged)
    {
        var issue = new DetectedIssue
        {
            Id = Names.Uuid($"issue {draft.Root} {name}"),
            Text = Legible.Narrative([text]),
            Status = ObservationStatus.Final,
            Code = Codes.Word(code, code.Replace('-', ' ')),
            Patient = draft.ToPatient,
            Detail = Legible.Text(text),
        };
        if (damaged is { } line)
        {
            issue.Identifier = [new(CarriedLine.Numbers, line.Number.ToString(CultureInfo.InvariantCulture))];
            Origins.Carry(issue, line.Raw);
        }

        return issue;
    }
}
