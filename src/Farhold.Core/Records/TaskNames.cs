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

    /// <summary>Says, done, that somebody went through the check before a move; its note has what was left open.</summary>
    public const string BeforeMove = "before-move";

    /// <summary>Name of the task that asks where a tourniquet sits; the limb follows.</summary>
    public const string Site = "site";

    /// <summary>Name of the task that re-sites a tourniquet; the limb follows.</summary>
    public const string ReSite = "re-site";

    /// <summary>Says, done, that light, supplies or hands have improved since an attempt on the limb bled.</summary>
    public const string Improved = "improved";

    /// <summary>Says, done, that an adviser's answer was read and repeated by whoever is beside the casualty; the advice follows.</summary>
    public const string ReadBack = "read-back";

    public static string ReadBackOf(EntryId advice) => $"{ReadBack}.{advice}";
}
