using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Tests.Smpp.Wire;

public sealed class AddressRulesTests
{
    private static readonly AddressRules Usual = new();

    [Fact]
    public void Phone_Number_GoesAsInternationalWithoutPlus()
    {
        Assert.True(Msisdn.TryParse("+99910000001", out var number));

        Assert.Equal(new Address(1, 1, "99910000001"), Usual.Phone(number));
        Assert.Equal(new Address(2, 8, "99910000001"),
            (Usual with { International = new NumberKind(2, 8) }).Phone(number));
    }

    [Theory]
    [InlineData("HEAP", 5, 0, "HEAP")]
    [InlineData("Heap 4", 5, 0, "Heap 4")]
    [InlineData("4030", 3, 0, "4030")]
    [InlineData("12345678", 3, 0, "12345678")]
    [InlineData("123456789", 1, 1, "123456789")]
    [InlineData("+9994030", 1, 1, "9994030")]
    [InlineData("+", 5, 0, "+")]
    [InlineData("", 0, 0, "")]
    public void Sender_AsTheOfficeWritesIt_GetsItsTypeOfNumber(string sender, byte ton, byte npi, string value) =>
        Assert.Equal(new Address(ton, npi, value), Usual.Sender(sender));

    [Fact]
    public void Sender_KindsSetForTheLine_AreUsed()
    {
        var rules = new AddressRules { ShortCode = new NumberKind(6, 9), Alphanumeric = new NumberKind(5, 1) };

        Assert.Equal(new Address(6, 9, "4030"), rules.Sender("4030"));
        Assert.Equal(new Address(5, 1, "HEAP"), rules.Sender("HEAP"));
    }

    [Theory]
    [InlineData(1, "99910000001", "+99910000001")]
    [InlineData(1, "+99910000001", "+99910000001")]
    [InlineData(1, "0099910000001", "0099910000001")]
    [InlineData(2, "0700000001", "0700000001")]
    [InlineData(0, "99910000001", "99910000001")]
    [InlineData(5, "HEAP", "HEAP")]
    [InlineData(1, "", "")]
    public void Written_Address_GetsAPlusWhenInternational(byte ton, string value, string written) =>
        Assert.Equal(written, AddressRules.Written(new Address(ton, 1, value)));

    [Fact]
    public void Address_Printed_ShowsNoNumber() =>
        Assert.Equal("TON 1 NPI 1", new Address(1, 1, "99910000001").ToString());
}
