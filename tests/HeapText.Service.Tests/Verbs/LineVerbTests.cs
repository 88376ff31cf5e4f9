using System.CommandLine;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Tests.Rules;
using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public sealed class LineVerbTests
{
    private static readonly string Examples = Path.Combine(RepositoryFolder.Find(), "docs", "lines", "examples");

    [Theory]
    [InlineData("form-reply-in-answer.json", "bell")]
    [InlineData("json-both-ways.json", "reed")]
    [InlineData("query-header-screens.json", "mesa")]
    [InlineData("xml.json", "pine")]
    public async Task List_OfAFile_ShowsLinesWithoutSecrets(string example, string name)
    {
        var run = await Run("list", "--settings", Path.Combine(Examples, example));

        var line = Assert.Single(run.Json.GetProperty("lines").EnumerateArray());
        Assert.Equal((name, "mapped"), (line.GetProperty("name").GetString(), line.GetProperty("form").GetString()));
        Assert.Equal($"/sms/{name}", line.GetProperty("hooks")[0].GetProperty("path").GetString());
        Assert.DoesNotContain("replace-this", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task List_LinesOfOtherForms_ShowsWhereTheySendTo()
    {
        var run = await Run("list", "--Lines:lake:Url=https://gateway.example/in?key=hush", "--Lines:lake:From=100",
            "--Lines:lake:Secrets:0=whsec_aGVhcHRleHQtc2lnbmluZy10ZXN0LWtleS0wMQ==", "--Lines:tower:Form=smpp",
            "--Lines:tower:From=3344", "--Lines:tower:Host=centre.example", "--Lines:tower:SystemId=heap",
            "--Lines:tower:Password=hush");

        Assert.Equal(["https://gateway.example/in", "centre.example:3550"],
            run.Json.GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("sendsTo").GetString()!));
        Assert.DoesNotContain("hush", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Try_Text_ShowsWhatIsReadAndBothAnswers()
    {
        var run = await Try("form-reply-in-answer.json", "bell", "sms", """
            POST /sms/bell HTTP/1.1
            X-Bell-Key: replace-this-bell-key
            Content-Type: application/x-www-form-urlencoded

            note=n-1&caller=0722000001&words=HEAP+41

            """);

        Assert.True(run.Json.GetProperty("genuine").GetBoolean());
        Assert.Equal("""[{"id":"n-1","from":"+254722000001","text":"HEAP 41"}]""",
            run.Json.GetProperty("read").GetRawText());
        var answers = run.Json.GetProperty("answers");
        Assert.Equal(
            "Here stands what the farmer reads.", answers.GetProperty("reply").GetProperty("body").GetString());
        Assert.Equal(204, answers.GetProperty("quiet").GetProperty("status").GetInt32());
    }

    [Fact]
    public async Task Try_Step_ShowsBothScreens()
    {
        var run = await Try("query-header-screens.json", "mesa", "ussd",
            "GET /ussd/mesa?visit=v&phone=0722000001&keys=1*2 HTTP/1.1\r\nHost: here\r\n\r\n");

        Assert.Equal("""[{"session":"v","step":2,"from":"+254722000001","input":"2"}]""",
            run.Json.GetProperty("read").GetRawText());
        Assert.Equal("leave", run.Json.GetProperty("answers").GetProperty("closed").GetProperty("headers")
            .GetProperty("X-Mesa-Next").GetString());
    }

    [Fact]
    public async Task Try_Receipts_ShowsWhatEachMeans()
    {
        var run = await Try("xml.json", "pine", "receipts", """
            POST /receipts/pine HTTP/1.1
            Authorization: Bearer guess

            <bag><outcome number="1"><word>read</word></outcome><outcome number="2"><word>walking</word></outcome></bag>
            """);

        Assert.False(run.Json.GetProperty("genuine").GetBoolean());
        Assert.Equal(["delivered", "on its way"],
            run.Json.GetProperty("read").EnumerateArray().Select(one => one.GetProperty("state").GetString()));
    }

    [Fact]
    public async Task Try_RequestThatCannotBeRead_ShowsTheFaults()
    {
        var run = await Try("json-both-ways.json", "reed", "calls", "POST /calls/reed HTTP/1.1\n\n{\"ring\":{}}");

        Assert.Equal(ExitCodes.Done, run.Exit);
        Assert.Equal(["Id: it is missing.", "From: it is missing."],
            run.Json.GetProperty("faults").EnumerateArray().Select(fault => fault.GetString()));
        Assert.Empty(run.Json.GetProperty("answers").EnumerateObject());
    }

    [Theory]
    [InlineData("form-reply-in-answer.json", "bell")]
    [InlineData("json-both-ways.json", "reed")]
    [InlineData("query-header-screens.json", "mesa")]
    [InlineData("xml.json", "pine")]
    public async Task Try_Send_ShowsTheRequestWithoutSecrets(string example, string name)
    {
        var run = await Run(
            "try", name, "--send", "--text", "HOT & DRY", "--settings", Path.Combine(Examples, example));

        Assert.Contains($"https://{name}.example", run.Json.GetProperty("url").GetString(), StringComparison.Ordinal);
        Assert.Contains("HOT", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("replace-this", run.Output, StringComparison.Ordinal);
        Assert.Contains("HIDDEN", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nobody", "name: there is no such line; there are: bell")]
    [InlineData("bell", "line 1: it is no request line")]
    public async Task Try_BadInput_IsSaidInOneLine(string name, string said)
    {
        var run = await Try("form-reply-in-answer.json", name, "sms", "hello");

        Assert.Equal(ExitCodes.BadInput, run.Exit);
        Assert.StartsWith(said, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public async Task Try_HookThatIsNotMapped_IsBadInput()
    {
        var run = await Try("form-reply-in-answer.json", "bell", "calls", "POST / HTTP/1.1\n\n");

        Assert.Equal(ExitCodes.BadInput, run.Exit);
        Assert.StartsWith("hook: the line bell has no such hook", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task List_OfAFaultyFile_NamesTheFaults()
    {
        using var folder = new TempFolder();
        var file = Path.Combine(folder.Path, "lines.json");
        await File.WriteAllTextAsync(file, """{"Lines":{"x":{"Form":"mapped","From":"1","Sms":{"Id":"x"}}}}""", Token);

        var run = await Run("list", "--settings", file);

        Assert.Equal(ExitCodes.BadInput, run.Exit);
        Assert.Contains("Lines:x:Sms:Id is no place", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("list", "stray")]
    [InlineData("try", "bell")]
    [InlineData("try", "bell", "--send", "--hook", "sms")]
    [InlineData("try", "bell", "--hook", "post")]
    public async Task Line_WrongUse_ExitsSo(params string[] args) =>
        Assert.Equal(ExitCodes.WrongUse, (await Run(args)).Exit);

    private static async Task<VerbRun> Try(string example, string name, string hook, string sample)
    {
        using var folder = new TempFolder();
        var file = Path.Combine(folder.Path, "sample.txt");
        await File.WriteAllTextAsync(file, sample, Token);
        return await Run("try", name, file, "--hook", hook, "--settings", Path.Combine(Examples, example));
    }

    private static async Task<VerbRun> Run(params string[] args)
    {
        await using var output = new StringWriter();
        await using var error = new StringWriter();
        var parsed = LineVerb.Create().Parse(args);
        if (parsed.Errors.Count > 0) return new VerbRun(ExitCodes.WrongUse, "", parsed.Errors[0].Message);
        var exit = await parsed.InvokeAsync(
            new InvocationConfiguration { Output = output, Error = error }, Token);
        return new VerbRun(exit, output.ToString(), error.ToString());
    }
}
