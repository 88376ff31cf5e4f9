using System.Text.RegularExpressions;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Text;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Tests.Transcripts;

/// <summary>The conversation in a made-up language, every vowel of which has an accent.</summary>
public sealed class PseudoLanguageTests
{
    private static readonly string[] Names = ["Upper Ziwani", "Trainer, Marula Flats"];

    private static readonly DialogSet Dialogs = MakeDialogs();

    private static string Folder => Repository.Path("tests", "HeapText.Dialog.Tests", "Transcripts");

    public static TheoryData<string> EnglishTranscripts =>
    [
        .. Directory.GetFiles(Folder, "*-en.txt").Select(path => Path.GetFileName(path))
            .Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(EnglishTranscripts))]
    public void Conversation_InAMadeUpLanguage_HasNoWordFromTheCode(string name)
    {
        var text = File.ReadAllText(Path.Combine(Folder, name));

        var (_, replayed) = Transcript.Replay(text, Dialogs, PseudoLanguage.Code);

        Assert.NotEmpty(replayed.Messages);
        Assert.All(replayed.Messages, message =>
        {
            var words = Names.Aggregate(message, (rest, one) => rest.Replace(one, "", StringComparison.Ordinal));
            // What a farmer wrote is quoted as it was.
            words = Regex.Replace(words, "\"[a-z]+\"", "");
            Assert.DoesNotMatch("[aeiouAEIOU]", words);
        });
    }

    [Fact]
    public void Conversation_InAMadeUpLanguage_SaysAsMuchAsInEnglish()
    {
        var text = File.ReadAllText(Path.Combine(Folder, "01-whole-season-en.txt"));

        var made = Transcript.Replay(text, Dialogs, PseudoLanguage.Code).Replayed.Messages;
        var english = Transcript.Replay(text).Replayed.Messages;

        Assert.True(made.Count >= english.Count);
        Assert.All(made, message => Assert.Equal(TextEncoding.Gsm7, Fit.Measure(message).Encoding));
    }

    [Fact]
    public void Strange_EveryMessage_IsAboutAThirdLongerAndKeepsItsPlaceholders()
    {
        var english = Repository.Dialogs.Book.File("en");
        var made = PseudoLanguage.Of(english);

        Assert.All(english.Messages, message =>
            Assert.Equal(message.Value.Slots, made.Messages[message.Key].Slots));
        var growth = (double)made.Messages.Sum(m => m.Value.Fill(_ => "").Length)
            / english.Messages.Sum(m => m.Value.Fill(_ => "").Length);
        Assert.InRange(growth, 1.25, 1.4);
    }

    private static DialogSet MakeDialogs()
    {
        var english = Lexicon.Load(Repository.Path("dialogs")).Lexicons.Single(one => one.Language == "en");
        Lexicon[] lexicons =
            [english, new Lexicon(PseudoLanguage.Code, english.Phrases, english.Answers, Affixes.None)];
        var book = new Phrasebook([PseudoLanguage.Of(Repository.Dialogs.Book.File("en"))]);
        return new DialogSet(book, new Reader(lexicons), new AnswerReader(lexicons));
    }
}
