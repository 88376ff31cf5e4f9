using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public sealed class FitVerbTests : IDisposable
{
    private readonly StringWriter _output = new();
    private readonly StringWriter _error = new();

    [Theory]
    [InlineData("", """{"encoding":"GSM7","units":0,"segments":1,"segmentUnits":[0],"ussdPages":1}""")]
    [InlineData("@", """{"encoding":"GSM7","units":1,"segments":1,"segmentUnits":[1],"ussdPages":1}""")]
    [InlineData("ọ", """{"encoding":"UCS2","units":1,"segments":1,"segmentUnits":[1],"ussdPages":1}""")]
    public void Run_Text_WritesOneCompactDocument(string text, string expected)
    {
        Assert.Equal(ExitCodes.Done, FitVerb.Run(text, _output));
        Assert.Equal(expected + "\n", _output.ToString());
    }

    [Fact]
    public void RunLines_LongText_CountsEverySegmentUnderItsId()
    {
        var input = $$"""{"id":"x","text":"{{new string('A', 161)}}"}""";

        Assert.Equal(ExitCodes.Done, FitVerb.RunLines(new StringReader(input), _output, _error));
        Assert.Equal(
            """{"id":"x","encoding":"GSM7","units":161,"segments":2,"segmentUnits":[153,8],"ussdPages":2}""" + "\n",
            _output.ToString());
    }

    [Fact]
    public void RunLines_LineWithoutText_NamesTheFieldAndLine()
    {
        Assert.Equal(ExitCodes.BadInput, FitVerb.RunLines(new StringReader("{\"id\":1}"), _output, _error));
        Assert.StartsWith("line 1: text: ", _error.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData]
    [InlineData("--lines", "text")]
    [InlineData("two", "texts")]
    public void Create_WrongUse_IsAParseError(params string[] arguments) =>
        Assert.NotEmpty(FitVerb.Create().Parse(arguments).Errors);

    public void Dispose()
    {
        _output.Dispose();
        _error.Dispose();
    }
}
