namespace Farhold.App.ThisPhone;

/// <summary>What is said of a copy elsewhere before a record is erased here.</summary>
public enum CopyOf
{
    NotSaid,
    Checked,
    Refused,
}
