using System.Net.Http.Json;
using System.Text.Json;

namespace HeapText.Service.Tests.Processes;

/// <summary>The real service with its real words, killed between the steps of a session.</summary>
public sealed class KilledScreenTests
{
    private const string Stock = "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung";
    private static readonly string Phone = ServiceProcess.Phone(1);

    // Joins, and picks cow dung and maize stalks.
    private static readonly string[] Entries =
        ["", "english", "41", "#", "1", "#", "3", "1", "14", "1", "1", "1", "20", "1"];

    [Theory]
    [InlineData(StoreHome.Embedded, 3)]
    [InlineData(StoreHome.Redis, 5)]
    public async Task Session_KilledBetweenSteps_AnswersEachStepAgainAndGoesOn(string kind, int killEvery)
    {
        await using var home = await StoreHome.Open(kind);
        var service = await home.Start(fresh: true);
        var shown = new List<string>();
        for (var step = 0; step < Entries.Length; step++)
        {
            shown.Add(await Dial(service, "a", step, Entries[step]));
            if ((step + 1) % killEvery != 0) continue;
            service.Kill();
            await service.DisposeAsync();
            service = await home.Start();
        }

        for (var step = Entries.Length - 1; step >= 0; step--)
            Assert.Equal(shown[step], await Dial(service, "a", step, Entries[step]));
        Assert.Contains("20 wheelbarrows of maize stalks. What else?", shown[^1], StringComparison.Ordinal);
        Assert.Contains("14 buckets of cow dung", shown[9], StringComparison.Ordinal);

        // The network drops it; a new session goes on, and so does a text.
        Assert.Contains("What else?", await Dial(service, "b", 0, ""), StringComparison.Ordinal);
        Assert.False(await service.Text(Phone, "sms-1", "0"));
        Assert.Contains(await Texts(service, 2), text => text.StartsWith("Build your heap", StringComparison.Ordinal));
        await service.DisposeAsync();
    }

    [Theory]
    [InlineData(StoreHome.Embedded)]
    [InlineData(StoreHome.Redis)]
    public async Task RecipeOnTheScreen_GoesByTextOnce_HoweverOftenTheStepIsRepeated(string kind)
    {
        await using var home = await StoreHome.Open(kind);
        await using var service = await home.Start(fresh: true);
        for (var step = 0; step < 5; step++) await Dial(service, "a", step, Entries[step]);

        var screens = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Dial(service, "a", 5, Stock)));

        Assert.All(screens, screen => Assert.Equal(screens[0], screen));
        Assert.Contains("We also send this as a text.", screens[0], StringComparison.Ordinal);
        var texts = await Texts(service, 4);
        Assert.Single(texts, text => text.StartsWith("Build your heap", StringComparison.Ordinal));
    }

    private static async Task<string> Dial(ServiceProcess service, string session, int step, string input)
    {
        using var answer = await service.Http.PostAsJsonAsync(
            "/ussd/practice", new { session, from = Phone, code = "*384#", input, step }, Token);
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadAsStringAsync(Token);
    }

    private static async Task<List<string>> Texts(ServiceProcess service, int atLeast)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(Token);
        limit.CancelAfter(TimeSpan.FromSeconds(10));
        while (true)
        {
            var messages = await service.Http.GetFromJsonAsync<List<JsonElement>>(
                $"/practice/messages?to={Phone}", limit.Token);
            if (messages!.Count >= atLeast) return [.. messages.Select(m => m.GetProperty("text").GetString()!)];
            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System, limit.Token);
        }
    }
}
