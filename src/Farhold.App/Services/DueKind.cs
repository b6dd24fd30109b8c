namespace Farhold.App.Services;

/// <summary>Tasks that the decision makes by itself, told apart by their names.</summary>
public static class DueKind
{
    extension(DueTask due)
    {
        /// <summary>The next act of a limb.</summary>
        public bool IsNextAct => Of(due, TaskNames.Next);

        /// <summary>Has it stopped? Asked after a tightening.</summary>
        public bool IsEffect => Of(due, TaskNames.Effect);

        /// <summary>The watch over a limb whose tourniquet has given way.</summary>
        public bool IsWatch => Of(due, "watch");

        /// <summary>A tourniquet that has to be tightened now.</summary>
        public bool IsTightening => Of(due, "tighten");
    }

    private static bool Of(DueTask due, string task) => due.Task.StartsWith(task + ".", StringComparison.Ordinal);
}
