namespace Farhold.Records;

/// <summary>Names of tasks that no protocol lists: what a <c>task.done</c> of them says.</summary>
public static class TaskNames
{
    /// <summary>Name of the task that stands for the second look at the signs of shock.</summary>
    public const string SecondLook = "second-look";

    /// <summary>Name of the task that stands for a limb's next act.</summary>
    public const string Next = "next";

    /// <summary>Name of the task that asks whether the bleeding has stopped; the limb follows.</summary>
    public const string Effect = "effect";

    /// <summary>Says, done, that light, supplies or hands have improved since an attempt on the limb bled.</summary>
    public const string Improved = "improved";
}
