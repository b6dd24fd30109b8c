namespace Farhold.App.Browser;

/// <summary>What on this phone reads XML.</summary>
public interface IXmlFiles
{
    /// <summary>Opens a file, once <see cref="ReadyAsync"/> says so.</summary>
    IXmlNodes Open(ReadOnlyMemory<byte> content);

    /// <summary>False where the reader is not on this phone yet and can't be had now.</summary>
    Task<bool> ReadyAsync();
}
