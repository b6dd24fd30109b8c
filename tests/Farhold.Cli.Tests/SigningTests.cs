using System.Text;
using System.Text.RegularExpressions;

namespace Farhold.Cli.Tests;

/// <summary>A service makes a key, signs and gives out its code; whoever trusts it uses what it signed, and nothing else.</summary>
public sealed class SigningTests : IDisposable
{
    private const string From = "2031-01-10T00:00:00Z",
        Until = "2032-11-01T00:00:00Z",
        At = "2031-05-04T06:10:00Z";

    private readonly Scratch scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void From_a_new_key_to_a_dose_and_no_further()
    {
        var (key, code, digits) = Key("rescue");
        var local = scratch.Write("hut.json", Local("\"paracetamol\""));
        Assert.Contains(
            "needs a signature: without one a local protocol may only tighten numbers",
            Farhold("check", local, "--at", At).Errors
        );

        var signed = Sign(local, key, 3);
        Assert.Equal((0, ""), (signed.ExitCode, signed.Errors));
        Assert.Contains("differs, laxer: drug ordered: paracetamol", signed.Output);
        Assert.Contains("signed by Hut rescue (invented), medical lead, serial 3, valid until 2032-11-01 00:00 UTC", signed.Output);
        Assert.Contains("is trusted here", Farhold("check", local, "--at", At).Errors);

        Assert.Contains("these are not the digits", Farhold("keys", "trust", code, "--digits", "00000 00000 00000 00000").Errors);
        Assert.Contains("have the issuer read out", Farhold("keys", "trust", code).Errors);
        Assert.Equal("no issuer is trusted here\n", Farhold("keys", "list").Output);
        Assert.Equal(
            $"trusted: Hut rescue (invented), medical lead, {digits}\n",
            Farhold("keys", "trust", code, "--digits", digits).Output
        );

        var check = Farhold("check", local, "--at", At);
        Assert.Equal((0, ""), (check.ExitCode, check.Errors));
        Assert.Contains("standing: verified; hash ", check.Output);
        Assert.Contains(
            "paracetamol: 1 g",
            Farhold(
                "dose",
                scratch.Write("weighed.jsonl", Lines.Weighed(34, 68)),
                "paracetamol",
                "--local",
                local,
                "--at",
                "2031-05-04T03:00:00Z"
            ).Output
        );
        Assert.Equal($"{digits}  Hut rescue (invented), medical lead; newest imported: serial 3\n", Farhold("keys", "list").Output);

        var over = Farhold("check", local, "--at", Until);
        Assert.Equal(2, over.ExitCode);
        Assert.Contains("LOCAL PROTOCOL EXPIRED", over.Output);
        var late = Farhold("dose", Run.Demo, "paracetamol", "--local", local, "--at", Until);
        Assert.Contains("paracetamol: ask for advice; no dose is shown", late.Output);
        Assert.Contains("LOCAL PROTOCOL EXPIRED", late.Output);
        Assert.Contains("it is not valid before", Farhold("check", local, "--at", "2031-01-09T23:59:59Z").Errors);
    }

    [Fact]
    public void A_changed_byte_or_an_older_file_is_refused_and_the_shipped_protocol_stays()
    {
        var (key, code, digits) = Key("rescue");
        Farhold("keys", "trust", code, "--digits", digits);
        var (older, newer) = (scratch.Write("older.json", Local("\"paracetamol\"")), scratch.Write("newer.json", Local("\"meloxicam\"")));
        Sign(older, key, 3);
        Sign(newer, key, 4);
        Assert.Equal(0, Farhold("check", older, "--at", At).ExitCode);
        Assert.Equal(0, Farhold("check", newer, "--at", At).ExitCode);
        Assert.Contains("older.json.sig:4:1: serial 3 is older than 4", Farhold("check", older, "--at", At).Errors);

        File.AppendAllText(newer, " ");
        var told = Farhold("tell", Run.Demo, "--local", newer, "--at", At);
        Assert.Equal(0, told.ExitCode);
        Assert.Contains("newer.json.sig:7:1: the signature does not fit", told.Errors);
        Assert.Contains("THE LOCAL PROTOCOL IS REFUSED; farhold-base 2.0.0 IS IN FORCE INSTEAD", told.Output);
    }

    [Fact]
    public void A_new_key_takes_the_place_of_the_old_by_its_word_alone()
    {
        var (old, code, digits) = Key("old");
        var (next, nextCode, nextDigits) = Key("next");
        Farhold("keys", "trust", code, "--digits", digits);
        var rotation = scratch.At("rotation.txt");
        Assert.Equal(0, Farhold("keys", "rotate", old, nextCode, "-o", rotation).ExitCode);
        Assert.Contains(nextDigits, Farhold("keys", "trust", rotation).Output);
        Assert.StartsWith(nextDigits, Farhold("keys", "list").Output, StringComparison.Ordinal);
        var local = scratch.Write("hut.json", Local(""));
        Sign(local, old, 1);
        Assert.Equal(2, Farhold("check", local, "--at", At).ExitCode);
        Sign(local, next, 1);
        Assert.Equal(0, Farhold("check", local, "--at", At).ExitCode);
        Assert.Contains("trusted no more", Farhold("keys", "drop", nextDigits).Output);
        Assert.Equal(2, Farhold("check", local, "--at", At).ExitCode);
    }

