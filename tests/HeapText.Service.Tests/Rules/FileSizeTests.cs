namespace HeapText.Service.Tests.Rules;

/// <summary>Code stays in pieces that can be read.</summary>
public sealed class FileSizeTests
{
    private const int MostLines = 400;
    private const int LongestLine = 120;

    private static readonly string[] Folders = ["src", "tests"];

    private static IEnumerable<string> Files => Folders
        .SelectMany(folder => Directory.EnumerateFiles(
            Path.Combine(RepositoryFolder.Find(), folder), "*.cs", SearchOption.AllDirectories));

    [Fact]
    public void File_OfCode_IsNotLongerThanTheLimit() =>
        Assert.DoesNotContain(Files, file => File.ReadLines(file).Count() > MostLines);

    [Fact]
    public void Line_OfCode_IsNotLongerThanTheLimit() =>
        Assert.Empty(Files.SelectMany(file => File.ReadLines(file).Select((line, i) => (file, Number: i + 1, line)))
            .Where(one => one.line.Length > LongestLine).Select(one => $"{one.file}:{one.Number}"));
}
