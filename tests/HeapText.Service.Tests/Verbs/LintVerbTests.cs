using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public sealed class LintVerbTests : IDisposable
{
    private readonly StringWriter _output = new();
    private readonly StringWriter _errors = new();
    private readonly string _folder = Directory.CreateTempSubdirectory("lint").FullName;

    public void Dispose()
    {
        _output.Dispose();
        _errors.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void Run_DialogsAsShipped_PrintsNoFault()
    {
        var exit = LintVerb.Run(DialogsFolder.Find(), status: false, _output, _errors);

        Assert.Equal(ExitCodes.Done, exit);
        Assert.Empty(_output.ToString());
    }

    [Fact]
    public void Run_WithStatus_SaysWhereEachLanguageStandsApartFromTheFaults()
    {
        var exit = LintVerb.Run(DialogsFolder.Find(), status: true, _output, _errors);

        Assert.Equal(ExitCodes.Done, exit);
        Assert.Empty(_output.ToString());
        var said = _errors.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        foreach (var language in new[] { "en", "sw" })
            Assert.Single(said, line => line.StartsWith($"{language}: not reviewed; ", StringComparison.Ordinal)
                && line.Contains("of 1, ", StringComparison.Ordinal)
                && line.Contains(" material, ", StringComparison.Ordinal));
        Assert.Contains(said, line => line.StartsWith("warning: ", StringComparison.Ordinal)
            && line.Contains("in a language a third longer", StringComparison.Ordinal));
        Assert.Equal("no faults", said[^1]);
    }

    [Fact]
    public void Run_BrokenFile_PrintsOneLineWithItsPlaceForEachFault()
    {
        var file = Path.Combine(Directory.CreateDirectory(Path.Combine(_folder, "en")).FullName, "text.yml");
        File.WriteAllText(file, "language: en\nname: English\nwaht: is this\n");

        var exit = LintVerb.Run(_folder, status: false, _output, _errors);

        Assert.Equal(ExitCodes.BadInput, exit);
        var lines = _output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains(lines, line => line.StartsWith($"{file}:3:1: unknown part 'waht'", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.EndsWith("the part 'messages' is missing", StringComparison.Ordinal));
    }

    [Fact]
    public void Run_FileThatIsAFolder_SaysSoInOneLine()
    {
        var file = Directory.CreateDirectory(Path.Combine(_folder, "en", "text.yml")).FullName;

        var exit = LintVerb.Run(_folder, status: false, _output, _errors);

        Assert.Equal(ExitCodes.BadInput, exit);
        var said = Assert.Single(_errors.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith("dir: ", said, StringComparison.Ordinal);
        Assert.Contains(file, said, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_NoSuchFolder_SaysSo()
    {
        var exit = LintVerb.Run(Path.Combine(_folder, "none"), status: false, _output, _errors);

        Assert.Equal(ExitCodes.BadInput, exit);
        Assert.StartsWith("dir: there is no folder", _errors.ToString(), StringComparison.Ordinal);
    }
}
