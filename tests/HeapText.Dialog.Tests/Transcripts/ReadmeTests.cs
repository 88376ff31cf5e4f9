using System.Text.RegularExpressions;

namespace HeapText.Dialog.Tests.Transcripts;

public sealed class ReadmeTests
{
    /// <summary>What the README shows is what the whole season's transcript says, but for what "[...]" leaves
    /// out.</summary>
    [Fact]
    public void Readme_ItsSample_IsFromTheTranscript()
    {
        var readme = File.ReadAllText(Repository.Path("README.md"));
        var season = File.ReadAllText(Repository.Path(
            "tests", "HeapText.Dialog.Tests", "Transcripts", "01-whole-season-en.txt"));
        var from = readme.IndexOf("```\n> JOIN", StringComparison.Ordinal);
        var sample = readme[(from + 4)..readme.IndexOf("\n```", from + 4, StringComparison.Ordinal)];

        var fragments = Regex.Replace(sample, @"\n  +", " ").Split('\n').SelectMany(line => line.Split("[...]"))
            .Select(fragment => fragment.Trim(' ', '<', '>')).Where(fragment => fragment.Length > 0).ToList();

        Assert.True(fragments.Count > 10);
        Assert.All(fragments, fragment => Assert.Contains(fragment, season, StringComparison.Ordinal));
    }
}
