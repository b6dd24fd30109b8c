namespace Farhold.Tests.Records;

public class NewNamesTests
{
    [Fact]
    public void The_device_that_opened_the_record_counts_on() => Assert.Equal(("t2", "w3"), Names(On("7k3f")));

    [Fact]
    public void Another_device_marks_what_it_names_so_that_two_without_a_link_never_give_one_name() =>
        Assert.Equal(("t2-9mw", "w3-9mw"), Names(On("9mwq")));

    [Fact]
    public void Marked_names_count_too()
    {
        var record = On("7k3f");
        record.Add(Said("9mwq", 1, new Payload.TourniquetTightened("t4-9mw", Limb.LeftArm)));
        record.Add(Said("9mwq", 2, new Payload.WoundFound("w2147483647", Limb.LeftArm, null, WoundNature.Bleeding)));
        Assert.Equal(("t5", "w3"), Names(record));
    }

    [Fact]
    public void Where_nobody_writes_names_are_plain() => Assert.Equal(("t2", "w3"), Names(On(null)));

    private static (string, string) Names(CareRecord record) => (NewNames.Tourniquet(record), NewNames.Wound(record));

    private static CareRecord On(string? writer)
    {
        var record = new CareRecord([], []) { Writer = writer };
        record.Add(Said("7k3f", 1, new Payload.CasualtyOpened("Tor")));
        record.Add(Said("7k3f", 2, new Payload.WoundFound("w2", Limb.LeftLeg, null, WoundNature.Bleeding)));
        record.Add(Said("7k3f", 3, new Payload.TourniquetTightened("t1", Limb.LeftLeg)));
        return record;
    }

    private static Entry Said(string device, int number, Payload payload) =>
        EntryWriting.Write(new(device, number), Happened.At(Some.At("02:00")), Some.At("02:00"), "Ane", payload);
}
