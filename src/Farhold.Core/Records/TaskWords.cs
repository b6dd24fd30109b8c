namespace Farhold.Records;

/// <summary>Ids of tasks in words.</summary>
internal static class TaskWords
{
    private static readonly HashSet<string> Limbs = [.. Enum.GetValues<Limb>().Select(l => Wire.Word(l))];

    /// <summary><c>pulse-beyond.left-leg</c> becomes <c>pulse beyond, left leg</c>; what names no limb of ours stays as it is.</summary>
    public static string Of(string task)
    {
        var dot = task.LastIndexOf('.');
        return dot > 0 && Limbs.Contains(task[(dot + 1)..])
            ? $"{task[..dot].Replace('-', ' ')}, {task[(dot + 1)..].Replace('-', ' ')}" : task;
    }
}
