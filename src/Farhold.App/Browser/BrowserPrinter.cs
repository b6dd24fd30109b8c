using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Farhold.App.Browser;

[SupportedOSPlatform("browser")]
internal sealed partial class BrowserPrinter : IPrinter
{
    public void Print() => OpenDialogue();

    [JSImport("globalThis.print")]
    private static partial void OpenDialogue();
}
