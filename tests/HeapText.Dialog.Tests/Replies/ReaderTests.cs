using System.Text;
using CsCheck;
using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

public sealed class ReaderTests
{
    private const int Runs = 10_000;

    private static readonly Gen<string> Words = OneOf(
        [.. TestReader.Shipped.Lexicons.SelectMany(lexicon => lexicon.Phrases).Select(p => string.Join(' ', p.Words))]);

    private static readonly Gen<string> Marks = OneOf(
        [" ", ", ", ". ", "/", "\n", "3", " -2 ", "1/2", "½", "0", "1,5", "2-", " 3)", "\ud800", "\u202e", "5000"]);

    [Fact]
    public void Read_AnyBytesAsText_NeverThrows() =>
        Gen.Byte.Array[0, 200].Sample(bytes => Read(Encoding.UTF8.GetString(bytes)), iter: Runs);

    [Fact]
    public void Read_AnyCharacters_NeverThrows() =>
        Gen.Char.Array[0, 200].Sample(chars => Read(new string(chars)), iter: Runs);

    [Fact]
    public void Read_AnyMixOfKnownWords_NeverThrows() =>
        Gen.Select(Words, Marks, (word, mark) => word + mark).Array[0, 15]
            .Sample(pieces => Read(string.Concat(pieces)), iter: Runs);

    [Fact]
    public void Read_TenThousandCharacters_NeverThrows()
    {
        string[] pieces = ["3 ", "a", "dry grass ", "é", "1/", "1,", "n ", "\ud83d", ", ", "not 3 ", "each ", "no "];

        Assert.All(pieces, piece => Read(string.Concat(Enumerable.Repeat(piece, 10_000 / piece.Length))));
    }

    [Fact]
    public void Read_RandomBytes_NeverThrows() =>
        Assert.All(Spoilt.RandomTexts(10_000), text => TestReader.Sut.Read(text, "sw"));

    [Fact]
    public void Read_LinesWithAnySlips_NeverThrows()
    {
        List<(string Language, string Text)> lines = [.. CorpusTests.Lines()];

        foreach (var (language, text) in Spoilt.Lines(lines, 100_000)) TestReader.Sut.Read(text, language);
    }

    [Theory]
    [InlineData("ng'ombe")]
    [InlineData("ng’ombe")]
    [InlineData("ng‘ombe")]
    [InlineData("ngʼombe")]
    [InlineData("ng`ombe")]
    [InlineData("ngombe")]
    [InlineData("NG'OMBE")]
    [InlineData("n'gombe")]
    public void Read_AnyApostrophe_IsTheSameWord(string cow) =>
        Assert.Equal(new("cow-dung", 3, "bucket"), Assert.Single(Read($"ndoo 3 mavi ya {cow}").Materials));

    [Theory]
    [InlineData("3 buckets cow dung")]
    [InlineData("3\u00a0buckets\u202fcow\u00a0dung")]
    [InlineData("3\tbuckets\u200b cow \u202edung\u202c")]
    [InlineData("“3 buckets” ‘cow dung’")]
    [InlineData("🐄 3 buckets cow dung 💩")]
    [InlineData("٣ buckets cow dung")]
    [InlineData("3 bückets ców dung")]
    [InlineData("3 buckets (cow dung)")]
    [InlineData("cow-dung: 3 buckets")]
    [InlineData("cow dung=3 buckets")]
    [InlineData("3BUCKETSCOWDUNG")]
    public void Read_OddCharacters_MakeNoDifference(string text) =>
        Assert.Equal(new("cow-dung", 3, "bucket"), Assert.Single(Read(text).Materials));

    [Theory]
    [InlineData("3 buckets d'ash")]
    [InlineData("3 buckets qu’ash")]
    public void Read_ElidedWordBeforeApostrophe_IsLeftOut(string text) =>
        Assert.Equal(new("wood-ash", 3, "bucket"), Assert.Single(Read(text).Materials));

    [Theory]
    [InlineData("deux bœufs morts")]
    [InlineData("DEUX BŒUFS MORTS")]
    public void Read_Ligature_IsTheTwoLettersItJoins(string text) =>
        Assert.Equal("dead-animal", Assert.Single(Read(text, "fr").Refused));

    [Theory]
    [InlineData("un sac de paille", 1)]
    [InlineData("un ou deux sacs de paille", 1)]
    [InlineData("entre un et deux sacs de paille", 1)]
    [InlineData("vingt et un sacs de paille", 21)]
    [InlineData("un sac et demi de paille", 1.5)]
    [InlineData("un inconnu a donné 3 sacs de paille", 3)]
    public void Read_WordForAAndOne_CountsOnlyAsAnAmount(string text, double amount) =>
        Assert.Equal(new("wheat-straw", (decimal)amount, "sack"), Assert.Single(Read(text, "fr").Materials));

