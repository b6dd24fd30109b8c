using System.Text;
using CsCheck;
using Farhold.Exchange.Qr;

namespace Farhold.Tests.Exchange.Qr;

public class TransferTests(ITestOutputHelper output)
{
    private static readonly CareRecord Watch = new([.. Chained.Of(LongWatch.Entries(500))], []);

    [Fact]
    public void A_pack_holds_every_line_byte_for_byte() =>
        Gen.OneOf(Gens.Record, Gens.StrangeRecord)
            .Sample(r => Assert.Equal(FileOf(r.Record), Pack.Unpack(Pack.Of(r.Record))!), iter: Gens.Cases(300), print: r => r.ToString());

    [Fact]
    public void Links_come_back_though_they_are_not_sent()
    {
        var pack = Pack.Of(Watch);
        Assert.Equal(FileOf(Watch), Pack.Unpack(pack)!);
        Assert.InRange(pack.Length, 1, Pack.Of(new CareRecord(LongWatch.Entries(500), [])).Length + 1_200);
    }

    [Fact]
    public void Links_that_do_not_follow_are_sent_as_they_are()
    {
        var lines = Watch.Entries.ToArray();
        lines[3] = Chained.Read(lines[3].Json.ToString().Replace("\"by\":\"Ane\"", "\"by\":\"Ana\"", StringComparison.Ordinal));
        var broken = new CareRecord(lines, []);
        Assert.Equal(FileOf(broken), Pack.Unpack(Pack.Of(broken))!);
    }

    [Fact]
    public void A_pack_with_any_byte_changed_is_refused()
    {
        var pack = Pack.Of(Demo.Record());
        for (var i = 0; i < pack.Length; i++)
        {
            pack[i] ^= 0x10;
            Assert.Null(Pack.Unpack(pack));
            pack[i] ^= 0x10;
        }
    }

    [Fact]
    public void Frames_in_any_order_with_any_lost_and_repeated_give_the_whole() =>
        Gen.Select(Gen.Int[1, 400], Gen.Int[40, 263], Gen.Int[0, 60], Gen.Int)
            .Sample(
                (entries, frameBytes, lossPercent, seed) =>
                {
                    var record = new CareRecord(LongWatch.Entries(entries), []);
                    var sender = new FrameSender(Pack.Of(record), frameBytes);
                    var (collector, random) = (new FrameCollector(), new Random(seed));
                    var result = FrameResult.Foreign;
                    for (var n = random.Next(1_000_000); result != FrameResult.Complete; n++)
                        if (random.Next(100) >= lossPercent)
                            result = collector.Add(sender[random.Next(4) == 0 ? random.Next(sender.Blocks) : n].Text());
                    Assert.Equal(FileOf(record), collector.Record!);
                },
                iter: Gens.Cases(40)
            );

    [Fact]
    public void A_damaged_frame_is_taken_for_none()
    {
        var text = new FrameSender(Pack.Of(Demo.Record()))[0].Text();
        for (var i = 0; i < text.Length; i++)
            Assert.Null(Frame.Read(string.Concat(text.AsSpan(0, i), text[i] == 'A' ? "B" : "A", text.AsSpan(i + 1))));
    }

    [Fact]
    public void Frames_of_another_record_change_nothing()
    {
        var sender = new FrameSender(Pack.Of(Demo.Record()));
        var other = new FrameSender(Pack.Of(Watch));
        var collector = new FrameCollector();
        for (var i = 0; i < sender.Blocks; i++)
        {
            collector.Add(sender[i].Text());
            if (i + 1 < sender.Blocks)
                Assert.Equal(FrameResult.Foreign, collector.Add(other[i].Text()));
        }

        Assert.Equal(FileOf(Demo.Record()), collector.Record!);
    }

    [Fact]
    public void A_stray_frame_before_and_between_stops_no_other_transfer()
    {
        var sender = new FrameSender(Pack.Of(Demo.Record()));
        var strays = Enumerable
            .Range(0, 12)
            .Select(i => sender[0] with { Transfer = (uint)i, Data = new byte[sender[0].Data.Length] })
            .ToArray();
        var collector = new FrameCollector();
        foreach (var stray in strays)
            collector.Add(stray.Text());
        for (var i = 0; i < sender.Blocks; i++)
        {
            collector.Add(sender[i].Text());
            collector.Add(strays[i % strays.Length].Text());
        }

        Assert.Equal(FileOf(Demo.Record()), collector.Record!);
    }

    [Fact]
    public void A_frame_forged_with_a_right_check_sum_spoils_the_transfer_but_never_the_record()
    {
        var sender = new FrameSender(Pack.Of(Demo.Record()));
        var forged = sender[0] with { Data = new byte[sender[0].Data.Length] };
        var collector = new FrameCollector();
        collector.Add(forged.Text());
        for (var i = 1; i < sender.Blocks; i++)
            Assert.Equal(i + 1 < sender.Blocks ? FrameResult.Taken : FrameResult.WholeDamaged, collector.Add(sender[i].Text()));
        Assert.Null(collector.Record);
        Assert.Equal(0, collector.Known);
    }

    [Fact]
    public void No_text_breaks_the_collector() =>
        Gen.Select(Gen.Int[0, 20], Gen.Byte.Array[0, 60], Gen.Int[0, 400])
            .Sample(
                (number, noise, at) =>
                {
                    var collector = new FrameCollector();
                    var sender = new FrameSender(Pack.Of(Demo.Record()), 120);
                    collector.Add(sender[0].Text());
                    var bytes = Base45.Decode(sender[number].Text())!;
                    noise.AsSpan(0, Math.Min(noise.Length, bytes.Length - (at % bytes.Length))).CopyTo(bytes.AsSpan(at % bytes.Length));
                    collector.Add(Base45.Encode(bytes));
                    collector.Add(Base45.Encode(noise));
                    Assert.InRange(collector.Known, 1, 2);
                    Assert.Null(collector.Record);
                },
                iter: Gens.Cases(1_500)
            );

    /// <summary>Figures for docs/quality.md; the bounds are those figures with room.</summary>
    [Fact]
    public void Five_hundred_entries_with_a_third_of_the_frames_lost()
    {
        var pack = Pack.Of(Watch);
        var sender = new FrameSender(pack);
        var (shown, runs) = (new List<int>(), 60);
        for (var run = 0; run < runs; run++)
        {
            var (collector, random, n) = (new FrameCollector(), new Random(run), 0);
            for (var result = FrameResult.Foreign; result != FrameResult.Complete; n++)
                if (random.Next(100) >= 30)
                    result = collector.Add(sender[n].Text());
            shown.Add(n);
        }

        shown.Sort();
        var ideal = sender.Blocks / 0.7;
        output.WriteLine(
            $"500 entries: {FileOf(Watch).Length} bytes of lines, {pack.Length} packed, {sender.Blocks} frames at least; "
                + $"with 30 % lost {shown.Average():0.0} shown on average, {shown[(int)(runs * 0.95)]} at the 95th of 100, ideal "
                + $"{ideal:0.0}"
        );
        Assert.InRange(pack.Length, 1, 12_000);
        Assert.InRange(shown.Average(), sender.Blocks, ideal * 1.12);
    }

    private static byte[] FileOf(CareRecord record)
    {
        using var stream = new MemoryStream();
        RecordReader.Write(stream, record.Entries, record.Damaged);
        return stream.ToArray();
    }
}
