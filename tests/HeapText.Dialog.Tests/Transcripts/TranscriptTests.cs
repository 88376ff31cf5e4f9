using HeapText.Dialog.Text;

namespace HeapText.Dialog.Tests.Transcripts;

/// <summary>Whole conversations, as files to be read. HEAPTEXT_ACCEPT=1 writes them anew.</summary>
public sealed class TranscriptTests
{
    private static string Folder => Repository.Path("tests", "HeapText.Dialog.Tests", "Transcripts");

    public static TheoryData<string> Names =>
        [.. Directory.GetFiles(Folder, "*.txt").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Transcript_Replayed_IsAsWritten(string name)
    {
        var path = Path.Combine(Folder, name);
        var expected = File.ReadAllText(path);

        var (written, _) = Transcript.Replay(expected);

        if (Environment.GetEnvironmentVariable("HEAPTEXT_ACCEPT") == "1") File.WriteAllText(path, written);
        else Assert.Equal(expected, written);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Transcript_EveryMessage_KeepsItsAlphabetAndBudget(string name)
    {
        var text = File.ReadAllText(Path.Combine(Folder, name));
        var (_, replayed) = Transcript.Replay(text);
        var isWide = Repository.Dialogs.Book.File(text.Split(" · ")[1]).Alphabet == "UCS2";

        Assert.NotEmpty(replayed.Messages.Concat(replayed.Screens));
        Assert.All(replayed.Screens, screen => Assert.Equal(1, Fit.Measure(screen).UssdPages));
        Assert.All(replayed.Messages, message =>
        {
            var fitting = Fit.Measure(message);
            Assert.True(fitting.Segments <= (isWide ? 3 : 2), message);
            Assert.True(isWide || fitting.Encoding == TextEncoding.Gsm7, message);
        });
    }
}
