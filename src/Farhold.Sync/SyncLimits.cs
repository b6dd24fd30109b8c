namespace Farhold.Sync;

/// <summary>What one message and one casualty may hold. Design, against a sender who means harm: care stays far below.</summary>
public static class SyncLimits
{
    /// <summary>Bytes of a message, unpacked: some thirty thousand entries.</summary>
    public const int MaxText = 8 * 1024 * 1024;

    /// <summary>Bytes of a line, and of the head of a message.</summary>
    public const int MaxLine = EntryReader.MaxLine;

    /// <summary>Devices in the record of one casualty.</summary>
    public const int MaxDevices = 200;

    /// <summary>Lines outside the unbroken prefixes of their devices.</summary>
    public const int MaxOdd = 10_000;

    /// <summary>Hashes that a head lists of devices in dispute, in all.</summary>
    public const int MaxHashes = 50_000;
}
