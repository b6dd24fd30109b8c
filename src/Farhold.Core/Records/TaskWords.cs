namespace Farhold.Records;

/// <summary>Ids of tasks in words.</summary>
internal static class TaskWords
{
    private static readonly HashSet<string> Limbs = [.. Enum.GetValues<Limb>().Select(l => Wire.Word(l))];

    /// <summary>
    /// <c>pulse-beyond.left-leg</c> becomes <c>pulse below the tourniquet, left leg</c>; what names no limb of ours stays as it is.
    /// </summary>
    public static string Of(string task)
    {
        var dot = task.LastIndexOf('.');
        if (task == TaskNames.BeforeMove)
            return RecordTexts.TaskBeforeMove;
        if (task.StartsWith(TaskNames.ReadBack + ".", StringComparison.Ordinal))
            return RecordTexts.TaskReadBack(task[(TaskNames.ReadBack.Length + 1)..]);
        return dot > 0 && Limbs.Contains(task[(dot + 1)..]) ? $"{Words(task[..dot])}, {task[(dot + 1)..].Replace('-', ' ')}" : task;
    }

    // The id of the task is older than its words.
    private static string Words(string id) => id == "pulse-beyond" ? RecordTexts.TaskPulseBelow : id.Replace('-', ' ');
}
