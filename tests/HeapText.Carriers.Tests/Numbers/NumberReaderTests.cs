using HeapText.Carriers.Numbers;

namespace HeapText.Carriers.Tests.Numbers;

public sealed class NumberReaderTests
{
    private static readonly HashSet<string> Anywhere = [];

    [Theory]
    [InlineData("+256700000001", null, "+256700000001")]
    [InlineData("256700000001", null, "+256700000001")]
    [InlineData("00256 700 000 001", null, "+256700000001")]
    [InlineData("+256 (700) 000-001", null, "+256700000001")]
    [InlineData("0700000001", "UG", "+256700000001")]
    [InlineData("700000001", "UG", "+256700000001")]
    [InlineData("+254700000001", "UG", "+254700000001")]
    public void ReadReal_UsualSpelling_GivesInternationalForm(string written, string? region, string expected)
    {
        var reading = NumberReader.ReadReal(written, region, Anywhere);

        Assert.Equal(expected, Assert.IsType<NumberReading.Good>(reading).Number.Value);
    }

    [Theory]
    [InlineData("", null)]
    [InlineData("farmer", null)]
    [InlineData("+", null)]
    [InlineData("4040", null)]
    [InlineData("0700000001", null)]
    [InlineData("+2567000000011111111", null)]
    [InlineData("+256\u0000700000001", null)]
    [InlineData("4040", "UG")]
    [InlineData("+99910000001", null)]
    [InlineData("99910000001", null)]
    [InlineData("0099910000001", null)]
    public void ReadReal_NotATelephoneNumber_SaysWhy(string written, string? region)
    {
        var reading = NumberReader.ReadReal(written, region, Anywhere);

        Assert.NotEmpty(Assert.IsType<NumberReading.Bad>(reading).Why);
    }

    [Theory]
    [InlineData("+999 100 000 01", "+99910000001")]
    [InlineData("0099910000001", "+99910000001")]
    public void ReadPractice_PracticePhone_GivesInternationalForm(string written, string expected)
    {
        var reading = NumberReader.ReadPractice(written);

        Assert.Equal(expected, Assert.IsType<NumberReading.Good>(reading).Number.Value);
    }

    [Theory]
    [InlineData("+256700000001")]
    [InlineData("99910000001")]
    [InlineData("+999")]
    [InlineData("+999123456789012345")]
    [InlineData("+9991000000a")]
    public void ReadPractice_AnyOther_SaysHowPracticeNumbersBegin(string written)
    {
        var reading = NumberReader.ReadPractice(written);

        Assert.Contains("+999", Assert.IsType<NumberReading.Bad>(reading).Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("+256700000001", true)]
    [InlineData("0700000001", true)]
    [InlineData("+254700000001", false)]
    [InlineData("+18765550100", false)]
    public void ReadReal_CountriesNamed_TakesNumbersOfTheseOnly(string written, bool taken)
    {
        var reading = NumberReader.ReadReal(written, "UG", new HashSet<string> { "UG", "US" });

        Assert.Equal(taken, reading is NumberReading.Good);
    }
}
