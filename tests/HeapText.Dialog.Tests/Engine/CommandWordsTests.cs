using System.Text.RegularExpressions;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Tests.Engine;

public sealed partial class CommandWordsTests
{
    private static readonly Dictionary<string, Dictionary<string, Intent>> Wanted = new()
    {
        ["am"] = new()
        {
            ["BUDN"] = Intent.Start,
            ["ቡድን"] = Intent.Start,
            ["አቁም"] = Intent.Stop,
            ["እርዳታ"] = Intent.Help,
            ["ሰው"] = Intent.Person,
            ["ሠራሁ"] = Intent.Built,
            ["መጠን"] = Intent.Amounts,
            ["ቀጥሎ"] = Intent.Next,
            ["ገለበጥኩ"] = Intent.Turned,
            ["ቆይቶ"] = Intent.Delay,
            ["አዲስ ክምር"] = Intent.NewHeap,
            ["ጀምር"] = Intent.Start,
            ["AMARIGNA"] = Intent.Language,
            ["አይ"] = Intent.No,
        },
        ["en"] = new()
        {
            ["JOIN"] = Intent.Start,
            ["STOP"] = Intent.Stop,
            ["HELP"] = Intent.Help,
            ["PERSON"] = Intent.Person,
            ["BUILT"] = Intent.Built,
            ["AMOUNTS"] = Intent.Amounts,
            ["NEXT"] = Intent.Next,
            ["TURNED"] = Intent.Turned,
            ["LATER"] = Intent.Delay,
            ["NEW HEAP"] = Intent.NewHeap,
            ["START"] = Intent.Start,
            ["ENGLISH"] = Intent.Language,
            ["NO"] = Intent.No,
        },
        ["sw"] = new()
        {
            ["JIUNGE"] = Intent.Start,
            ["STOP"] = Intent.Stop,
            ["MSAADA"] = Intent.Help,
            ["MTU"] = Intent.Person,
            ["NIMEJENGA"] = Intent.Built,
            ["VIPIMO"] = Intent.Amounts,
            ["NINI SASA"] = Intent.Next,
            ["NIMEGEUZA"] = Intent.Turned,
            ["BAADAYE"] = Intent.Delay,
            ["LUNDO JIPYA"] = Intent.NewHeap,
            ["ANZA"] = Intent.Start,
            ["KISWAHILI"] = Intent.Language,
            ["HAPANA"] = Intent.No,
        },
        ["pt"] = new()
        {
            ["ENTRAR"] = Intent.Start,
            ["PARAR"] = Intent.Stop,
            ["AJUDA"] = Intent.Help,
            ["PESSOA"] = Intent.Person,
            ["MONTEI"] = Intent.Built,
            ["MEDIDAS"] = Intent.Amounts,
            ["SEGUINTE"] = Intent.Next,
            ["VIREI"] = Intent.Turned,
            ["DEPOIS"] = Intent.Delay,
            ["NOVA PILHA"] = Intent.NewHeap,
            ["PORTUGUES"] = Intent.Language,
            ["NAO"] = Intent.No,
        },
        ["fr"] = new()
        {
            ["JOINDRE"] = Intent.Start,
            ["STOP"] = Intent.Stop,
            ["AIDE"] = Intent.Help,
            ["FORMATEUR"] = Intent.Person,
            ["CONSTRUIT"] = Intent.Built,
            ["QUANTITES"] = Intent.Amounts,
            ["SUITE"] = Intent.Next,
            ["RETOURNE"] = Intent.Turned,
            ["PLUS TARD"] = Intent.Delay,
            ["NOUVEAU TAS"] = Intent.NewHeap,
            ["COMMENCER"] = Intent.Start,
            ["FRANCAIS"] = Intent.Language,
            ["NON"] = Intent.No,
        },
    };

    private static readonly Dictionary<string, string> Talk = new()
    {
        ["HOUR"] = "hour",
        ["SAA"] = "hour",
        ["CROP"] = "crop",
        ["ZAO"] = "crop",
        ["METHOD"] = "method",
        ["NJIA"] = "method",
        ["HORA"] = "hour",
        ["CULTURA"] = "crop",
        ["METODO"] = "method",
        ["HEURE"] = "hour",
        ["ሰዓት"] = "hour",
        ["CULTURE"] = "crop",
        ["METHODE"] = "method",
        ["ሰብል"] = "crop",
        ["ዘዴ"] = "method",
    };

    /// <summary>What strangers and those of another language are told to text, by the language that tells it.</summary>
    public static TheoryData<string, string> ToldToAll => new(
        from language in Repository.Dialogs.Book.Languages
        from message in (MessageSpec[])[Catalogue.HowToJoin, Catalogue.LanguageHint]
        from word in Marked().Matches(Repository.Dialogs.Book.Say(language, message)).Select(match => match.Value)
        select (language, word));

    [Theory]
    [MemberData(nameof(ToldToAll))]
    public void Word_ToldToStrangers_IsReadWhateverTheirLanguage(string teller, string word) =>
        Assert.All(Repository.Dialogs.Book.Languages, language => Assert.True(
            Repository.Dialogs.Reader.Read($"{word} 41", language).Intent is Intent.Start or Intent.Language,
            $"{word} of {teller} in {language}"));

    [Fact]
    public void WordToJoin_OfALanguage_TellsThatLanguage() => Assert.All(Repository.Dialogs.Book.Languages, language =>
    {
        var join = Marked().Match(Repository.Dialogs.Book.Say(language, Catalogue.HowToJoin)).Value;

        Assert.Equal(language, Repository.Dialogs.Reader.LanguageOf($"{join} 41"));
    });

    public static TheoryData<string, string> Named()
    {
        TheoryData<string, string> named = [];
        foreach (var language in Repository.Dialogs.Book.Languages)
            foreach (var word in WordsIn(language)) named.Add(language, word);
        return named;
    }

    [Theory]
    [MemberData(nameof(Named))]
    public void Word_NamedInAMessage_IsReadAsWhatTheMessageSays(string language, string word)
    {
        var reading = Repository.Dialogs.Reader.Read(word, language);
        var said = Repository.Dialogs.Answers.Read("talk", word, language);

        if (Talk.TryGetValue(word, out var asked)) Assert.Equal(asked, said);
        else Assert.Equal(Wanted[language][word], reading.Intent);
    }

    private static IEnumerable<string> WordsIn(string language) => Repository.Dialogs.Book.File(language)
        .Messages.Values.SelectMany(message => Marked().Matches(message.ToString()).Select(match => match.Value))
        .Distinct().Order();

    /// <summary>Capitals, or «…» in a script that has none.</summary>
    [GeneratedRegex(@"\b[A-Z]{2,}(?: [A-Z]{2,})*\b|(?<=«)[^»]+(?=»)")]
    private static partial Regex Marked();
}
