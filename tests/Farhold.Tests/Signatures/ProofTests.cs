using System.Text;
using System.Text.Json;
using Farhold.Signing;
using static Farhold.Tests.Signatures.TestIssuer;

namespace Farhold.Tests.Signatures;

public class ProofTests
{
    private static readonly byte[] File = Encoding.UTF8.GetBytes("{\"local\":\"hut\"}\n");

    public static TheoryData<string> Vectors => [.. Read().Select(v => v.GetProperty("what").GetString()!)];

    /// <summary>The browser is held against the same file in Farhold.Hub.Tests.</summary>
    [Theory, MemberData(nameof(Vectors))]
    public void The_framework_holds_what_the_vectors_hold(string what)
    {
        var v = Read().Single(v => v.GetProperty("what").GetString() == what);
        byte[] Bytes(string name) => System.Buffers.Text.Base64Url.DecodeFromChars(v.GetProperty(name).GetString());
        Assert.Equal(
            v.GetProperty("holds").GetBoolean(),
            Done(
                FrameworkSignatures.CheckAsync(
                    Bytes("key"),
                    Encoding.UTF8.GetBytes(v.GetProperty("message").GetString()!),
                    Bytes("signature")
                )
            )
        );
    }

    [Fact]
    public void What_is_signed_by_a_trusted_issuer_is_verified_from_its_first_instant_until_its_last()
    {
        var proof = Rescue.Proof(File);
        Assert.Equal(Standing.Verified, proof.Of(File, From));
        Assert.Equal(Standing.Verified, proof.Of(File, Until - Duration.Epsilon));
        Assert.Equal(Standing.Expired, proof.Of(File, Until));
        Assert.Equal(Rescue.Key.Code, proof.Issuer);
    }

    /// <summary>Signed before a local protocol could say whom to call: file, signature and what it comes to stay as they were.</summary>
    [Fact]
    public void A_file_of_an_older_form_is_verified_and_read_as_before()
    {
        static ReadOnlyMemory<byte> In(params string[] path) =>
            System.IO.File.ReadAllBytes(Path.Combine([AppContext.BaseDirectory, .. path]));
        var code = Assert.IsType<Read<IssuerCode>.Usable>(IssuerCode.Read(In("demo", "skarvedal.issuer").Span, "skarvedal.issuer")).Value;
        var file = In("cases", "signatures", "skarvedal-2031-1.json");
        var proof = Assert
            .IsType<Read<Proof>.Usable>(
                Rescue.Check(file, In("cases", "signatures", "skarvedal-2031-1.json.sig"), Keyring.Empty.Pin(code), Now)
            )
            .Value;
        Assert.Equal(Standing.Verified, proof.Of(file.Span, Now));
        var local = Assert
            .IsType<Read<Rulebook>.Usable>(new LocalRules(file, null, "old.json", proof, ShippedRules.Book).At(Now))
            .Value.Protocol.Local!;
        Assert.Equal(["paracetamol", "meloxicam", "tranexamic-acid"], local.Orders);
        Assert.True(local.Service is { Contacts.IsEmpty: true, Emergency.IsEmpty: true, StockNames.IsEmpty: true, Words.IsEmpty: true });
        Assert.Single(local.Loosened);
    }

    [Fact]
    public void A_proof_is_of_one_file() => Assert.Equal(Standing.Unsigned, Rescue.Proof(File).Of("{}"u8, Now));

    [Fact]
    public void No_changed_bit_of_file_or_signature_is_verified()
    {
        var signature = Rescue.Sign(File);
        foreach (var flipped in Flips(File))
            Refused(Rescue.Check(flipped, signature));
        foreach (var flipped in Flips(signature))
            Refused(Rescue.Check(File, flipped));
        Assert.IsType<Read<Proof>.Usable>(Rescue.Check(File, signature));
    }

    [Fact]
    public void A_signature_longer_or_shorter_by_anything_is_refused()
    {
        var signature = Rescue.Sign(File);
        foreach (
            var other in new byte[][]
            {
                [.. signature, (byte)'\n'],
                signature[..^1],
                [.. signature[..^1], (byte)'\r', (byte)'\n'],
                [0xEF, 0xBB, 0xBF, .. signature],
                [],
            }
        )
            Refused(Rescue.Check(File, other));
    }

    [Fact]
    public void Another_key_under_the_same_name_is_refused()
    {
        var stranger = new TestIssuer(Rescue.Key.Code.Name, Rescue.Key.Code.Role);
        Assert.Contains("is trusted here", Refused(Rescue.Check(File, stranger.Sign(File))), StringComparison.Ordinal);
        Assert.Contains("does not fit", Refused(Rescue.Check(File, stranger.Sign(File, Rescue.Head()))), StringComparison.Ordinal);
    }

