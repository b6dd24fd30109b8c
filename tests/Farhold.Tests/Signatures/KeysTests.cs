using System.Text;
using Farhold.Signing;
using static Farhold.Tests.Signatures.TestIssuer;

namespace Farhold.Tests.Signatures;

/// <summary>Issuers' codes, what is remembered of them, and a key that takes the place of another.</summary>
public class KeysTests
{
    [Fact]
    public void A_code_is_read_as_it_was_written_also_where_pasting_changed_its_line_ends()
    {
        var code = Rescue.Key.Code;
        var text = Encoding.UTF8.GetString(code.Write());
        Assert.Equal(code, Code(text));
        Assert.Equal(code, Code($"\uFEFF  {text.Replace("\n", " \r\n", StringComparison.Ordinal)}\n"));
        Assert.Matches(@"^(\d{5} ){3}\d{5}$", code.Digits);
    }

    /// <summary>RFC 6979's key; the digits were computed apart, with Python's hashlib.</summary>
    [Fact]
    public void The_twenty_digits_are_the_same_for_everybody() => Assert.Equal(Digits, Code(Known).Digits);

    [Theory]
    [InlineData("name: Vigdis Holm", "name: Vigdis Ho1m")]
    [InlineData("role: medical lead", "role: medical Lead")]
    [InlineData("key: YP7U", "key: YP7A")]
    public void Key_name_and_role_all_change_the_digits(string part, string other) =>
        Assert.NotEqual(Digits, Code(Known.Replace(part, other, StringComparison.Ordinal)).Digits);

    [Theory]
    [InlineData("Vigdis\u200BHolm")] // zero width
    [InlineData("\u202EmloH sidgiV")] // turned writing
    [InlineData("Vigdis\u2066Holm")]
    [InlineData("\u00A0Vigdis")]
    [InlineData("Vigdis\u00ADHolm")] // soft hyphen
    [InlineData("\u3164\u3164\u3164")] // letters that show nothing
    [InlineData("Vigdis\u0301")] // a mark over the letter before
    [InlineData("Vigdis\uFE0F")]
    [InlineData("Vigdis\u0007")]
    [InlineData("\uE000\uE001")]
    [InlineData("Vigdis  Holm")]
    [InlineData(" Vigdis")]
    [InlineData("x")]
    [InlineData("7 7")]
    [InlineData("")]
    public void An_invisible_or_turned_name_is_no_name(string name)
    {
        Assert.NotNull(LegibleName.Fault(name));
        Assert.IsType<Read<IssuerCode>.Refused>(IssuerCode.Of(Rescue.Key.Code.Key, name, "medical lead", "code"));
        Assert.IsType<Read<IssuerCode>.Refused>(IssuerCode.Of(Rescue.Key.Code.Key, "Vigdis Holm", name, "code"));
    }

    [Theory]
    [InlineData("Dr Vigdis Holm (invented)")]
    [InlineData("Søre Ærøfjord redningslag, 2. avd.")]
    [InlineData("Anna-Lena O’Neill")]
    [InlineData("山岳救助隊")]
    [InlineData("Горная служба")]
    public void Names_of_many_writings_are_names(string name) => Assert.Null(LegibleName.Fault(name));

    [Theory]
    [InlineData("farhold issuer v2")]
    [InlineData("")]
    public void Anything_else_is_no_code(string first) =>
        Assert.IsType<Read<IssuerCode>.Refused>(
            IssuerCode.Read(Encoding.UTF8.GetBytes(Known.Replace("farhold issuer v1", first, StringComparison.Ordinal)), "code")
        );

    [Fact]
    public void A_kept_keyring_is_read_as_it_was_and_a_changed_one_not_at_all()
    {
        var keyring = Rescue.Trusted.Seen(Rescue.Proof("{}"u8.ToArray(), Rescue.Head(7)), "{}"u8);
        var written = keyring.Write();
        Assert.Equal(keyring.Issuers, Assert.IsType<Read<Keyring>.Usable>(Keyring.Read(written, "keys")).Value.Issuers);
        foreach (
            var (good, bad) in new[] { ("\"serial\": 7", "\"serial\": -7"), ("issuer v1", "issuer v3"), ("\"issuers\"", "\"others\"") }
        )
            Assert.IsType<Read<Keyring>.Refused>(
                Keyring.Read(Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(written).Replace(good, bad, StringComparison.Ordinal)), "keys")
            );
    }

    [Fact]
    public void A_key_takes_the_place_of_another_only_by_that_ones_signature_and_forgets_nothing()
    {
        var keyring = Rescue.Trusted.Seen(Rescue.Proof("{}"u8.ToArray(), Rescue.Head(7)), "{}"u8);
        var (next, stranger) = (
            new TestIssuer("Skarvedal mountain rescue (invented)", "medical lead"),
            new TestIssuer("Somebody", "nobody")
        );
        var rotation = Assert.IsType<Read<KeyRotation>.Usable>(KeyRotation.Read(Rescue.Key.Rotate(next.Key.Code).Write(), "r")).Value;
        var turned = Assert.IsType<Read<Keyring>.Usable>(Rotate(keyring, rotation)).Value;
        Assert.Equal(new PinnedIssuer(next.Key.Code, 7, keyring.Issuers[0].File), Assert.Single(turned.Issuers));
        Assert.IsType<Read<Keyring>.Refused>(Rotate(turned, rotation)); // the old key is trusted no more

        Assert.IsType<Read<Keyring>.Refused>(Rotate(keyring, rotation with { To = stranger.Key.Code }));
        Assert.IsType<Read<Keyring>.Refused>(Rotate(keyring, rotation with { Signature = stranger.Key.Rotate(next.Key.Code).Signature }));
        Assert.IsType<Read<Keyring>.Refused>(Rotate(Keyring.Empty, rotation));
    }

    [Fact]
    public void A_signing_key_is_read_as_it_was_written_and_no_other_under_its_code()
    {
        using var again = Assert.IsType<Read<SigningKey>.Usable>(SigningKey.Read(Rescue.Key.Write(), "key")).Value;
        Assert.Equal(Rescue.Key.Code, again.Code);
        Assert.IsType<Read<Proof>.Usable>(Rescue.Check("{}"u8.ToArray(), again.Sign(Rescue.Head(), "{}"u8).Write()));

        var other = new TestIssuer("Somebody", "nobody").Key.Write();
        var mixed = Encoding.UTF8.GetString(Rescue.Key.Code.Write()) + other[other.IndexOf("-----", StringComparison.Ordinal)..];
        Assert.IsType<Read<SigningKey>.Refused>(SigningKey.Read(mixed, "key"));
        Assert.IsType<Read<SigningKey>.Refused>(SigningKey.Read(Encoding.UTF8.GetString(Rescue.Key.Code.Write()), "key"));
    }

    private const string Known =
        "farhold issuer v1\nkey: YP7UuiVanTHJYet0xjVtaMBJuJI7Yfps5mliLmDyn7Z5A_4QCLi8maQa6elWKLxk8vGyDC1-n1F3o8KU1EYimQ\nname: Vigdis "
        + "Holm\nrole: medical lead\n";

    private const string Digits = "66974 23988 26447 23205";

    private static IssuerCode Code(string text) =>
        Assert.IsType<Read<IssuerCode>.Usable>(IssuerCode.Read(Encoding.UTF8.GetBytes(text), "code")).Value;

    private static Read<Keyring> Rotate(Keyring keyring, KeyRotation rotation) =>
        Done(keyring.RotateAsync(rotation, "r", FrameworkSignatures.CheckAsync));
}
