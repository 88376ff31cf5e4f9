using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>Amounts as they are written: glued to units, said twice, taken back, marked as items of a list.</summary>
public sealed class AmountTests
{
    [Theory]
    [InlineData("50kg ash", "wood-ash", 50, "kg")]
    [InlineData("20l urine", "urine", 20, "litre")]
    [InlineData("ash 100kg", "wood-ash", 100, "kg")]
    [InlineData("2 50kg bags of ash", "wood-ash", 2, "small-sack")]
    public void Read_AmountGluedToAUnit_IsSplit(string text, string material, int amount, string measure) =>
        Assert.Equal(new(material, amount, measure), Assert.Single(Read(text).Materials));

    [Theory]
    [InlineData("500 g lime", 0.5)]
    [InlineData("250 grams of lime", 0.25)]
    [InlineData("lime 1500g", 1.5)]
    public void Read_Grams_CountsKilograms(string text, double amount) =>
        Assert.Equal(new("lime", (decimal)amount, "kg"), Assert.Single(Read(text).Materials));

    [Theory]
    [InlineData("six (6) bundles dry grass")]
    [InlineData("6 (six) bundles dry grass")]
    [InlineData("2 bundles no sorry 6 bundles dry grass")]
    public void Read_AmountSaidTwice_IsOne(string text) =>
        Assert.Equal(new("dry-grass", 6, "bundle"), Assert.Single(Read(text).Materials));

    [Fact]
    public void Read_TwoFiguresWithoutATie_AsksWhichIsMeant()
    {
        var reading = Read("3 4 buckets ash");

        Assert.Equal(new("wood-ash", null, "bucket"), Assert.Single(reading.Materials));
        Assert.True(reading.Unclear);
    }

    [Fact]
    public void Read_TwoFiguresBetweenTwoThings_GivesOneToEach() =>
        Assert.Equal([new("cow-dung", 3, null), new("wood-ash", 4, "bucket")], Read("dung 3 4 buckets ash").Materials);

    [Theory]
    [InlineData("I have: 1. ash 2 buckets 2. dung 3 sacks")]
    [InlineData("a) ash 2 buckets b) dung 3 sacks")]
    [InlineData("(a) ash 2 buckets (b) dung 3 sacks")]
    public void Read_ListWithMarks_TakesNoMarkForAnAmount(string text) =>
        Assert.Equal([new("wood-ash", 2, "bucket"), new("cow-dung", 3, "sack")], Read(text).Materials);

    [Fact]
    public void Read_MarkedListWithoutAmounts_HasNone() =>
        Assert.All(Read("I have: 1. ash 2. dung 3. lime").Materials, material => Assert.Null(material.Amount));

    [Fact]
    public void Read_AmountsBehindColons_AreNoMarks() =>
        Assert.Equal([new("cow-dung", 1, null), new("wood-ash", 2, null)], Read("dung: 1. ash: 2.").Materials);

    [Theory]
    [InlineData("2 buckets ash, 3 buckets florgs", "bucket")]
    [InlineData("2 buckets ash and 3 florgs", null)]
    public void Read_UnknownThingAtTheEnd_KeepsItsAmount(string text, string? measure)
    {
        var reading = Read(text);

        Assert.Equal(new("wood-ash", 2, "bucket"), Assert.Single(reading.Materials));
        Assert.Equal(new("", 3, measure) { Word = "florgs" }, Assert.Single(reading.Unsettled));
    }

    [Theory]
    [InlineData("sack of ash", 1)]
    [InlineData("2 buckets dung and sack of ash", 1)]
    [InlineData("sacks of ash", null)]
    [InlineData("sack ash 3", 3)]
    public void Read_MeasureWithoutANumber_IsOneWhereTheWordIsForOne(string text, int? amount) =>
        Assert.Contains(new("wood-ash", amount, "sack"), Read(text).Materials);

    [Fact]
    public void Read_PictureBetweenThings_PartsThem() =>
        Assert.Equal([new("wood-ash", null, null), new("cow-dung", 3, "sack")], Read("ash 😀 3 sacks dung").Materials);

    private static Reading Read(string text) => TestReader.Sut.Read(text, "en");
}
