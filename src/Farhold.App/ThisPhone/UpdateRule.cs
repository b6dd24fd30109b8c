namespace Farhold.App.ThisPhone;

public enum UpdateAnswer
{
    NothingReady,
    Foreign,
    CasualtyOpen,
    FormOpen,
    OtherTabs,
    May,
}

/// <summary>When a newer build may be started: on the carer's tap, with nothing open, in the only tab.</summary>
public static class UpdateRule
{
    public static UpdateAnswer Answer(CopyState copy, bool casualtyOpen, bool formOpen) =>
        copy switch
        {
            { Foreign: true } => UpdateAnswer.Foreign,
            { Ready: "" } => UpdateAnswer.NothingReady,
            _ when casualtyOpen => UpdateAnswer.CasualtyOpen,
            _ when formOpen => UpdateAnswer.FormOpen,
            { Tabs: > 1 } => UpdateAnswer.OtherTabs,
            _ => UpdateAnswer.May,
        };
}