    [Fact]
    public void Made_for_another_version_it_is_refused() =>
        Assert.Contains(
            "made for farhold-base 1.9.0",
            Refused(Rescue.Check(File, Rescue.Sign(File, Rescue.Head(over: "farhold-base 1.9.0")))),
            StringComparison.Ordinal
        );

    [Fact]
    public void Before_its_time_it_is_refused()
    {
        Assert.Contains(
            "not valid before",
            Refused(Rescue.Check(File, Rescue.Sign(File), now: From - Duration.Epsilon)),
            StringComparison.Ordinal
        );
        Assert.IsType<Read<Proof>.Usable>(Rescue.Check(File, Rescue.Sign(File), now: From));
    }

    [Fact]
    public void A_replayed_serial_is_refused_and_the_same_one_only_with_the_same_file()
    {
        var seen = Rescue.Trusted.Seen(Rescue.Proof(File, Rescue.Head(3)), File);
        Assert.Contains(
            "serial 2 is older than 3",
            Refused(Rescue.Check(File, Rescue.Sign(File, Rescue.Head(2)), seen)),
            StringComparison.Ordinal
        );
        Assert.IsType<Read<Proof>.Usable>(Rescue.Check(File, Rescue.Sign(File, Rescue.Head(3)), seen));
        byte[] other = [.. File, (byte)' '];
        Assert.Contains(
            "with another file",
            Refused(Rescue.Check(other, Rescue.Sign(other, Rescue.Head(3)), seen)),
            StringComparison.Ordinal
        );
        Assert.IsType<Read<Proof>.Usable>(Rescue.Check(other, Rescue.Sign(other, Rescue.Head(4)), seen));
        Assert.Equal(3, seen.Seen(Rescue.Proof(File, Rescue.Head(2)), File).Issuers[0].Serial);
    }

    [Theory]
    [InlineData("9999-01-01T00:00:00Z", "no instant of the years 1900 to 2500")]
    [InlineData("2033-01-01T00:00:01Z", "at most 24 months")]
    [InlineData("2031-01-01T00:00:00Z", "later than not-before")]
    [InlineData("2032-01-01T00:00:00.0Z", "not written as signatures are")]
    public void A_time_without_end_is_refused(string expires, string reason)
    {
        var text = Encoding.UTF8.GetString(Rescue.Sign(File)).Replace("2032-01-01T00:00:00Z", expires, StringComparison.Ordinal);
        Assert.Contains(reason, Refused(Rescue.Check(File, Encoding.UTF8.GetBytes(text))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("serial: 1", "serial: 0")]
    [InlineData("serial: 1", "serial: -1")]
    [InlineData("serial: 1", "serial: 01")]
    [InlineData("serial: 1", "serial: 1.5")]
    [InlineData("serial: 1", "serial: 99999999999999999999")]
    public void A_serial_is_a_number_from_one_on(string good, string bad) =>
        Refused(
            Rescue.Check(
                File,
                Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Rescue.Sign(File)).Replace(good, bad, StringComparison.Ordinal))
            )
        );

    [Fact]
    public void An_emergency_lasts_twelve_hours_and_proves_nothing()
    {
        var proof = Proof.Emergency(Now);
        Assert.Equal(Standing.Emergency, proof.Of(File, Now + Duration.FromHours(12) - Duration.Epsilon));
        Assert.Equal(Standing.Unsigned, proof.Of(File, Now + Duration.FromHours(12)));
        Assert.Equal(Standing.Unsigned, proof.Of(File, Now - Duration.Epsilon));
        Assert.Equal(Standing.Unsigned, Proof.None.Of(File, Now));
    }

    private static string Refused(Read<Proof> read) => Assert.IsType<Read<Proof>.Refused>(read).Refusals[0].Reason;

    private static IEnumerable<byte[]> Flips(byte[] bytes) =>
        Enumerable
            .Range(0, bytes.Length * 8)
            .Select(bit =>
            {
                var flipped = (byte[])bytes.Clone();
                flipped[bit / 8] ^= (byte)(1 << (bit % 8));
                return flipped;
            });

    private static JsonElement[] Read()
    {
        using var json = JsonDocument.Parse(
            System.IO.File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "cases", "signatures", "vectors.json"))
        );
        return [.. json.RootElement.EnumerateArray().Select(e => e.Clone())];
    }
}
