using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using HeapText.Service.Tests.Verbs;
using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Processes;

/// <summary>A farmer's own word, explained on the practice page or by the verb beside the running service.</summary>
public sealed class OwnWordTests
{
    private const string Stock = "14 wheelbarrows maize stalks, 3 sacks zorbixo";
    private static readonly string Phone = ServiceProcess.Phone(1);

    [Theory]
    [InlineData("goat-manure", "\"zorbixo\" is goat manure. We add it to what you have.")]
    [InlineData("plastic", "\"zorbixo\" is plastic.")]
    [InlineData("none", "\"zorbixo\" is nothing for the heap")]
    public async Task Word_ExplainedInPractice_IsToldToWhoWaits(string material, string told)
    {
        await using var home = await StoreHome.Open(StoreHome.Embedded);
        await using var service = await home.Start(fresh: true);
        await Waiting(service);
        var word = (await Concerns(service)).Single().GetProperty("words")[0].GetProperty("word");
        Assert.Equal("zorbixo", word.GetString());

        using var answer = await Explain(service, "zorbixo", material);

        answer.EnsureSuccessStatusCode();
        Assert.Contains(told, await Told(service, told), StringComparison.Ordinal);
        Assert.Empty(await Concerns(service));
    }

    [Theory]
    [InlineData(StoreHome.Embedded)]
    [InlineData(StoreHome.Redis)]
    public async Task Word_ExplainedByTheVerbWhileTheServiceRuns_IsTakenUpWithinSeconds(string kind)
    {
        await using var home = await StoreHome.Open(kind);
        await using var service = await home.Start(fresh: true);
        await Waiting(service);

        var before = await Word(["list", .. home.Options]);
        var added = await Word(
            ["add", "--district", "41", "--language", "en", "Zorbixo", "goat manure", .. home.Options]);

        Assert.Equal("""{"words":[],"waiting":[{"district":"41","language":"en","word":"zorbixo","farmers":1}]}""",
            before.Output.TrimEnd());
        Assert.Equal("""{"district":"41","language":"en","word":"zorbixo","material":"goat-manure"}""",
            added.Output.TrimEnd());
        await Told(service, "\"zorbixo\" is goat manure");
        Assert.Contains("\"waiting\":[]", (await Word(["list", .. home.Options])).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("99", "zorbixo", "cow-dung", "district: ")]
    [InlineData("41", "stop", "cow-dung", "word: ")]
    [InlineData("41", "two words", "cow-dung", "word: ")]
    [InlineData("41", "zorbixo", "moon-dust", "material: ")]
    public async Task Word_ThatCannotBeExplainedSo_IsRefusedWithItsFault(
        string district, string word, string material, string fault)
    {
        await using var home = await StoreHome.Open(StoreHome.Embedded);
        await using var service = await home.Start(fresh: true);

        using var answer = await Explain(service, word, material, district);
        var run = await Word(["add", "--district", district, "--language", "en", word, material, .. home.Options]);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(ExitCodes.BadInput, run.Exit);
        Assert.StartsWith(fault, run.Error, StringComparison.Ordinal);
    }

    private static async Task Waiting(ServiceProcess service)
    {
        // In the day of the village, when who waits may be told.
        var now = (await service.Http.GetFromJsonAsync<JsonElement>("/practice/clock", Token)).GetProperty("now")
            .GetDateTimeOffset();
        var noon = now.Date.AddHours(now.Hour < 9 ? 9 : 33);
        using var moved = await service.Http.PostAsJsonAsync(
            "/practice/clock", new { advance = $"PT{(int)(noon - now.UtcDateTime).TotalMinutes + 1}M" }, Token);
        moved.EnsureSuccessStatusCode();
        Assert.False(await service.Text(Phone, "1", "JOIN 41"));
        Assert.False(await service.Text(Phone, "2", "english"));
        Assert.False(await service.Text(Phone, "3", "yes"));
        Assert.False(await service.Text(Phone, "4", Stock));
    }

    private static Task<HttpResponseMessage> Explain(
        ServiceProcess service, string word, string material, string district = "41") =>
        service.Http.PostAsJsonAsync("/practice/words", new { district, language = "en", word, material }, Token);

    private static async Task<List<JsonElement>> Concerns(ServiceProcess service) =>
        (await service.Http.GetFromJsonAsync<List<JsonElement>>("/practice/concerns", Token))!;

    /// <summary>What the phone got, once the given words are among it; fails after twenty seconds.</summary>
    private static async Task<string> Told(ServiceProcess service, string words)
    {
        using var deadline = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        while (true)
        {
            var messages = await service.Http.GetFromJsonAsync<List<JsonElement>>(
                $"/practice/messages?to={Uri.EscapeDataString(Phone)}", Token);
            var texts = string.Join('\n', messages!.Select(message => message.GetProperty("text").GetString()));
            if (texts.Contains(words, StringComparison.Ordinal)) return texts;
            await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System, deadline.Token);
        }
    }

    private static Task<VerbRun> Word(string[] args) => VerbRun.Of(WordVerb.Create(), args);
}
