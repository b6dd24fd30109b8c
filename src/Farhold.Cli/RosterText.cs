using NodaTime;

namespace Farhold.Cli;

/// <summary>A roster for a person: watch by watch what falls into it, then who sleeps how much.</summary>
internal static class RosterText
{
    public static IEnumerable<string> Of(TaskRoster roster, DateTimeZone zone)
    {
        yield return "Watches:";
        foreach (var watch in roster.Watches)
        {
            yield return $"  {watch.Who}: {Say.Time(watch.From, zone)} to {Say.Time(watch.To, zone)}";
            foreach (var task in roster.Tasks.Where(t => t.At >= watch.From && t.At < watch.To))
                yield return $"    {Say.Time(task.At, zone)}  {task.Due.Task}{With(task)}";
        }

        yield return "Sleep:";
        foreach (var rest in roster.Rest)
            yield return $"  {rest.Who}: {Say.Duration(rest.Asleep)}, {Say.Duration(rest.Longest)} of it at a stretch; on watch "
                + $"{Say.Duration(rest.OnShift)}";
    }

    private static string With(SharedTask task) =>
        task.Who.Length > 1 ? $", with {task.Who[1]}"
        : task.TooFew ? ", takes two"
        : "";
}
