using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NodaTime;

namespace Farhold.Signatures;

/// <summary>What an issuer says of a local protocol beside its bytes: all of it is signed.</summary>
/// <param name="Issuer">The issuer's digits.</param>
/// <param name="Over">Id and version of the protocol it is made for, such as <c>farhold-base 2.0.0</c>.</param>
/// <param name="Serial">Counts up with everything this issuer signs.</param>
public sealed record SignatureHead(string Issuer, string Over, long Serial, Instant NotBefore, Instant Expires)
{
    public const string First = "farhold local protocol v1";

    public const int MostMonths = 24;

    private const long LastSerial = 999_999_999;

    /// <summary>Not before and not from the end on.</summary>
    public bool Holds(Instant at) => at >= NotBefore && at < Expires;

    /// <summary>What is signed: the head, then the file as it is.</summary>
    public byte[] Message(ReadOnlySpan<byte> file) => [.. HeadLines.Write(First, Lines()), .. file];

    /// <summary>Why this can't be said, each with its line; empty where it can.</summary>
    internal IEnumerable<(int Line, string Reason)> Faults()
    {
        if (Serial is < 1 or > LastSerial)
            yield return (4, "serial has to be a whole number from 1 on");
        if (Expires <= NotBefore)
            yield return (6, "expires has to be later than not-before");
        else if (Expires.InUtc().LocalDateTime > NotBefore.InUtc().LocalDateTime.PlusMonths(MostMonths))
            yield return (6, $"expires may be at most {MostMonths} months after not-before");
    }

    internal IEnumerable<(string, string)> Lines() =>
        [
            ("issuer", Issuer),
            ("over", Over),
            ("serial", Serial.ToString(CultureInfo.InvariantCulture)),
            ("not-before", WrittenInstant.Write(NotBefore)),
            ("expires", WrittenInstant.Write(Expires)),
        ];
}

/// <summary>A signature kept beside a local protocol: ECDSA on P-256 with SHA-256, r before s.</summary>
/// <param name="Value">64 bytes as base64url.</param>
public sealed record LocalSignature(SignatureHead Head, string Value)
{
    /// <summary>What is added to the name of a file for the name of its signature.</summary>
    public const string Ending = ".sig";

    public const int Bytes = 64;

    /// <summary>Whether a file is meant to be a signature, even where it is broken.</summary>
    public static bool IsOne(ReadOnlySpan<byte> file) => file.StartsWith(Encoding.UTF8.GetBytes(SignatureHead.First));

    public byte[] Write() => HeadLines.Write(SignatureHead.First, Head.Lines().Append(("signature", Value)));

    /// <summary>Read only in the form it was written in, to the byte.</summary>
    public static Read<LocalSignature> Read(ReadOnlySpan<byte> utf8, string file)
    {
        var (values, refusal) = HeadLines.Read(
            utf8,
            file,
            SignatureHead.First,
            "issuer",
            "over",
            "serial",
            "not-before",
            "expires",
            "signature"
        );
        if (refusal is not null)
            return new Read<LocalSignature>.Refused([refusal]);
        var refusals = new List<Refusal>();
        if (!long.TryParse(values[2], NumberStyles.None, CultureInfo.InvariantCulture, out var serial))
            Refuse(4, "serial has to be a whole number from 1 on");
        var (from, until) = (Time(5, values[3]), Time(6, values[4]));
        if (Base64UrlText.Read(values[5], Bytes) is null)
            Refuse(7, "signature has to be 64 bytes as base64url");
        if (refusals.Count > 0)
            return new Read<LocalSignature>.Refused([.. refusals]);
        var read = new LocalSignature(new(values[0], values[1], serial, from, until), values[5]);
        foreach (var (line, reason) in read.Head.Faults())
            Refuse(line, reason);
        if (refusals.Count == 0 && !utf8.SequenceEqual(read.Write()))
            Refuse(1, "it is not written as signatures are: a line, a space or a digit was changed");
        return refusals.Count == 0 ? new Read<LocalSignature>.Usable(read) : new Read<LocalSignature>.Refused([.. refusals]);

        void Refuse(int line, string reason) => refusals.Add(new(file, line, 1, reason));

        Instant Time(int line, string text)
        {
            if (WrittenInstant.TryParse(text) is { } at)
                return at;
            Refuse(line, $"{text} is no instant of the years 1900 to 2500, such as 2031-05-04T00:00:00Z");
            return default;
        }
    }
}
