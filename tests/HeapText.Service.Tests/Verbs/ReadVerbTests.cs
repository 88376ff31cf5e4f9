using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public sealed class ReadVerbTests : IDisposable
{
    private readonly StringWriter _output = new();
    private readonly StringWriter _error = new();

    [Fact]
    public void Run_StockText_WritesOneCompactDocument()
    {
        var exit = ReadVerb.Run(DialogsFolder.Find(), "en", "2 barrows dry grass and plastic, hot", _output, _error);

        Assert.Equal(ExitCodes.Done, exit);
        Assert.Equal(
            """{"intent":"stock","also":[],"materials":[{"material":"dry-grass","amount":2,"measure":"wheelbarrow"}]"""
            + ""","refused":["plastic"],"check":{"heat":"hot"},"language":null,"unclear":false}""" + "\n",
            _output.ToString());
    }

    [Theory]
    [InlineData("2 sacks husks, 3 zorbix and dung", "\"unclear\":true,\"choices\":[{\"word\":\"husks\",\"materials\":"
        + "[\"rice-husk\",\"coffee-husk\",\"coconut-husk\"],\"amount\":2,\"measure\":\"sack\"}],"
        + "\"unknownWords\":[\"zorbix\"]}")]
    [InlineData("2 sacks grass", "\"materials\":[{\"material\":\"fresh-grass\",\"amount\":2,\"measure\":\"sack\"}]")]
    [InlineData("2 sacks grass", "\"unclear\":false,\"choices\":[{\"word\":\"grass\"")]
    public void Run_AmbiguousAndUnknownWords_AreNamed(string text, string expected)
    {
        ReadVerb.Run(DialogsFolder.Find(), "en", text, _output, _error);

        Assert.Contains(expected, _output.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("kuna siafu", "\"pests\":\"ants-termites\"")]
    [InlineData("nataka lundo jipya", "\"intent\":\"new-heap\"")]
    [InlineData("nataka kiingereza", "\"language\":\"en\"")]
    [InlineData("@ moto", "\"heat\":\"hot\"")]
    public void Run_Text_UsesTheCanonicalKeys(string text, string expected)
    {
        ReadVerb.Run(DialogsFolder.Find(), "sw", text, _output, _error);

        Assert.Contains(expected, _output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_UnknownLanguage_NamesTheFieldInOneLine()
    {
        var exit = ReadVerb.Run(DialogsFolder.Find(), "xx", "hot", _output, _error);

        Assert.Equal(ExitCodes.BadInput, exit);
        Assert.StartsWith("lang: there is no language 'xx'", _error.ToString(), StringComparison.Ordinal);
        Assert.Single(_error.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void Run_NoDialogsFolder_SaysSo()
    {
        Assert.Equal(ExitCodes.BadInput, ReadVerb.Run("/nowhere/dialogs", "en", "hot", _output, _error));
        Assert.StartsWith("dialogs: ", _error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void RunLines_SeveralTexts_AnswersEachUnderItsId()
    {
        var exit = Lines("""
            {"id": "a", "lang": "en", "text": "hot", "expect": {}}

            {"id": 2, "lang": "sw", "text": "baridi"}
            """);

        Assert.Equal(ExitCodes.Done, exit);
        var rows = _output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, rows.Length);
        Assert.StartsWith("{\"id\":\"a\",\"reading\":{\"intent\":\"check\",", rows[0], StringComparison.Ordinal);
        Assert.StartsWith("{\"id\":2,\"reading\":{", rows[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{\"id\":1,\"lang\":\"en\"}", "line 2: text: ")]
    [InlineData("{\"lang\":\"en\",\"text\":\"a\"}", "line 2: id: ")]
    [InlineData("{\"id\":1,\"text\":\"a\"}", "line 2: lang: ")]
    [InlineData("{\"id\":1,\"lang\":\"en\",\"text\":7}", "line 2: text: ")]
    [InlineData("{\"id\":1,\"lang\":\"en\",\"text\":\"\\ud800\"}", "line 2: text: ")]
    [InlineData("{\"id\":1,\"id\":2,\"lang\":\"en\",\"text\":\"a\"}", "line 2: ")]
    [InlineData("{oops", "line 2: not JSON: ")]
    [InlineData("[]", "line 2: must be")]
    public void RunLines_BadLine_IsSaidInOneLineWithItsNumber(string bad, string expected)
    {
        var exit = Lines("{\"id\":0,\"lang\":\"en\",\"text\":\"hot\"}\n" + bad);

        Assert.Equal(ExitCodes.BadInput, exit);
        Assert.StartsWith(expected, _error.ToString(), StringComparison.Ordinal);
        Assert.Single(_error.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Single(_output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Theory]
    [InlineData("--lang", "en")]
    [InlineData("hot")]
    [InlineData("--lang", "en", "--lines", "hot")]
    public void Create_WrongUse_IsAParseError(params string[] arguments) =>
        Assert.NotEmpty(ReadVerb.Create().Parse(arguments).Errors);

    [Theory]
    [InlineData("--lang", "en", "-3 buckets cow dung")]
    [InlineData("--lang", "en", "")]
    [InlineData("--lines")]
    public void Create_RightUse_Parses(params string[] arguments) =>
        Assert.Empty(ReadVerb.Create().Parse(arguments).Errors);

    private int Lines(string input) =>
        ReadVerb.RunLines(DialogsFolder.Find(), new StringReader(input), _output, _error);

    public void Dispose()
    {
        _output.Dispose();
        _error.Dispose();
    }
}
