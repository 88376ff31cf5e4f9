using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

public sealed class EthiopicTests
{
    private static readonly Reader Sut = SmallLexicon.Reader("""
        affixes: {before: [የ], after: [ን, ኡ, ኦች, ና]}
        materials: {maize-stover: [በቆሎ አገዳ], dry-grass: [ደረቅ ሣር], wood-ash: [አመድ], vegetable-waste: [ጎመን ቅጠል]}
        measures: {bucket: [ባልዲ], sack: [ጆንያ], kg: [ኪግ]}
        particles: {and: [ና]}
        """);

    [Theory]
    [InlineData("3 ጆንያ የበቆሎ አገዳ", "maize-stover")]
    [InlineData("3 ጆንያ በቆሎ አገዳውን", "maize-stover")]
    [InlineData("3 ጆንያ ዐመድ", "wood-ash")]
    [InlineData("3 ጆንያ አመዱን", "wood-ash")]
    [InlineData("3 ጆንያዎች ደረቅ ሳሮች", "dry-grass")]
    [InlineData("3 ጆንያ የጐመን ቅጠሉን", "vegetable-waste")]
    [InlineData("3 ጆንያ የበቀሎ አገዳ", "maize-stover")]
    [InlineData("3 ጆንያ yebekolo agada", "maize-stover")]
    [InlineData("3 jonya yebeqolo ageda", "maize-stover")]
    public void Read_LettersThatSoundAlikeEndingsSlipsAndLatinLetters_AreTheSameWord(string text, string material) =>
        Assert.Equal(new(material, 3, "sack"), Assert.Single(Sut.Read(text, "zz").Materials));

    [Theory]
    [InlineData("፫", 3)]
    [InlineData("፲", 10)]
    [InlineData("፳፭", 25)]
    [InlineData("፻", 100)]
    [InlineData("፪፻፶", 250)]
    [InlineData("፱፻፺፱", 999)]
    public void Read_Numerals_AreTheirNumber(string text, double number) =>
        Assert.Equal((decimal)number, Sut.Read(text, "zz").BareNumber);

    [Fact]
    public void Read_EndlessNumerals_NeverThrows() =>
        Assert.True(Sut.Read(new string('፼', 10_000) + "ባልዲ", "zz").Unclear);

    [Theory]
    [InlineData("አመድ፡3፡ባልዲ፣ደረቅ፡ሣር፡2፡ጆንያ")]
    [InlineData("አመድ 3 ባልዲ። ደረቅ ሣር 2 ጆንያ።")]
    [InlineData("አመድ 3 ባልዲ፤ ደረቅ ሣር 2 ጆንያ")]
    [InlineData("አመድ፦ ባልዲ 3፡፡ ደረቅ ሣር፦ ጆንያ 2፡፡")]
    [InlineData("አመድ ባልዲ 3:: ደረቅ ሣር ጆንያ 2::")]
    [InlineData("አመድ 3 ባልዲና ደረቅ ሣር 2 ጆንያ")]
    public void Read_ItsOwnPunctuation_PartsTheList(string text) =>
        Assert.Equal([new("wood-ash", 3, "bucket"), new("dry-grass", 2, "sack")], Sut.Read(text, "zz").Materials);

    [Theory]
    [InlineData("3 ኪ.ግ አመድ")]
    [InlineData("3 ኪ/ግ አመድ")]
    public void Read_ShortenedWordWithAMarkInside_IsTheWord(string text) =>
        Assert.Equal(new("wood-ash", 3, "kg"), Assert.Single(Sut.Read(text, "zz").Materials));
}
