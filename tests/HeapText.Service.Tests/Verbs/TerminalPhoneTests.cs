using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public sealed class TerminalPhoneTests
{
    [Fact]
    public async Task Run_TextsAndClockWords_ShowsWhatThePhoneGets()
    {
        var screen = await Type("HEAP\n:next\n:next\n:day\n:later\n:quit\nUNSEEN\n");

        Assert.Contains("Heard: HEAP", screen, StringComparison.Ordinal);
        Assert.Contains("[Tue 3 Mar 04:00, 1 text]\n  Reminder", screen, StringComparison.Ordinal);
        Assert.Contains("Nothing is waiting for this phone.", screen, StringComparison.Ordinal);
        Assert.Contains("It is now Wed 4 Mar", screen, StringComparison.Ordinal);
        Assert.Equal(3, screen.Split(":quit").Length);
        Assert.DoesNotContain("UNSEEN", screen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_Dials_ShowsScreensUntilTheyEndAndThenTexts()
    {
        var screen = await Type(":dial\n1\nEND\nHEAP\n:dial\n2\n:hangup\nHEAP\n");

        Assert.Contains("% | 2: 1\n% | 3: END\n", screen, StringComparison.Ordinal);
        Assert.Contains("6: 2\n% ", screen, StringComparison.Ordinal);
        Assert.Equal(3, screen.Split("Heard: HEAP").Length);
    }

    [Fact]
    public async Task Run_Rings_ShowsTheTextThatComesBack()
    {
        Assert.Contains("Heard: RING", await Type(":ring\n"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_InputEnds_Leaves()
    {
        Assert.Contains("Heard: HEAP", await Type("HEAP"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_NextWhileOtherPhonesAreDueFirst_GoesOnToItsOwnReminder()
    {
        using var folder = new TempFolder();
        await using var service = await RunningService.Practice(folder.Path);
        await service.Text("1", "HEAP", "+99910000002");
        await service.Advance("PT21H59M");

        Assert.Contains("[Wed 4 Mar 04:00, 1 text]\n  Reminder", await Type(service, "HEAP\n:next\n"),
            StringComparison.Ordinal);
    }

    private static async Task<string> Type(string typed)
    {
        using var folder = new TempFolder();
        await using var service = await RunningService.Practice(folder.Path);
        return await Type(service, typed);
    }

    private static async Task<string> Type(RunningService service, string typed)
    {
        using var client = new PracticeClient(service.Http.BaseAddress!);
        Assert.True(Msisdn.TryParse(RunningService.Number, out var number));
        await using var screen = new StringWriter();
        using var keys = new StringReader(typed);

        await new TerminalPhone(client, number, null, keys, screen).Run(Token);

        return screen.ToString().ReplaceLineEndings("\n");
    }
}
