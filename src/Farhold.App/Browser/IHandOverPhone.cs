namespace Farhold.App.Browser;

/// <summary>What handing over asks of the phone: another app to share with, a camera to read codes.</summary>
public interface IHandOverPhone
{
    bool CanShare { get; }

    /// <summary>False if the phone or the carer refused.</summary>
    Task<bool> ShareAsync(string text);

    /// <summary>Shows the camera in the video element with this id and tells every text it reads.</summary>
    /// <returns>Empty once it runs, else why it does not, in the browser's words.</returns>
    Task<string> StartScanAsync(string video, Action<string> seen);

    void StopScan();
}
