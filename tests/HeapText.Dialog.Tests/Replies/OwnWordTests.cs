using HeapText.Dialog.Ports;
using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

public sealed class OwnWordTests
{
    private static readonly Reader District = TestReader.Sut.With(
    [
        new OwnWord("D", "zorbixa", "en", "maize-cob"), new OwnWord("D", "blob", "sw", "plastic"),
        new OwnWord("D", "fluffery", "en", null), new OwnWord("D", "husks", "en", "coffee-husk"),
        new OwnWord("D", "manure", "en", "goat-manure"),
    ]);

    [Theory]
    [InlineData("3 sacks zorbixa", "en")]
    [InlineData("3 sacks of Zorbixa!", "en")]
    [InlineData("zorbixa magunia 3", "sw")]
    [InlineData("3 sacks zorbxa", "en")]
    [InlineData("3 sacks zorbixas", "en")]
    [InlineData("3sackszorbixa", "en")]
    [InlineData("not 2, 3 sacks zorbixa", "en")]
    public void Read_OwnWord_IsUnderstoodAsIfItStoodInTheFile(string text, string language)
    {
        var reading = District.Read(text, language);

        Assert.Equal(Intent.Stock, reading.Intent);
        Assert.Equal(new("maize-cob", 3, "sack"), Assert.Single(reading.Materials));
        Assert.False(reading.Unclear);
    }

    [Fact]
    public void Read_OwnWordAmongOthers_ReadsThemAll() => Assert.Equal(
        [new("cow-dung", 4, "bucket"), new("maize-cob", 3, "sack"), new("goat-manure", 2, "basin")],
        District.Read("4 buckets cow dung, 3 sacks zorbixa and 2 basins goat droppings", "en").Materials);

    [Fact]
    public void Read_OwnWordThatNeverGoesIn_IsRefused() =>
        Assert.Equal(["plastic"], District.Read("cow dung 3 buckets, blob 2", "en").Refused);

    [Fact]
    public void Read_OwnWordThatIsNothing_IsPassedOver()
    {
        var reading = District.Read("4 buckets fluffery cow dung, fluffery", "en");

        Assert.Equal(new("cow-dung", 4, "bucket"), Assert.Single(reading.Materials));
        Assert.Empty(reading.Unsettled);
    }

    [Theory]
    [InlineData("3 sacks husks", "coffee-husk")]
    [InlineData("3 sacks manure", "goat-manure")]
    [InlineData("3 sacks rice husks", "rice-husk")]
    [InlineData("3 sacks cow manure", "cow-dung")]
    public void Read_WordTheDistrictMeansOneThingBy_IsNoLongerAmbiguous(string text, string material)
    {
        var read = Assert.Single(District.Read(text, "en").Materials);

        Assert.Equal(new(material, 3, "sack"), read);
    }

    [Fact]
    public void Read_InAnotherDistrict_KnowsNothingOfIt() =>
        Assert.Equal("zorbixa", Assert.Single(TestReader.Sut.Read("3 sacks zorbixa", "en").Unsettled).Word);

    [Theory]
    [InlineData("stop")]
    [InlineData("hot")]
    [InlineData("three")]
    [InlineData("buckets")]
    [InlineData("and")]
    [InlineData("of")]
    public void MayMean_WordThatMustKeepItsMeaning_IsFalse(string word)
    {
        var misled = TestReader.Sut.With([new OwnWord("D", word, "en", "cow-dung")]);

        Assert.False(TestReader.Sut.MayMean(word));
        Assert.Empty(misled.Read($"{word}", "en").Materials);
    }

    [Theory]
    [InlineData("zorbixa")]
    [InlineData("husks")]
    [InlineData("donkey")]
    public void MayMean_AnyOtherWord_IsTrue(string word) => Assert.True(TestReader.Sut.MayMean(word));

    [Theory]
    [InlineData("Ng'ombo", "ngombo")]
    [InlineData(" Zorbix ", "zorbix")]
    [InlineData("two words", null)]
    [InlineData("b4", null)]
    [InlineData("", null)]
    [InlineData("abcdefghijklmnopqrstuvwxy", null)]
    public void Plain_Text_IsOneWordOfLettersOrNone(string text, string? plain) =>
        Assert.Equal(plain, OwnWord.Plain(text));
}
