using System.Collections.Concurrent;
using System.Net.Http.Json;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Processes;

public sealed class CrashTests
{
    private const int Kills = 6;
    private const int AtOnce = 16;

    [Fact]
    public async Task Kill_WhileTextsComeIn_LosesNothingAcceptedAndRepeatsNothing()
    {
        using var folder = new TempFolder();
        var random = new Random(20260302);
        var posted = new ConcurrentDictionary<string, bool>();
        var next = 0;

        for (var kill = 0; kill < Kills; kill++)
        {
            await using var service = await ServiceProcess.Start(folder.Path, kill == 0 ? ["--fresh"] : []);
            var posting = Enumerable.Range(0, AtOnce).Select(_ =>
                PostUntilItDies(service, posted, () => Interlocked.Increment(ref next)));
            var all = Task.WhenAll(posting.ToList());
            await Task.Delay(TimeSpan.FromMilliseconds(random.Next(150, 1200)), TimeProvider.System, Token);
            service.Kill();
            await all;
        }

        await using var last = await ServiceProcess.Start(folder.Path);
        Assert.InRange(posted.Values.Count(accepted => accepted), 50, int.MaxValue);
        await EachAcceptedTextIsADuplicate(last, posted);
        await EachPhoneGotOneAnswer(last, posted.Keys);
    }

    [Fact]
    public async Task Terminate_WhileTextsComeIn_StopsInTimeAndLosesNothing()
    {
        using var folder = new TempFolder();
        var posted = new ConcurrentDictionary<string, bool>();
        var next = 0;
        await using (var service = await ServiceProcess.Start(folder.Path, "--fresh"))
        {
            var posting = Enumerable.Range(0, AtOnce).Select(_ =>
                PostUntilItDies(service, posted, () => Interlocked.Increment(ref next)));
            var all = Task.WhenAll(posting.ToList());
            await Task.Delay(TimeSpan.FromMilliseconds(700), TimeProvider.System, Token);

            Assert.Equal(0, await service.Stop(atMost: TimeSpan.FromSeconds(30)));
            await all;
        }

        await using var last = await ServiceProcess.Start(folder.Path);
        await EachAcceptedTextIsADuplicate(last, posted);
        await EachPhoneGotOneAnswer(last, posted.Keys);
    }

    [Fact]
    public async Task Start_FolderHeldByAnotherService_IsRefused()
    {
        using var folder = new TempFolder();
        await using var first = await ServiceProcess.Start(folder.Path, "--fresh");

        await Assert.ThrowsAsync<InvalidOperationException>(() => ServiceProcess.Start(folder.Path, "--fresh"));

        Assert.False(await first.Text(ServiceProcess.Phone(1), "1"));
    }

    // A phone of its own for each text, so that whatever the conversation says, one text means one answer.
    private static async Task PostUntilItDies(
        ServiceProcess service, ConcurrentDictionary<string, bool> posted, Func<int> next)
    {
        while (true)
        {
            var phone = ServiceProcess.Phone(next());
            posted[phone] = false;
            if (await service.Text(phone, "text of " + phone) is null) return;
            posted[phone] = true;
        }
    }

    private static async Task EachAcceptedTextIsADuplicate(
        ServiceProcess service, ConcurrentDictionary<string, bool> posted)
    {
        await Parallel.ForEachAsync(posted, Token, async (one, _) =>
        {
            var duplicate = await service.Text(one.Key, "text of " + one.Key);

            Assert.NotNull(duplicate);
            if (one.Value) Assert.True(duplicate);
        });
    }

    private static async Task EachPhoneGotOneAnswer(ServiceProcess service, IEnumerable<string> phones)
    {
        // One minute on takes over what a killed process had taken for sending.
        using var moved = await service.Http.PostAsJsonAsync("/practice/clock", new { advance = "PT2M" }, Token);
        moved.EnsureSuccessStatusCode();
        await Parallel.ForEachAsync(phones, Token, async (phone, _) => Assert.Single(await service.MessageIds(phone)));
    }
}
