using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

public sealed class AffixTests
{
    private static readonly Reader Sut = SmallLexicon.Reader("""
        affixes: {before: [pre], after: [s, ud]}
        materials: {cow-dung: [dung], wood-ash: [ash], dry-grass: ["dry grass", preserve]}
        measures: {bucket: [bucket]}
        particles: {and: [ud], each: [each]}
        """);

    [Theory]
    [InlineData("3 buckets predung", "cow-dung")]
    [InlineData("3 prebuckets predungs", "cow-dung")]
    [InlineData("3 bucket dry pregrasss", "dry-grass")]
    public void Read_KnownWordWithBeginningAndEnding_IsThatWord(string text, string material) =>
        Assert.Equal(new(material, 3, "bucket"), Assert.Single(Sut.Read(text, "zz").Materials));

    [Fact]
    public void Read_EndingThatIsAWordItself_IsReadAsThatWordToo() =>
        Assert.Equal([new("cow-dung", 2, "bucket"), new("wood-ash", 2, "bucket")],
            Sut.Read("dungud ash each 2 bucket", "zz").Materials);

    [Fact]
    public void Read_WordThatOnlyLooksInflected_StaysItself() =>
        Assert.Equal("dry-grass", Assert.Single(Sut.Read("3 bucket preserve", "zz").Materials).Material);

    [Fact]
    public void Read_InflectedWordWithASlip_IsMended() =>
        Assert.Equal("cow-dung", Assert.Single(Sut.Read("3 prebuckkets dung", "zz").Materials).Material);

    [Theory]
    [InlineData("pre")]
    [InlineData("preprepreprepre")]
    [InlineData("ssssssssssssssssssssssssssssssssssssssssssssssssssssssssssss")]
    public void Read_NothingButAffixes_IsUnknown(string text) =>
        Assert.Equal(Intent.Unknown, Sut.Read(text, "zz").Intent);
}
