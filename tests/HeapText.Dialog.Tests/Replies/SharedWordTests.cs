using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>Words that several materials share, and words that mend each other.</summary>
public sealed class SharedWordTests
{
    private static readonly ReadMaterial Goat = new("goat-manure", 2, "bucket");
    private static readonly ReadMaterial Cow = new("cow-dung", 2, "bucket");

    [Theory]
    [InlineData("goat and cow manure 2 buckets each")]
    [InlineData("manure of goat and cow 2 buckets each")]
    [InlineData("2 buckets each of goat and cow manure")]
    public void Read_OneWordForTwoMaterials_BelongsToBoth(string text) =>
        Assert.Equal([Goat, Cow], TestReader.Sut.Read(text, "en").Materials);

    [Fact]
    public void Read_CountedAnimalBeforeAMaterial_IsNone() =>
        Assert.Equal([Goat], TestReader.Sut.Read("3 cows and goat manure 2 buckets", "en").Materials);

    [Fact]
    public void Read_SlipInAShortWordBesideItsOther_IsMended() => Assert.Equal(
        new("rice-husk", 2, "sack"), Assert.Single(TestReader.Sut.Read("2 sacks rice huks", "en").Materials));

    [Theory]
    [InlineData("3 buckets banana leafs", "banana-leaf-dry")]
    [InlineData("3 buckest cow dumg", "cow-dung")]
    public void Read_SlipThatMadeAnotherWord_IsMendedBesideItsOther(string text, string material) => Assert.Equal(
        new(material, 3, "bucket"), Assert.Single(TestReader.Sut.Read(text, "en").Materials));

    [Fact]
    public void Read_PhraseOfTheFarmersLanguage_GoesBeforeALongerForeignOne()
    {
        var sut = SmallLexicon.Reader(
            ("aa", "materials: {cow-dung: [dung], wood-ash: [ash]}\nmeasures: {bucket: [pot]}"),
            ("bb", "materials: {sawdust: [pot dung], lime: [white ash]}\nmeasures: {}"));

        Assert.Equal(new("cow-dung", 2, "bucket"), Assert.Single(sut.Read("2 pot dung", "aa").Materials));
        Assert.Equal("lime", Assert.Single(sut.Read("white ash", "aa").Materials).Material);
    }

    [Fact]
    public void Read_SeveralHeaps_TellsOfEach()
    {
        var reading = TestReader.Sut.Read("heap1 hot heap2 cold", "en");

        var other = Assert.Single(reading.OfOtherHeaps);
        Assert.Equal((1, Agronomy.Heap.Heat.Hot), (reading.Heap, reading.Check.Heat));
        Assert.Equal((2, Agronomy.Heap.Heat.Cold), (other.Heap, other.Check.Heat));
    }
}