    [Theory]
    [InlineData("un", 1)]
    [InlineData("Une.", 1)]
    [InlineData("nous avons un problème", null)]
    public void Read_WordForAAndOne_IsABareNumberOnlyAlone(string text, int? number) =>
        Assert.Equal(number, Read(text, "fr").BareNumber);

    [Theory]
    [InlineData("peeles")]
    [InlineData("lespee")]
    public void Read_WordMadeOfWordsOfTwoLanguages_IsNotTakenApart(string word) =>
        Assert.DoesNotContain(Read($"3 sacks {word}", "en").Materials, m => m.Material == "urine");

    [Theory]
    [InlineData("5 wheelbarows dry grass", "dry-grass")]
    [InlineData("5 weelbarrow dry grass", "dry-grass")]
    [InlineData("5 barrows tithnia", "tithonia")]
    [InlineData("5 barrows gliricidea leafs", "gliricidia")]
    [InlineData("toroli 5 nyasi kaavu", "dry-grass")]
    [InlineData("5 sacks sawdsut", "sawdust")]
    public void Read_Misspelling_IsMended(string text, string material) =>
        Assert.Equal((material, 5m), Read(text).Materials is [{ Amount: { } five } m] ? (m.Material, five) : default);

    [Fact]
    public void Read_OneSlipInAnyLongMaterialWord_NeverTurnsItIntoAnother()
    {
        var words = TestReader.Shipped.Lexicons.Single(lexicon => lexicon.Language == "en").Phrases
            .Where(phrase => phrase.Meaning.Kind == MeaningKind.Material && phrase.Words is [{ Length: >= 5 }])
            .Select(phrase => (Word: phrase.Words[0], phrase.Meaning.Key)).ToList();
        var known = TestReader.Shipped.Lexicons.SelectMany(l => l.Phrases).SelectMany(p => p.Words).ToHashSet();

        var wrong = words.SelectMany(word => Slips(word.Word).Where(slip => !known.Contains(slip))
            .Select(slip => (word.Key, Slip: slip, Reading: Read($"3 sacks {slip}", "en")))
            .Where(read => read.Reading.Materials.Any(m => m.Material != read.Key) && !read.Reading.Unclear)).ToList();

        Assert.Empty(wrong.Select(w => $"{w.Slip}: {w.Key} read as {w.Reading.Materials[0].Material}"));
    }

    [Theory]
    [InlineData("3 sacks sheer", "en")]
    [InlineData("great work", "en")]
    public void Read_EverydayWord_IsNotMendedIntoAMaterial(string text, string language) =>
        Assert.Empty(Read(text, language).Materials);

    [Theory]
    [InlineData("the dry grass caught fire", 0)]
    [InlineData("my son is sick, i have dry grass", 1)]
    public void Read_Emergency_ListsOnlyWhatIsSaidToBeThere(string text, int materials)
    {
        var reading = Read(text, "en");

        Assert.True(reading.Urgent);
        Assert.Equal(materials, reading.Materials.Count);
    }

    [Theory]
    [InlineData("1.000 kg lime", 1000.0)]
    [InlineData("1,000 kg lime", 1000.0)]
    [InlineData("1.5 kg lime", 1.5)]
    [InlineData("1.250 kg lime", 1.25)]
    [InlineData("1,000.5 kg lime", null)]
    [InlineData("20.000 kg lime", null)]
    [InlineData("1.000.000 kg lime", null)]
    public void Read_Thousands_AreNoDecimals(string text, double? amount)
    {
        var reading = Read(text, "en");

        Assert.Equal((decimal?)amount, Assert.Single(reading.Materials).Amount);
        Assert.Equal(amount is null, reading.Unclear);
    }

    [Theory]
    [InlineData("it is 3 and not 2 buckets of cow dung")]
    [InlineData("3 buckets and not 2 of cow dung")]
    [InlineData("3, not 2, buckets of cow dung")]
    [InlineData("2 not, 3 buckets of cow dung")]
    public void Read_NumberTakenBackAfterOrBefore_KeepsTheOther(string text) =>
        Assert.Equal([new("cow-dung", 3, "bucket")], Read(text, "en").Materials);

