using System.Net.Http.Json;
using System.Text.Json;

namespace HeapText.Service.Tests.Processes;

public sealed class KilledSeasonTests
{
    private static readonly string Phone = ServiceProcess.Phone(1);

    // A text, or a move of the clock.
    private static readonly string[] Steps =
    [
        "JOIN 41", "yes", "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung", "built", "2",
        "1", "P2D", "P1D", "hot", "1", "3", "turned", "P1D", "smells like urine", "turned", "P7D", "P1D",
        "turned yesterday",
    ];

    /// <summary>The whole of a season, once as it is and once with kill -9 and a restart between any two
    /// steps; on a server, which a kill does not touch, after every third.</summary>
    [Theory]
    [InlineData(StoreHome.Embedded, 1)]
    [InlineData(StoreHome.Redis, 3)]
    public async Task Season_KilledBetweenSteps_SaysTheSameAsOneThatWasNot(string kind, int killEvery)
    {
        await using var calm = await StoreHome.Open(kind);
        await using var killed = await StoreHome.Open(kind);

        var undisturbed = await Play(calm, killEvery: int.MaxValue);
        var disturbed = await Play(killed, killEvery);

        Assert.Equal(undisturbed, disturbed);
    }

    private static async Task<List<string>> Play(StoreHome home, int killEvery)
    {
        var service = await home.Start(fresh: true);
        for (var i = 0; i < Steps.Length; i++)
        {
            await Take(service, Steps[i], $"step-{i}");
            if ((i + 1) % killEvery != 0) continue;
            service.Kill();
            await service.DisposeAsync();
            service = await home.Start();
        }
        await home.TakeOver(service);
        var messages = await service.Http.GetFromJsonAsync<List<JsonElement>>($"/practice/messages?to={Phone}", Token);
        await service.DisposeAsync();
        Assert.Distinct(messages!.Select(message => message.GetProperty("id").GetString()));
        return [.. messages!.Select(message => message.GetProperty("text").GetString()!)];
    }

    private static async Task Take(ServiceProcess service, string step, string id)
    {
        if (!step.StartsWith('P'))
        {
            Assert.False(await service.Text(Phone, id, step));
            return;
        }
        using var moved = await service.Http.PostAsJsonAsync("/practice/clock", new { advance = step }, Token);
        moved.EnsureSuccessStatusCode();
    }
}
