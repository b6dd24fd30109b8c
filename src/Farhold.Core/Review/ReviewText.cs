using NodaTime;

namespace Farhold.Review;

/// <summary>A look back as plain text, part by part, a line each.</summary>
public static class ReviewText
{
    public static void Write(LookBack look, TextWriter to, DateTimeZone? zone = null)
    {
        to.Write($"{ReviewWords.Caution}\n");
        foreach (var line in RulesWords.Of(look.Rules))
            to.Write($"{line}\n");
        foreach (var (title, kinds) in ReviewWords.Parts)
            Part(title, look.Points.Where(p => kinds.Contains(p.Kind)));
        Part(ReviewTexts.AsAsked, look.Right);
        var missing = ReviewWords.NotShown(look).ToArray();
        if (missing.Length > 0)
            to.Write("\n" + ReviewTexts.NotInRecord(string.Join("; ", missing)) + "\n");
        to.Write("\n" + ReviewTexts.UpTo(Say.Time(look.Until, zone)) + "\n");

        void Part(string name, IEnumerable<ReviewPoint> points)
        {
            var all = points.ToArray();
            if (all.Length == 0)
                return;
            to.Write($"\n{name}\n");
            foreach (var point in all)
                to.Write($"  {When(point, zone)}  {ReviewWords.Of(point, zone)}\n");
        }
    }

    /// <summary>When it was, or began where it lasted.</summary>
    private static string When(ReviewPoint point, DateTimeZone? zone) =>
        point.Kind is ReviewKind.NoSigns or ReviewKind.NoLimbCheck or ReviewKind.WrittenLate
            ? Say.Time(point.When.Earliest, zone)
            : Say.Time(point.When, zone);
}