    [Theory]
    [InlineData("0 buckets cow dung")]
    [InlineData("minus 3 buckets cow dung")]
    [InlineData("-3 buckets of cow dung")]
    [InlineData("1001 buckets cow dung")]
    [InlineData("zero buckets of cow dung")]
    [InlineData("cow dung 2,000 buckets")]
    [InlineData("cow dung 999999999999999999999999 buckets")]
    public void Read_AmountThatCannotBeMeant_IsUnclearAndListedWithoutIt(string text)
    {
        var reading = Read(text, "en");

        Assert.True(reading.Unclear);
        Assert.Equal(new("cow-dung", null, "bucket"), Assert.Single(reading.Materials));
    }

    [Theory]
    [InlineData("stop", "sw")]
    [InlineData("Stop!", "en")]
    [InlineData("acha", "en")]
    public void Read_StopInAnyLanguage_IsStop(string text, string language) =>
        Assert.Equal(Intent.Stop, Read(text, language).Intent);

    [Theory]
    [InlineData("3 buckets cow dung no 4", "en")]
    [InlineData("3 buckets of cow dung, no 4 buckets", "en")]
    [InlineData("3 seaux de bouse non 4", "fr")]
    public void Read_NumberTakenBackAfterTheMaterial_IsTheLater(string text, string language) =>
        Assert.Equal(new("cow-dung", 4, "bucket"), Assert.Single(Read(text, language).Materials));

    [Theory]
    [InlineData("5 jerrycans of water, 3 buckets dung", "en")]
    [InlineData("water 5 jerrycans dung 3 buckets", "en")]
    [InlineData("12 april i have 3 buckets of cow dung", "en")]
    [InlineData("maji madumu 5, mavi ya ng'ombe ndoo 3", "sw")]
    [InlineData("5 bidons d'eau, 3 seaux de bouse", "fr")]
    [InlineData("5 litros de agua, 3 baldes de bosta de vaca", "pt")]
    public void Read_AmountOfSomethingElse_IsNotGivenToTheMaterial(string text, string language) =>
        Assert.Equal(new("cow-dung", 3, "bucket"), Assert.Single(Read(text, language).Materials));

    [Fact]
    public void Read_NoBeforeSorry_DeniesNothing() => Assert.Equal(
        new("dry-grass", 2, "sack"), Assert.Single(Read("dry grass 3 sacks no sorry 2 sacks", "en").Materials));

    [Theory]
    [InlineData("stop sending. 2 buckets dung", "en")]
    [InlineData("STOP, it smells bad", "en")]
    [InlineData("ash 2 tins. stop", "en")]
    [InlineData("sim parar", "pt")]
    public void Read_StopBesideOtherThings_IsStop(string text, string language) =>
        Assert.Equal(Intent.Stop, Read(text, language).Intent);

    [Theory]
    [InlineData("yes but my hand is burnt", "en")]
    [InlineData("yes, fire", "en")]
    [InlineData("ok ma femme est malade", "fr")]
    [InlineData("oui mais mon fils est malade", "fr")]
    [InlineData("sim mas o meu filho esta doente", "pt")]
    public void Read_YesBesideAnEmergency_AgreesToNothing(string text, string language)
    {
        var reading = Read(text, language);

        Assert.Equal((Intent.Unknown, true), (reading.Intent, reading.Urgent));
    }

    [Theory]
    [InlineData("the stick burnt my hand")]
    [InlineData("there is smoke")]
    [InlineData("the heap is on fire")]
    [InlineData("my child fainted")]
    [InlineData("he sprayed poison on it")]
    [InlineData("nimeungua mkono")]
    [InlineData("ameanguka amezimia")]
    [InlineData("2 buckets dung, my hand is bleeding")]
    [InlineData("2 buckets dung and there is smoke")]
    [InlineData("my child drank 2 cups of urine")]
    public void Read_Emergency_IsUrgent(string text) => Assert.True(Read(text, "en").Urgent);

    [Theory]
    [InlineData("3 sacks sprayed grass")]
    [InlineData("it is hot like fire")]
    [InlineData("2 buckets of ash from the fire")]
    [InlineData("ni moto")]
    public void Read_NoEmergency_IsNotUrgent(string text) => Assert.False(Read(text, "en").Urgent);

    [Fact]
    public void Read_UnknownLanguage_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Read("hot", "xx"));

    private static Gen<string> OneOf(string[] choices) => Gen.Int[0, choices.Length - 1].Select(i => choices[i]);

    private static Reading Read(string text, string language = "sw") => TestReader.Sut.Read(text, language);

    private static IEnumerable<string> Slips(string word) => Enumerable.Range(0, word.Length).SelectMany(i =>
        new[] { word.Remove(i, 1), word.Insert(i, "e"), word[..i] + "k" + word[(i + 1)..] });
}
