using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>Little words that do more than one thing, and words run together, in languages made up for it.</summary>
public sealed class LittleWordTests : IDisposable
{
    private const string MadeUp = """
        language: zz
        provenance: Made up.
        reviewed: false
        materials: {maize-stover: [straw te maize], wood-ash: [ash], lime: [lime, cal], charcoal: [charcoal, char]}
        refused: {plastic: [plastic, straw maize .. foil]}
        measures: {sack: [sacks]}
        numbers: {"1": [one]}
        checks: {heat: {cool: [fresh], cold: [cold]}}
        intents: {"no": [not]}
        particles: {not: [not], link: [te, o], or: [te], and: [plus], more: [plus, extra], one: [one]}
        plain: [tractor, fresh]
        answers: {}
        """;

    private const string Other = """
        language: yy
        provenance: Made up.
        reviewed: false
        materials: {lime: [kal]}
        refused: {}
        measures: {}
        numbers: {}
        checks: {}
        intents: {}
        particles: {}
        answers: {}
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("heaptext-little").FullName;

    [Fact]
    public void Load_WordOfTwoParticles_HasNoFault() => Assert.Empty(Load().Faults);

    [Fact]
    public void Read_LinkThatIsAlsoTo_JoinsPhrasesAndRanges() =>
        Assert.Equal([new("maize-stover", 3, "sack")], Read("3 te 5 sacks straw te maize").Materials);

    [Theory]
    [InlineData("plus 2 sacks ash", true)]
    [InlineData("3 sacks lime plus 2 sacks ash", false)]
    [InlineData("3 sacks lime, extra 2 sacks ash", true)]
    [InlineData("3 sacks lime", false)]
    public void Read_MoreThatIsAlsoAnd_AddsOnlyBeforeTheList(string text, bool isInAddition) =>
        Assert.Equal(isInAddition, Read(text).InAddition);

    [Fact]
    public void Read_WordThatOnlyEndsLikeALink_IsNotCut() => Assert.Empty(Read("limete").Materials);

    [Fact]
    public void Read_RunTogetherWordsWithALinkBetween_AreCut() =>
        Assert.Equal([new("maize-stover", 2, "sack")], Read("2 sacks strawtemaize").Materials);

    [Theory]
    [InlineData("straw maize w/ foil", true)]
    [InlineData("straw maize / foil", false)]
    [InlineData("straw maize/ foil", false)]
    public void Read_SlashThatShortensAWord_IsNoBreak(string text, bool isOnePhrase) =>
        Assert.Equal(isOnePhrase, Read(text).Refused.Contains("plastic"));

    [Theory]
    [InlineData("one", 1)]
    [InlineData("one!", 1)]
    [InlineData("one tractor", null)]
    [InlineData("one sacks", 1)]
    public void Read_OneThatIsAlsoA_AnswersAloneOrWithAMeasure(string text, int? number) =>
        Assert.Equal(number, Read(text).BareNumber);

    [Theory]
    [InlineData("not", Intent.No)]
    [InlineData("not, tractor", Intent.No)]
    [InlineData("not 3", Intent.Unknown)]
    [InlineData("not cold", Intent.Unknown)]
    public void Read_NoThatIsAlsoNot_IsARefusalUnlessItTakesSomethingBack(string text, Intent intent) =>
        Assert.Equal(intent, Read(text).Intent);

    [Theory]
    [InlineData("2 sacks fresh ash", false)]
    [InlineData("2 sacks ash fresh", false)]
    [InlineData("fresh", true)]
    [InlineData("2 sacks ash, fresh", true)]
    public void Read_CoolThatIsAlsoPlain_IsNoReportBesideAMaterial(string text, bool isReported) =>
        Assert.Equal(isReported, Read(text).Check.Heat is not null);

    [Fact]
    public void Read_LinkInsideAPhrase_MakesItWeighNoMore() =>
        Assert.Equal(["plastic"], Read("straw te maize and foil").Refused);

    [Fact]
    public void Read_WordOneSlipAway_IsMendedNotCut() =>
        Assert.Equal("charcoal", Assert.Single(Read("charcal").Materials).Material);

    [Fact]
    public void Read_WordThatTwoLanguagesMakeUp_IsNotCut() => Assert.Empty(Read("ashkal").Materials);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private Reading Read(string text) => new Reader(Load().Lexicons).Read(text, "zz");

    private LexiconLoad Load()
    {
        foreach (var (language, words) in new[] { ("yy", Other), ("zz", MadeUp) })
        {
            var folder = Directory.CreateDirectory(Path.Combine(_folder, language)).FullName;
            File.WriteAllText(Path.Combine(folder, "words.yml"), words);
        }

        return Lexicon.Load(_folder);
    }
}
