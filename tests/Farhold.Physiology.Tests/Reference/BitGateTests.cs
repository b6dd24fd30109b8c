namespace Farhold.Physiology.Tests.Reference;

/// <summary>
/// Model 1 to the last bit. Where one of these fails, either this platform computes otherwise (then nothing may be replayed on it), or the
/// model changed: then it is another model, with another number.
/// </summary>
public class BitGateTests
{
    public static TheoryData<string> Names => [.. BitGate.Names];

    [Theory, MemberData(nameof(Names))]
    public void A_course_has_the_bits_it_had(string course)
    {
        Assert.True(BitGate.Agrees(course), $"(\"{course}\", 0x{BitGate.Hash(course):X16}),");
    }

    [Fact]
    public void In_pieces_all_courses_agree_too()
    {
        var pieces = BitGate.InPieces().ToArray();
        Assert.Equal((0, 0), pieces[0]);
        Assert.Equal((8, 0), pieces[^1]);
        Assert.True(pieces.Length > 8 * 10, "a page could not breathe within a course");
    }

    [Fact]
    public void There_are_eight_courses() => Assert.Equal(8, BitGate.Names.Distinct().Count());

    [Fact]
    public void The_constants_of_a_number_stay() =>
        Assert.Equal("532da7446f407090b0919eb6a1f2102abe830356bd31db0e83dec16bd5ed807f", Models.Hash(1));

    [Fact]
    public void One_bit_of_one_number_is_seen() =>
        Assert.NotEqual(BitHash.Add(BitHash.Start, [1.0, 2.0, 3.0]), BitHash.Add(BitHash.Start, [1.0, Math.BitIncrement(2.0), 3.0]));

    [Fact]
    public void The_hash_is_fnv_1a()
    {
        // The published check: "foobar" is 85944171f73967e8 (Noll's page of test vectors).
        Assert.Equal(0x85944171F73967E8UL, BitHash.Of("foobar"));
    }
}
