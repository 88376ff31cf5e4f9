using System.Globalization;
using HeapText.Service.Practice;
using HeapText.Service.Tests.Fakes;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace HeapText.Service.Tests.Browser;

public sealed class PhonePageTests : IAsyncLifetime
{
    private readonly TempFolder _folder = new();
    private readonly List<string> _faults = [];
    private RunningService _service = null!;
    private Chromium _chromium = null!;

    public async ValueTask InitializeAsync()
    {
        _service = await RunningService.Practice(_folder.Path);
        await _service.Services.GetRequiredService<DemoVillage>().Seed(withFarmers: false, Token);
        _chromium = await Chromium.Start();
    }

    public async ValueTask DisposeAsync()
    {
        await _chromium.DisposeAsync();
        await _service.DisposeAsync();
        _folder.Dispose();
        Assert.Empty(_faults);
    }

    [Fact]
    public async Task Phone_TextTypedAndSent_ShowsTheAnswer()
    {
        var page = await Open();
        await page.GetByLabel("Your text").FillAsync("HEAP");
        await page.GetByText("4/160 · 1 text").WaitForAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Send" }).ClickAsync();

        await page.GetByRole(AriaRole.Log).GetByText("Heard: HEAP").WaitForAsync();
        Assert.Equal("", await page.GetByLabel("Your text").InputValueAsync());
    }

    [Fact]
    public async Task Phone_NextReminder_MovesTheClockAndShowsIt()
    {
        var page = await Open();
        await Send(page, "HEAP");

        await page.GetByRole(AriaRole.Button, new() { Name = "Next reminder" }).ClickAsync();

        await page.GetByRole(AriaRole.Log).GetByText("Reminder").WaitForAsync();
        await page.GetByRole(AriaRole.Log).GetByText("Tue 3 Mar, 07:00 · 1 text").WaitForAsync();
        await page.GetByText("Nothing is waiting.").WaitForAsync();
    }

    [Theory]
    [InlineData("+1 day", "Tue, 3 Mar 2026")]
    [InlineData("+1 week", "Mon, 9 Mar 2026")]
    public async Task Phone_MoveButtons_MoveTheClock(string button, string expected)
    {
        var page = await Open();

        await page.GetByRole(AriaRole.Button, new() { Name = button }).ClickAsync();

        await page.Locator("#clock").GetByText(expected).WaitForAsync();
    }

    [Fact]
    public async Task Phone_AnotherNumberAdded_HasAThreadOfItsOwn()
    {
        var page = await Open();
        await Send(page, "HEAP");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add" }).ClickAsync();
        await page.GetByLabel("New number").FillAsync("+256 700");
        await page.GetByRole(AriaRole.Button, new() { Name = "Use it" }).ClickAsync();
        await page.GetByText("Write +999 and 4 to 12 more digits.").WaitForAsync();
        await page.GetByLabel("New number").FillAsync("+999 555 000 01");

        await page.GetByRole(AriaRole.Button, new() { Name = "Use it" }).ClickAsync();

        await page.GetByText("41: Upper Ziwani").WaitForAsync();
        Assert.Equal(0, await page.GetByText("Heard: HEAP").CountAsync());
        await page.GetByLabel("Phone number", new() { Exact = true }).SelectOptionAsync(RunningService.Number);
        await page.GetByText("Heard: HEAP").WaitForAsync();
    }

    [Fact]
    public async Task Phone_FarmerAsksForTheTrainer_StandsInTheTrainersList()
    {
        var page = await Open();

        await Send(page, "HELP");

        await page.GetByRole(AriaRole.Listitem).GetByText("+999******01").WaitForAsync();
    }

