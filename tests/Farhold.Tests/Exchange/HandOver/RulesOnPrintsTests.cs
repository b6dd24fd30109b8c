using System.Text;
using Farhold.Exchange.Card;
using Farhold.Exchange.HandOver;
using Farhold.Tests.Protocols;
using Farhold.Tests.Signatures;

namespace Farhold.Tests.Exchange.HandOver;

/// <summary>Every loosening, and rules that nobody has proven, stand on every form and print.</summary>
public class RulesOnPrintsTests
{
    private static readonly byte[] Loosening = Encoding.UTF8.GetBytes(
        """
        {"local":"hut","version":"1","title":"Of the hut","over":"farhold-base","clock":{"window":"PT3H"},"criteria":[{"id":"shock.pale","drop":true}]}
        """
    );

    private static readonly Instant Now = Some.At("08:30");

    public static TheoryData<string> Prints => ["tell", "tell as JSON", "replay", "card", .. Enum.GetNames<FormKind>()];

    [Theory, MemberData(nameof(Prints))]
    public void Every_loosening_stands_on_every_print(string print)
    {
        var laid = Assert.IsType<Read<Protocol>.Usable>(LocalFile.Read(Loosening)).Value;
        Assert.Equal(2, laid.Local!.Loosened.Length);
        Assert.Equal(2, Count(Printed(print, laid), "LOOSENED by the local protocol"));
        Assert.Equal(0, Count(Printed(print, ShippedProtocol.Protocol), "LOOSENED"));
    }

    [Theory, MemberData(nameof(Prints))]
    public void What_nobody_has_proven_is_said_on_every_print(string print)
    {
        var laid = Assert
            .IsType<Read<Protocol>.Usable>(
                LocalReader.Read(
                    Loosening,
                    "hut.json",
                    ShippedProtocol.Protocol,
                    Proof.Emergency(Now),
                    Now,
                    () => ShippedRules.Book.Formulary,
                    () => ShippedRules.Book.Kit
                )
            )
            .Value;
        Assert.True(Count(Printed(print, laid), "NOBODY HAS PROVEN THIS") >= 1);
    }

    [Theory, MemberData(nameof(Prints))]
    public void An_expired_one_is_said_on_every_print(string print)
    {
        var proof = TestIssuer.Rescue.Proof(Loosening);
        var laid = Assert
            .IsType<Read<Protocol>.Usable>(
                LocalReader.Read(
                    Loosening,
                    "hut.json",
                    ShippedProtocol.Protocol,
                    proof,
                    TestIssuer.Until,
                    () => ShippedRules.Book.Formulary,
                    () => ShippedRules.Book.Kit
                )
            )
            .Value;
        Assert.Equal(1, Count(Printed(print, laid), "LOCAL PROTOCOL EXPIRED"));
    }

    private static int Count(string text, string what) => text.Split(what, StringSplitOptions.None).Length - 1;

    private static string Printed(string print, Protocol protocol)
    {
        var record = Demo.Record();
        switch (print)
        {
            case "tell":
                return JudgementText.Of(Judge.At(record, ShippedRules.Book.By(protocol), Now));
            case "tell as JSON":
                return Encoding.UTF8.GetString(JudgementJson.Write(Judge.At(record, ShippedRules.Book.By(protocol), Now)));
            case "replay":
                using (var text = new StringWriter())
                {
                    ReplayText.Write(record, ShippedRules.Book.By(protocol), Now, [], text, ReplayText.UsualWidth);
                    return text.ToString();
                }

            case "card":
                return string.Join(
                    '\n',
                    CardSheet.Of(record, ShippedRules.Book.By(protocol), Now, DateTimeZone.Utc).Top.SelectMany(p => p.Texts)
                );
            default:
                return Forms
                    .Of(Enum.Parse<FormKind>(print), CareFacts.Of(record, ShippedRules.Book.By(protocol), Now), DateTimeZone.Utc)
                    .Text();
        }
    }
}
