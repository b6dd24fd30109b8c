using Farhold.App.Phone;
using Microsoft.AspNetCore.Components;

namespace Farhold.App.Shell;

/// <summary>Started again in the middle of care, the app goes straight back to the casualty.</summary>
internal static class Resume
{
    public static void Where(Session session, Preferences preferences, NavigationManager navigation)
    {
        var last = preferences.OpenCasualty;
        if (navigation.Uri == navigation.BaseUri && session.Casualties.Any(c => c.Id == last))
            navigation.NavigateTo(Places.Now.Of(last));
    }
}
