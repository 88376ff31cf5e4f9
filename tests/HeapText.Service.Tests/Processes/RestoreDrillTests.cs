using System.Collections.Concurrent;
using System.Net.Http.Json;
using System.Text.Json;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Tests.Verbs;
using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Processes;

/// <summary>A service under load is backed up, killed, put back elsewhere and goes on.</summary>
public sealed class RestoreDrillTests : IDisposable
{
    private const int AtOnce = 8;
    private const int Calm = 40;
    private static readonly string Secret = Convert.ToBase64String("a secret of thirty-two bytes ..."u8);
    private static readonly string Farmer = ServiceProcess.Phone(1);

    private static readonly string[] UpToTheHeap =
    [
        "JOIN 41", "yes", "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung", "built", "2",
        "1",
    ];

    private readonly TempFolder _folder = new();
    private readonly ConcurrentDictionary<string, bool> _accepted = new();

    private string BackupFile => Path.Combine(_folder.Path, "all.heaptext");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(StoreHome.Embedded, StoreHome.Embedded)]
    [InlineData(StoreHome.Embedded, StoreHome.Redis)]
    [InlineData(StoreHome.Redis, StoreHome.Embedded)]
    [InlineData(StoreHome.Redis, StoreHome.Redis)]
    public async Task Restore_OfAServiceKilledUnderLoad_GoesOnWhereTheBackupWas(string from, string to)
    {
        await using var source = await StoreHome.Open(from, Secret);
        await using var target = await StoreHome.Open(to, Secret);
        List<string> answered, promised, idsOfFarmer;
        JsonElement clock;
        await using (var live = await source.Start(fresh: true))
        {
            answered = await CalmDays(live);
            var load = Task.WhenAll(Enumerable.Range(0, AtOnce).Select(one => PostUntilItDies(live, one)).ToList());
            await Task.Delay(TimeSpan.FromMilliseconds(500), TimeProvider.System, Token);
            promised = [.. _accepted.Keys];
            clock = await Clock(live);
            await BackUp(source);
            Assert.False(await live.Text(Farmer, "after", "help"));
            await Advance(live, "PT1S");
            idsOfFarmer = await live.MessageIds(Farmer);
            live.Kill();
            await load;
        }

        await PutBack(target);

        await using var after = await target.Start();
        Assert.InRange((await Clock(after)).GetDateTimeOffset(), clock.GetDateTimeOffset(), DateTimeOffset.MaxValue);
        await EachIsADuplicate(after, promised);
        await Advance(after, "PT1S");
        foreach (var phone in answered) Assert.Empty(await after.MessageIds(phone));
        await RemindersComeUnderNewIds(after, idsOfFarmer);
    }

    /// <summary>A farmer builds a heap, and some phones are answered; nothing is under way in the end.</summary>
    private async Task<List<string>> CalmDays(ServiceProcess live)
    {
        await Advance(live, "P1D");
        for (var i = 0; i < UpToTheHeap.Length; i++) Assert.False(await live.Text(Farmer, $"step-{i}", UpToTheHeap[i]));
        var phones = Enumerable.Range(100, Calm).Select(ServiceProcess.Phone).ToList();
        foreach (var phone in phones)
        {
            Assert.False(await live.Text(phone, "text of " + phone));
            _accepted[phone] = true;
        }
        await Advance(live, "PT1S");
        foreach (var phone in phones) Assert.Single(await live.MessageIds(phone));
        return phones;
    }

    private async Task PostUntilItDies(ServiceProcess service, int one)
    {
        for (var n = 0; ; n++)
        {
            var phone = ServiceProcess.Phone(1_000 + (n * AtOnce) + one);
            if (await service.Text(phone, "text of " + phone) is null) return;
            _accepted[phone] = true;
        }
    }

    private async Task BackUp(StoreHome home)
    {
        var taken = await VerbRun.Of(BackupVerb.CreateBackup(), [BackupFile, .. home.Options]);
        Assert.Equal((ExitCodes.Done, ""), (taken.Exit, taken.Error));
        Assert.InRange(taken.Json.GetProperty("counts").GetProperty("farmers").GetInt32(), Calm, int.MaxValue);
    }

    private async Task PutBack(StoreHome home)
    {
        var restored = await VerbRun.Of(BackupVerb.CreateRestore(), [BackupFile, .. home.Options]);
        Assert.Equal((ExitCodes.Done, ""), (restored.Exit, restored.Error));
    }

    private static Task EachIsADuplicate(ServiceProcess service, List<string> promised) =>
        Parallel.ForEachAsync(promised, Token, async (phone, _) =>
            Assert.True(await service.Text(phone, "text of " + phone)));

    private static async Task RemindersComeUnderNewIds(ServiceProcess service, List<string> idsBefore)
    {
        var before = (await service.MessageIds(Farmer)).Count;
        await Advance(service, "P4D");

        var ids = await service.MessageIds(Farmer);
        Assert.InRange(ids.Count, before + 1, int.MaxValue);
        Assert.Empty(ids.Intersect(idsBefore));
        var texts = await service.Http.GetFromJsonAsync<List<JsonElement>>($"/practice/messages?to={Farmer}", Token);
        Assert.Contains(texts!, message =>
            message.GetProperty("text").GetString()!.Contains("Turn your heap", StringComparison.Ordinal));
    }

    private static async Task<JsonElement> Clock(ServiceProcess service) =>
        (await service.Http.GetFromJsonAsync<JsonElement>("/practice/clock", Token)).GetProperty("now");

    private static async Task Advance(ServiceProcess service, string by)
    {
        using var moved = await service.Http.PostAsJsonAsync("/practice/clock", new { advance = by }, Token);
        moved.EnsureSuccessStatusCode();
    }
}
