using HeapText.Service.Tests.Fakes;
using HeapText.Service.Tests.Processes;
using Microsoft.Playwright;

namespace HeapText.Service.Tests.Browser;

/// <summary>The real service with its real words, as a farmer meets it on the phone page.</summary>
public sealed class JourneyTests : IAsyncLifetime
{
    private readonly TempFolder _folder = new();
    private readonly List<string> _faults = [];
    private ServiceProcess _service = null!;
    private Chromium _chromium = null!;
    private IPage _page = null!;

    public async ValueTask InitializeAsync()
    {
        _service = await ServiceProcess.Start(_folder.Path, "--fresh");
        _chromium = await Chromium.Start();
        _page = await _chromium.Open(_service.Http.BaseAddress + "phone", 1280, _faults);
    }

    public async ValueTask DisposeAsync()
    {
        await _chromium.DisposeAsync();
        await _service.DisposeAsync();
        _folder.Dispose();
        Assert.Empty(_faults);
    }

    [Fact]
    public async Task Farmer_FromJoiningToReady_InEnglish()
    {
        await Text("JOIN 41", "May we text you?");
        await Text("yes", "What do you have for a heap?");
        await Text("20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung, 3 buckets topsoil",
            "Each round, in this order:", "put each in its own place", "Cover wounds");
        await Text("built", "First turning:", "At what hour");
        await Text("2", "What is your rod?");
        await Text("2", "can burn in a second");
        foreach (var (turn, next) in new[] { ("first", "second"), ("second", "third"), ("third", "fourth") })
        {
            await NextReminder($"{turn} turning of 4", "How is it?");
            await Text("1", "How does the heap smell?");
            await Text("1", "squeeze it");
            await Text("3", "Turn it now");
            await Text("turned", $"{next} turning of 4");
        }
        await NextReminder("fourth turning of 4", "How is it?");
        await Text("turned, warm, smells good, a drop or two", "the last planned turning");
        await NextReminder("Days have passed since you turned it");
        await Text("cold", "Now let it rest");
        await NextReminder("Look at your heap.");
        await Text("1", "It is likely ready.", "keep it off salad");
    }

    [Fact]
    public async Task Farmer_InSwahili_HasReminderAndChecks()
    {
        await Text("JIUNGE 41", "Tukutumie ujumbe?");
        await Text("ndiyo", "Una nini cha kujengea lundo?");
        await Text("nina toroli 20 mabua ya mahindi, toroli 5 magugu mabichi, samadi ya ng'ombe ndoo 14",
            "Kila mzunguko");
        await Text("nimejenga", "Tukutumie ujumbe saa ngapi?");
        await Text("1", "Fimbo yako ni ya nini?");
        await Text("1", "nyuma ya mkono");
        await NextReminder("Geuza lundo lako leo", "Kwanza pima joto");
        await Text("moto, inanuka kama mkojo, kavu", "Samadi au majani mabichi yamezidi", "Ligeuze sasa");
        await Text("nimegeuza", "mara ya pili kati ya 4");
    }

    [Theory]
    [InlineData("I have 6wheelbarrows maize stalks and 3buckets cow dung")]
    [InlineData("half a sack wood ash n 2 bags poultry manure, no goat manure")]
    [InlineData("not 3, 4 buckets cow manure. dry grass 5 barrow loads")]
    [InlineData("DRY LEAVES 3 OR 4 SACKS / GREEN WEEDS 2 PAILS")]
    public async Task Farmer_WithTooLittle_IsToldWhatToBringAndThenGetsARecipe(string stock)
    {
        await Text("JOIN 41", "May we text you?");
        await Text("yes", "What do you have for a heap?");
        await Text(stock, "Not enough yet");
        await Text("1", "Each round, in this order:");
    }

    [Fact]
    public async Task Trainer_ExplainsAWordOnTheList_AndTheFarmerIsUnderstood()
    {
        await Text("JOIN 41", "May we text you?");
        await Text("yes", "What do you have for a heap?");
        await Text("14 wheelbarrows maize stalks, 3 sacks zorbixo", "We do not know \"zorbixo\" yet");

        await _page.GetByLabel("What is “zorbixo” in district 41?").SelectOptionAsync(new SelectOptionValue
        {
            Label = "goat manure",
        });
        await _page.GetByRole(AriaRole.Button, new() { Name = "Explain" }).ClickAsync();

        await _page.GetByText("“zorbixo” is known in district 41 from now on.").WaitForAsync();
        await _page.GetByText("Nobody waits for the trainer.").WaitForAsync();
        await Text("zorbixo 3 sacks, dry grass 14 wheelbarrows", "goat manure");
    }

    private async Task Text(string text, params string[] answers)
    {
        var before = await Lines();
        await _page.GetByLabel("Your text").FillAsync(text);
        await _page.GetByRole(AriaRole.Button, new() { Name = "Send" }).ClickAsync();
        await Shows(answers, before);
    }

    private async Task NextReminder(params string[] says)
    {
        var before = await Lines();
        await _page.GetByRole(AriaRole.Button, new() { Name = "Next reminder" }).ClickAsync();
        await Shows(says, before);
    }

    private Task<int> Lines() => _page.Locator("#thread > li").CountAsync();

    /// <summary>Waits until each text stands in a message that came after the first so many.</summary>
    private async Task Shows(string[] texts, int before)
    {
        var fresh = _page.Locator($"#thread > li.out:nth-child(n+{before + 1})");
        foreach (var text in texts) await fresh.Filter(new() { HasText = text }).First.WaitForAsync();
    }
}
