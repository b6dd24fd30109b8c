using System.Diagnostics;

namespace Farhold.App.Now;

public static class QuickNames
{
    extension(Texts t)
    {
        public string QuickName(Quick quick) =>
            quick switch
            {
                Quick.Tightened => t.QuickTightened,
                Quick.Wound => t.QuickWound,
                Quick.Bleeding => t.QuickBleeding,
                Quick.Signs => t.QuickSigns,
                Quick.Slackened => t.QuickSlackened,
                Quick.Attempt => t.QuickAttempt,
                Quick.Help => t.QuickHelp,
                Quick.Hands => t.QuickHands,
                Quick.Watch => t.QuickWatch,
                Quick.Supplies => t.QuickSupplies,
                Quick.Note => t.QuickNote,
                Quick.Packed => t.QuickPacked,
                Quick.Held => t.QuickHeld,
                Quick.Dressed => t.QuickDressed,
                Quick.Ended => t.QuickEnded,
                Quick.Beyond => t.QuickBeyond,
                Quick.Removed => t.QuickRemoved,
                Quick.LookedOver => t.QuickLookedOver,
                Quick.Contact => t.QuickContact,
                Quick.Moved => t.QuickMoved,
                Quick.Improved => t.QuickImproved,
                _ => throw new UnreachableException(),
            };
    }
}
