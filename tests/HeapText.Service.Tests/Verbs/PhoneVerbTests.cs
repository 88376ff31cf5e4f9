using System.CommandLine;
using HeapText.Service.Verbs;
using WireMock.Server;

namespace HeapText.Service.Tests.Verbs;

public sealed class PhoneVerbTests
{
    [Theory]
    [InlineData("de")]
    [InlineData("xx")]
    [InlineData("")]
    public async Task Run_LanguageWithoutDialogs_IsRefusedWithTheLanguagesThereAre(string language)
    {
        var said = await Refused("--lang", language);

        Assert.Equal($"--lang: there are no dialogs in '{language}'; use one of am, en, fr, pt, sw.", said);
    }

    [Fact]
    public async Task Run_AnotherProgramAnswersAtTheAddress_SaysSo()
    {
        using var other = WireMockServer.Start();

        var said = await Refused("--url", $"http://127.0.0.1:{other.Port}");

        Assert.Contains("no practice service", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sw", "Kiswahili")]
    [InlineData("en", "English")]
    [InlineData("fr", "Francais")]
    [InlineData("pt", "Portugues")]
    [InlineData("am", "አማርኛ")]
    public void FirstText_ALanguageThereIs_IsItsOwnName(string language, string name) =>
        Assert.Equal(name, PhoneVerb.FirstText(language));

    private static async Task<string> Refused(params string[] arguments)
    {
        using var errors = new StringWriter();

        var exit = await PhoneVerb.Create().Parse(arguments)
            .InvokeAsync(new InvocationConfiguration { Error = errors }, Token);

        Assert.Equal(ExitCodes.BadInput, exit);
        return Assert.Single(errors.ToString().Split(Environment.NewLine, StringSplitOptions.RemoveEmptyEntries));
    }
}
