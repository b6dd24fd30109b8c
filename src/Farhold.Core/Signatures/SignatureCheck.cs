namespace Farhold.Signatures;

/// <summary>Whether a signature stands over a message: ECDSA on P-256 with SHA-256. Browser and framework each bring their own.</summary>
/// <param name="key">64 bytes, x before y.</param>
/// <param name="signature">64 bytes, r before s.</param>
/// <returns>False for anything that can't be checked.</returns>
public delegate ValueTask<bool> SignatureCheck(ReadOnlyMemory<byte> key, ReadOnlyMemory<byte> message, ReadOnlyMemory<byte> signature);
