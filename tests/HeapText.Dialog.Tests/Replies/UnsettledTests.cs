using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>Words for several materials, and words that nobody knows.</summary>
public sealed class UnsettledTests
{
    [Theory]
    [InlineData("2 buckets husks", "en", "husks", "rice-husk,coffee-husk,coconut-husk")]
    [InlineData("2 buckets of shells", "en", "shells", "groundnut-shell,coconut-husk,eggshell")]
    [InlineData("ndoo 2 maganda", "sw", "maganda", "rice-husk,coffee-husk,groundnut-shell,kitchen-waste")]
    public void Read_WordForSeveralMaterials_IsUnclearWithChoices(
        string text, string language, string word, string choices)
    {
        var reading = TestReader.Sut.Read(text, language);

        Assert.Equal(Intent.Stock, reading.Intent);
        Assert.True(reading.Unclear);
        Assert.Empty(reading.Materials);
        var unsettled = Assert.Single(reading.Unsettled);
        Assert.Equal((word, 2m, "bucket"), (unsettled.Word, unsettled.Amount, unsettled.Measure));
        Assert.Equal(choices.Split(','), unsettled.Choices);
    }

    [Theory]
    [InlineData("3 sacks grass", "en", "fresh-grass", "dry-grass,fresh-grass")]
    [InlineData("3 sacks manure", "en", "cow-dung", "cow-dung,goat-manure,poultry-manure")]
    [InlineData("magunia 3 ya nyasi", "sw", "fresh-grass", "dry-grass,fresh-grass")]
    public void Read_WordWithAUsualMaterial_KeepsItWithChoices(
        string text, string language, string usual, string choices)
    {
        var reading = TestReader.Sut.Read(text, language);

        Assert.False(reading.Unclear);
        var material = Assert.Single(reading.Materials);
        Assert.Equal((usual, 3m, "sack"), (material.Material, material.Amount, material.Measure));
        Assert.Equal(choices.Split(','), material.Choices);
    }

    [Theory]
    [InlineData("3 sacks dry grass")]
    [InlineData("3 sacks goat manure")]
    [InlineData("3 sacks rice husks")]
    [InlineData("3 sacks dung")]
    public void Read_WordForOneMaterial_HasNoChoices(string text)
    {
        var reading = TestReader.Sut.Read(text, "en");

        Assert.Empty(Assert.Single(reading.Materials).Choices);
        Assert.Empty(reading.Unsettled);
    }

    [Fact]
    public void Read_SlipAsNearToTwoMaterials_HasBothAsChoices()
    {
        var reading = TestReader.Sut.Read("3 sacks glrass, 2 buckets cow dung", "en");

        var unsettled = Assert.Single(reading.Unsettled);
        Assert.Equal(["dry-grass", "fresh-grass", "glass"], unsettled.Choices.Order());
        Assert.Equal((3m, "sack"), (unsettled.Amount, unsettled.Measure));
        Assert.Equal(new("cow-dung", 2, "bucket"), Assert.Single(reading.Materials));
    }

    [Theory]
    [InlineData("zorbix 3, cow dung 4 buckets")]
    [InlineData("3 zorbix and cow dung 4 buckets")]
    [InlineData("zorbix 3 buckets cow dung 4 buckets")]
    [InlineData("3 buckets zorbix, 4 buckets cow dung")]
    [InlineData("4 buckets cow dung, 3 sacks of zorbix")]
    [InlineData("4 buckets cow dung 3 sacks zorbix")]
    [InlineData("hello, 4 buckets cow dung, zorbix 3 sacks please")]
    public void Read_UnknownThingWithAmount_KeepsItFromTheNeighbour(string text)
    {
        var reading = TestReader.Sut.Read(text, "en");

        Assert.True(reading.Unclear);
        Assert.Equal(new("cow-dung", 4, "bucket"), Assert.Single(reading.Materials));
        var unknown = Assert.Single(reading.Unsettled);
        Assert.Equal(("zorbix", 3m), (unknown.Word, unknown.Amount));
        Assert.Empty(unknown.Choices);
    }

    /// <summary>"Zunda" is one letter from the Swahili for donkey, which is no material.</summary>
    [Fact]
    public void Read_UnknownThingNearAWordThatMeansNothing_KeepsItsAmount()
    {
        var reading = TestReader.Sut.Read("ndoo 3 zunda, ndoo 4 samadi ya ng'ombe", "sw");

        Assert.Equal(new("cow-dung", 4, "bucket"), Assert.Single(reading.Materials));
        Assert.Equal("zunda", Assert.Single(reading.Unsettled).Word);
    }

    /// <summary>"Mbondo" is one letter from the Swahili for the third day.</summary>
    [Fact]
    public void Read_UnknownThingNearAWordThatIsNoMaterial_IsAThing() => Assert.Equal("mbondo", Assert.Single(
        TestReader.Sut.Read("12 wheelbarrows maize stalks, 4 sacks mbondo", "en").Unsettled).Word);

    [Fact]
    public void Read_UnknownWordBetweenTwoMaterials_IsAThing()
    {
        var reading = TestReader.Sut.Read("cow dung, zorbix, dry grass", "en");

        Assert.Equal("zorbix", Assert.Single(reading.Unsettled).Word);
        Assert.Equal(2, reading.Materials.Count);
    }

    [Theory]
    [InlineData("hello juma, 3 buckets cow dung")]
    [InlineData("3 buckets cow dung. from Wekesa")]
    [InlineData("wekesa has 3 buckets cow dung")]
    [InlineData("xkqj wpp zz")]
    [InlineData("turned it with juma")]
    public void Read_UnknownWordThatIsNoThing_IsLeftOut(string text) =>
        Assert.Empty(TestReader.Sut.Read(text, "en").Unsettled);
}
