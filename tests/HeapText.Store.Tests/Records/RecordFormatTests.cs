using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;

namespace HeapText.Store.Tests.Records;

public sealed class RecordFormatTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    private static readonly Outbound Message =
        new("s-1", "sms", "Safi, mbolea: é ✓", Priority.Notice, Noon, Noon.PlusTicks(1));

    [Fact]
    public void Unpack_EveryKindOfField_IsUnchanged()
    {
        var back = RecordFormat.Unpack<Sample>(RecordFormat.Pack(Sample.Full));

        Sample.AssertEqual(Sample.Full, back);
    }

    [Fact]
    public void Unpack_FieldsLeftEmpty_IsUnchanged()
    {
        var back = RecordFormat.Unpack<Sample>(RecordFormat.Pack(new Sample { Name = "b" }));

        Sample.AssertEqual(new Sample { Name = "b" }, back);
    }

    [Fact]
    public void Unpack_PortRecords_AreUnchanged()
    {
        var group = new Group(41, "Upper Ziwani", "sw", "Africa/Dar_es_Salaam", "Trainer");
        var word = new OwnWord("Ziwani", "zorbix", "en", null);
        var audit = new AuditEntry(Noon, "officer", "group.put", "41");
        var aside = new SetAsideEntry(new FarmerKey("00"), Noon, "expired", Message);
        var sent = new SentEntry("-17", "sms", Priority.Notice, 2, 2, 1, DeliveryState.Failed, -70_000);
        var concern = new Concern { Reason = ConcernReason.Person, Since = Noon };
        var farmer = new Farmer { Subject = "s", Line = "sms", Group = 41, Concern = concern };

        Assert.Equal(Message, RecordFormat.Unpack<Outbound>(RecordFormat.Pack(Message)));
        Assert.Equal(group, RecordFormat.Unpack<Group>(RecordFormat.Pack(group)));
        Assert.Equal(word, RecordFormat.Unpack<OwnWord>(RecordFormat.Pack(word)));
        Assert.Equal(audit, RecordFormat.Unpack<AuditEntry>(RecordFormat.Pack(audit)));
        Assert.Equal(aside, RecordFormat.Unpack<SetAsideEntry>(RecordFormat.Pack(aside)));
        Assert.Equal(sent, RecordFormat.Unpack<SentEntry>(RecordFormat.Pack(sent)));
        Assert.Equal(farmer, RecordFormat.Unpack<Farmer>(RecordFormat.Pack(farmer)));
    }

    [Fact]
    public void Unpack_WrittenByALaterReleaseOfTheSameFormat_IgnoresTrailingFields()
    {
        var packed = RecordFormat.Pack(new LaterSample { Name = "a", Added = "new" });

        Assert.Equal("a", RecordFormat.Unpack<EarlierSample>(packed).Name);
    }

    [Fact]
    public void Unpack_WrittenByAnEarlierRelease_LeavesNewFieldsAtTheirDefault()
    {
        var later = RecordFormat.Unpack<LaterSample>(RecordFormat.Pack(new EarlierSample { Name = "a" }));

        Assert.Equal("a", later.Name);
        Assert.Equal("usual", later.Added);
        Assert.Empty(later.List);
    }

    [Fact]
    public void Unpack_PortRecordWithTrailingFields_IgnoresThem()
    {
        var packed = RecordFormat.Pack(Message);
        packed[1]++; // one field more in the array's header
        byte[] longer = [.. packed, 0xA3, (byte)'n', (byte)'e', (byte)'w'];

        Assert.Equal(Message, RecordFormat.Unpack<Outbound>(longer));
    }

    [Fact]
    public void Unpack_FixtureOfFormat1_StaysReadable()
    {
        var packed = File.ReadAllBytes(FixtureFiles.Of("records", "format-1-sample", ".bin")[0]);

        Sample.AssertEqual(Sample.Full, RecordFormat.Unpack<Sample>(packed));
    }

    [Fact]
    public void Unpack_FixtureOfFormat1Message_StaysReadable()
    {
        var packed = File.ReadAllBytes(FixtureFiles.Of("records", "format-1-outbound", ".bin")[0]);

        Assert.Equal(Message, RecordFormat.Unpack<Outbound>(packed));
    }

    [Theory]
    [InlineData(new byte[0])]
    [InlineData(new byte[] { 2, 0x90 })]
    [InlineData(new byte[] { 1, 0x96, 0x01 })]
    public void Unpack_NewerOrDamaged_SaysSo(byte[] packed) =>
        Assert.Throws<InvalidDataException>(() => RecordFormat.Unpack<Outbound>(packed));
}
