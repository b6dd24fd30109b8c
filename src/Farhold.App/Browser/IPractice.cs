namespace Farhold.App.Browser;

/// <summary>Whether this tab rehearses, and what the phone keeps of rehearsals; see wwwroot/rehearsal.js.</summary>
/// <remarks>
/// A tab that rehearses has a store, settings and a clock of its own: the page was loaded for it, so nothing real is in it. What it
/// keeps here is the one thing that crosses, and it names no casualty.
/// </remarks>
public interface IPractice
{
    bool IsRehearsing { get; }

    /// <summary>The run that was begun on this phone, in whichever tab, and not ended; empty if there is none.</summary>
    string Run { get; }

    /// <summary>A line for each rehearsal that ended.</summary>
    string Past { get; }

    /// <summary>False if the phone did not take it.</summary>
    bool KeepRun(string run);

    bool KeepPast(string past);

    /// <summary>Loads this tab anew as one that rehearses; what was left of another rehearsal is gone. False if it can't.</summary>
    Task<bool> BeginAsync(string run);

    /// <summary>The same with the run that is kept.</summary>
    bool GoOn();

    /// <summary>Loads this tab anew as a real one, at an address within the app; the rehearsal's records are gone.</summary>
    Task EndAsync(string address);

    /// <summary>Brings the casualty model to the phone, which the first start leaves out. Done at once where it is there.</summary>
    Task LoadModelAsync();
}
