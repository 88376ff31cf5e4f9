using System.CommandLine;
using System.Text.Json;

namespace HeapText.Service.Tests.Verbs;

/// <summary>What came of a verb run in this process.</summary>
internal sealed record VerbRun(int Exit, string Output, string Error)
{
    internal JsonElement Json => JsonDocument.Parse(Output).RootElement;

    internal static VerbRun Of(Func<TextReader, TextWriter, TextWriter, int> verb, string input)
    {
        using var reader = new StringReader(input);
        using var output = new StringWriter();
        using var error = new StringWriter();
        var exit = verb(reader, output, error);
        return new VerbRun(exit, output.ToString(), error.ToString());
    }

    internal static async Task<VerbRun> Of(Command verb, params string[] args)
    {
        await using var output = new StringWriter();
        await using var error = new StringWriter();
        var exit = await verb.Parse(args)
            .InvokeAsync(new InvocationConfiguration { Output = output, Error = error }, Token);
        return new VerbRun(exit, output.ToString(), error.ToString());
    }

    internal void AssertRefused(string error)
    {
        Assert.Equal(1, Exit);
        Assert.Empty(Output);
        Assert.Equal(error, Error.TrimEnd());
    }
}