    [Fact]
    public void What_a_phone_would_refuse_is_not_signed()
    {
        var (key, _, _) = Key("rescue");
        var local = scratch.Write(
            "hut.json",
            """{"local":"hut","version":"1","title":"Hut","over":"farhold-base","criteria":[{"id":"bleeding.active","drop":true}]}"""
        );
        var signed = Sign(local, key, 1);
        Assert.Equal(2, signed.ExitCode);
        Assert.Contains("bleeding.active is a hard limit and can't be dropped, whoever signs", signed.Errors);
        Assert.False(File.Exists(local + ".sig"));
        var good = scratch.Write("good.json", Local(""));
        Assert.Contains(
            "at most 24 months",
            Farhold("sign", good, "--key", key, "--serial", "1", "--from", From, "--until", "2033-01-10T00:00:01Z").Errors
        );
        Assert.Contains(
            "no instant of the years 1900 to 2500",
            Farhold("sign", good, "--key", key, "--serial", "1", "--from", From, "--until", "9999-01-01T00:00:00Z").Errors
        );
        Assert.Contains("never overwritten", Farhold("keys", "new", "--name", "Hut rescue", "--role", "lead", "-o", key).Errors);
        Assert.Contains(
            "can't be seen",
            Farhold("keys", "new", "--name", "Hut\u202Erescue", "--role", "lead", "-o", scratch.At("other.key")).Errors
        );
    }

    [Fact]
    public void The_code_is_shown_without_the_secret_and_as_a_picture()
    {
        var (key, code, digits) = Key("rescue");
        var shown = Farhold("keys", "show", key, "--qr", scratch.At("code.svg"));
        Assert.StartsWith(File.ReadAllText(code), shown.Output, StringComparison.Ordinal);
        Assert.Contains($"digits to compare by voice: {digits}", shown.Output);
        Assert.DoesNotContain("PRIVATE", shown.Output + File.ReadAllText(code));
        Assert.StartsWith("<svg", File.ReadAllText(scratch.At("code.svg")), StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(key));
    }

    [Fact]
    public void The_worked_example_of_the_demo_holds()
    {
        var (local, issuer) = (Run.Beside("skarvedal-local.json"), Run.Beside("skarvedal.issuer"));
        var check = Farhold("check", local, "--issuer", issuer, "--at", At);
        Assert.Equal((0, ""), (check.ExitCode, check.Errors));
        Assert.Contains("signed by Skarvedal mountain rescue (invented)", check.Output);
        Assert.Contains("LOOSENED by the local protocol: shock.cool is changed", check.Output);
        Assert.Contains(
            "LOOSENED by the local protocol: shock.cool is changed",
            Farhold("tell", Run.Demo, "--local", local, "--issuer", issuer, "--at", At).Output
        );
    }

    [Fact]
    public void A_whole_protocol_in_place_of_the_shipped_one_says_that_nobody_has_proven_it()
    {
        var other = scratch.Write(
            "base.json",
            Encoding.UTF8.GetBytes(
                Encoding.UTF8.GetString(ShippedProtocol.Json.Span).Replace("Take the signs again", "Rest", StringComparison.Ordinal)
            )
        );
        Assert.Contains(
            "NOBODY HAS PROVEN THIS: protocol farhold-base 2.0.0",
            Farhold("tell", Run.Demo, "--protocol", other, "--at", At).Output
        );
    }

    private static string Local(string orders) =>
        $$"""
            {"local":"hut","version":"1","title":"Of the hut","over":"farhold-base",
             "authority":{"name":"Dr Vigdis Holm (invented)","role":"medical lead","date":"2031-01-10"},
             "orders":[{{orders}}],"clock":{"limit":"PT5H"} }
            """;

    private (string Key, string Code, string Digits) Key(string name)
    {
        var key = scratch.At(name + ".key");
        var made = Farhold("keys", "new", "--name", "Hut rescue (invented)", "--role", "medical lead", "-o", key);
        Assert.Equal(0, made.ExitCode);
        var code = scratch.Write(
            name + ".issuer",
            Encoding.UTF8.GetBytes(made.Output[..made.Output.IndexOf("\n\n", StringComparison.Ordinal)] + "\n")
        );
        return (key, code, Regex.Match(made.Output, @"(\d{5} ){3}\d{5}").Value);
    }

    private Ran Sign(string file, string key, int serial) =>
        Farhold("sign", file, "--key", key, "--serial", $"{serial}", "--from", From, "--until", Until);

    private Ran Farhold(params string[] arguments) => Run.With(scratch.Path, arguments);
}
