using HeapText.Service.Startup;
using Microsoft.Extensions.Configuration;

namespace HeapText.Service.Tests.Startup;

public sealed class DialogsAtStartTests
{
    private static readonly Dictionary<string, string?> RealLine = new()
    {
        ["Lines:lake:Url"] = "https://gateway.example/send",
        ["Lines:lake:From"] = "100",
        ["Lines:lake:Secrets:0"] = "whsec_aGVhcHRleHQtc2lnbmluZy10ZXN0LWtleS0wMQ==",
        ["Store:Secret"] = Convert.ToBase64String(new byte[32]),
    };

    private static readonly Dictionary<string, string?> SwahiliGroup = new()
    {
        ["Groups:42:Name"] = "Lower Ziwani",
        ["Groups:42:Zone"] = "Africa/Nairobi",
        ["Groups:42:Officer"] = "Trainer",
        ["Groups:42:Language"] = "sw",
    };

    [Theory]
    [InlineData("en")]
    [InlineData("sw")]
    public void Load_RealLineWithNothingAllowed_StartsAndSaysOfEachLanguageHowToAllowIt(string language)
    {
        var (settings, said) = Load(RealLine);

        Assert.Empty(settings.Office().Languages!);
        Assert.Single(said, line =>
            line.StartsWith($"The texts in '{language}' have not been read by a native-speaking agronomist. "
                + "It is not spoken", StringComparison.Ordinal)
            && line.EndsWith($"--Languages=\"{language}\".", StringComparison.Ordinal));
    }

    [Fact]
    public void Load_GroupOfALanguage_SaysThatItIsSpokenThere()
    {
        var (_, said) = Load(RealLine.Concat(SwahiliGroup).ToDictionary());

        Assert.Single(said, line => line.Contains("'sw'", StringComparison.Ordinal)
            && line.Contains("spoken to the groups whose language it is (42)", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("en sw")]
    [InlineData("en, sw")]
    public void Load_LanguagesAllowed_ReachTheConversation(string languages)
    {
        var (settings, said) = Load(RealLine.Append(new("Languages", languages)).ToDictionary());

        Assert.Equal(["en", "sw"], settings.Office().Languages!.Order());
        Assert.Equal(2, said.Count(
            line => line.EndsWith("The setting Languages allows it.", StringComparison.Ordinal)));
    }

    [Fact]
    public void Load_LanguageWithoutDialogs_IsAFault()
    {
        var fault = Assert.Throws<SettingsFaultsException>(
            () => Load(RealLine.Append(new("Languages", "en zz")).ToDictionary()));

        Assert.Contains(
            "Languages: there are no dialogs in 'zz'. Use some of ", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Load_PracticeMode_AllowsAll() => Assert.Null(Load([]).Settings.Office().Languages);

    private static (Settings Settings, string[] Said) Load(Dictionary<string, string?> values)
    {
        var configuration = new ConfigurationBuilder().AddInMemoryCollection(values).Build();
        var settings = SettingsReader.Read(configuration, fresh: false);
        using var errors = new StringWriter();
        DialogsAtStart.Load(settings, errors);
        return (settings, errors.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }
}
