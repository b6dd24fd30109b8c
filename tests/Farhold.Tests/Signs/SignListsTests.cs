using CsCheck;

namespace Farhold.Tests.Signs;

public class SignListsTests
{
    [Fact]
    public void What_tells_of_a_sign_is_found_alike_in_a_record_read_whole_and_in_one_that_grew() =>
        Gens.Record.Sample(
            written =>
            {
                var whole = written.Record.Readings[0];
                var grown = State.Empty;
                foreach (var entry in whole.All.Reverse())
                {
                    grown = grown.Plus(entry);
                    Assert.All(SignRead.All, sign => Assert.All(grown.WithSign(sign), e => Assert.True(sign.Tells(e))));
                }

                foreach (var sign in SignRead.All)
                {
                    Assert.Equal(whole.Of(Kind.SignsTaken).Where(sign.Tells), whole.WithSign(sign));
                    Assert.Equal(whole.WithSign(sign), grown.WithSign(sign));
                }
            },
            iter: Gens.Cases(300)
        );

    [Fact]
    public void Every_sign_has_a_place_of_its_own() =>
        Assert.Equal(Enumerable.Range(0, SignRead.All.Length), SignRead.All.Select(s => s.Index).Order());
}
