using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Fakes;

/// <summary>Starts that must not come about.</summary>
internal static class RefusedStart
{
    /// <summary>Starts on a folder; the one line that says why it did not come about.</summary>
    public static async Task<string> Of(string folder, params string[] settings)
    {
        var fresh = settings.Contains("--fresh");
        using var output = new StringWriter();
        using var errors = new StringWriter();
        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(Token);
        deadline.CancelAfter(TimeSpan.FromSeconds(30));

        var exit = await ServeVerb.Run(
            [$"--Store:DataDirectory={folder}", "--Urls=http://127.0.0.1:0", .. settings.Where(s => s != "--fresh")],
            fresh, output, errors, deadline.Token);

        Assert.Equal("", output.ToString());
        Assert.Equal(ExitCodes.BadInput, exit);
        // A note on a language's review is no fault.
        var lines = errors.ToString().Split(Environment.NewLine, StringSplitOptions.RemoveEmptyEntries)
            .Where(line => !line.StartsWith("The texts in", StringComparison.Ordinal));
        var fault = Assert.Single(lines);
        Assert.DoesNotContain("(Parameter", fault, StringComparison.Ordinal);
        return fault;
    }
}