    [Fact]
    public async Task Phone_Dialled_ShowsScreensUntilTheyEnd()
    {
        var page = await Open();
        await Send(page, "HEAP");

        await page.GetByRole(AriaRole.Button, new() { Name = "Dial *384#" }).ClickAsync();
        await page.Locator("#shown").GetByText("2:").WaitForAsync();
        Assert.Equal("entry", await page.EvaluateAsync<string>("document.activeElement.id"));
        Assert.False(await page.GetByRole(AriaRole.Log).IsVisibleAsync());
        await page.Keyboard.TypeAsync("<b>1</b>");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#shown").GetByText("3: <b>1</b>").WaitForAsync();
        await page.GetByLabel("Your answer").FillAsync("END");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Close" }).ClickAsync();

        await page.GetByRole(AriaRole.Log).GetByText("Heard: HEAP").WaitForAsync();
        Assert.False(await page.GetByLabel("Your answer").IsVisibleAsync());
    }

    [Fact]
    public async Task Phone_RungOnce_GetsATextBack()
    {
        var page = await Open();

        await page.GetByRole(AriaRole.Button, new() { Name = "Ring once" }).ClickAsync();

        await page.GetByRole(AriaRole.Log).GetByText("Heard: RING").WaitForAsync();
    }

    [Fact]
    public async Task Phone_EntryThatFailed_IsSentAgainAsTheSameStep()
    {
        var page = await Open();
        await page.GetByRole(AriaRole.Button, new() { Name = "Dial *384#" }).ClickAsync();
        await page.Locator("#shown").GetByText("1:").WaitForAsync();
        await page.GetByLabel("Your answer").FillAsync("SMS");
        _service.Store.IsGone = true;
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("No answer:").WaitForAsync();
        _service.Store.IsGone = false;

        await page.GetByRole(AriaRole.Button, new() { Name = "Send" }).ClickAsync();

        await page.Locator("#shown").GetByText("SMS").WaitForAsync();
        Assert.Single(await _service.WaitForMessages(1));
        _faults.Clear(); // The browser notes the refusal as an error.
    }

    [Fact]
    public async Task Phone_HungUp_DialsANewSession()
    {
        var page = await Open();
        await page.GetByRole(AriaRole.Button, new() { Name = "Dial *384#" }).ClickAsync();
        await page.Locator("#shown").GetByText("1:").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Hang up" }).ClickAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Dial *384#" }).ClickAsync();

        await page.Locator("#shown").GetByText("2:").WaitForAsync();
    }

    [Fact]
    public async Task Phone_MarkupInAText_IsShownAsWritten()
    {
        var page = await Open();

        await Send(page, "<img src=x onerror=alert(1)><b>bold</b>");

        Assert.Equal(0, await page.Locator("#thread img, #thread b").CountAsync());
    }

    [Fact]
    public async Task Phone_KeyboardAlone_SendsAText()
    {
        var page = await Open();
        await page.GetByLabel("Your text").FocusAsync();

        await page.Keyboard.TypeAsync("HEAP");
        await page.Keyboard.PressAsync("Enter");

        await page.GetByRole(AriaRole.Log).GetByText("Heard: HEAP").WaitForAsync();
        Assert.Equal("text", await page.EvaluateAsync<string>("document.activeElement.id"));
    }

    [Theory]
    [InlineData(320)]
    [InlineData(768)]
    [InlineData(1280)]
    public async Task Phone_AnyWidth_NeedsNoSidewaysScrolling(int width)
    {
        var page = await Open(width);
        await Send(page, new string('w', 200));

        var spill = await page.EvaluateAsync<int>(
            "document.documentElement.scrollWidth - document.documentElement.clientWidth");

        Assert.True(spill <= 0, spill.ToString(CultureInfo.InvariantCulture));
    }

    private Task<IPage> Open(int width = 1280) =>
        _chromium.Open(new Uri(_service.Http.BaseAddress!, "/phone").ToString(), width, _faults);

    private static async Task Send(IPage page, string text)
    {
        await page.GetByLabel("Your text").FillAsync(text);
        await page.GetByRole(AriaRole.Button, new() { Name = "Send" }).ClickAsync();
        await page.GetByRole(AriaRole.Log).GetByText("Heard: " + text).WaitForAsync();
    }
}
