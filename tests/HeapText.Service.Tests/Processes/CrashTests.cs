using System.Collections.Concurrent;
using HeapText.Service.Tests.Fakes;

namespace HeapText.Service.Tests.Processes;

public sealed class CrashTests
{
    private const int Kills = 4;
    private const int AtOnce = 16;

    /// <summary>Less than a lease: nothing waits for one to end.</summary>
    private static readonly TimeSpan AnswersWait = TimeSpan.FromSeconds(10);

    [Theory]
    [InlineData(StoreHome.Embedded)]
    [InlineData(StoreHome.Redis)]
    public async Task Kill_WhileTextsComeIn_LosesNothingAcceptedAndRepeatsNothing(string kind)
    {
        await using var home = await StoreHome.Open(kind);
        var random = new Random(20260302);
        var posted = new ConcurrentDictionary<string, bool>();
        var next = 0;

        for (var kill = 0; kill < Kills; kill++)
        {
            await using var service = await home.Start(fresh: kill == 0);
            var posting = Enumerable.Range(0, AtOnce).Select(_ =>
                PostUntilItDies(service, posted, () => Interlocked.Increment(ref next)));
            var all = Task.WhenAll(posting.ToList());
            await Task.Delay(TimeSpan.FromMilliseconds(random.Next(150, 1200)), TimeProvider.System, Token);
            service.Kill();
            await all;
        }

        await using var last = await home.Start();
        Assert.InRange(posted.Values.Count(accepted => accepted), AtOnce, int.MaxValue);
        await EachAcceptedTextIsADuplicate(last, posted);
        if (kind == StoreHome.Redis) await home.TakeOver(last);
        await EachPhoneGotOneAnswer(last, posted.Keys);
    }

    [Theory]
    [InlineData(StoreHome.Embedded)]
    [InlineData(StoreHome.Redis)]
    public async Task Terminate_WhileTextsComeIn_StopsInTimeAndLosesNothing(string kind)
    {
        await using var home = await StoreHome.Open(kind);
        var posted = new ConcurrentDictionary<string, bool>();
        var next = 0;
        await using (var service = await home.Start(fresh: true))
        {
            var posting = Enumerable.Range(0, AtOnce).Select(_ =>
                PostUntilItDies(service, posted, () => Interlocked.Increment(ref next)));
            var all = Task.WhenAll(posting.ToList());
            await Task.Delay(TimeSpan.FromMilliseconds(700), TimeProvider.System, Token);

            Assert.Equal(0, await service.Stop(atMost: TimeSpan.FromSeconds(30)));
            await all;
        }

        await using var last = await home.Start();
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
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(Token);
        limit.CancelAfter(AnswersWait);
        await Parallel.ForEachAsync(phones, Token, async (phone, _) =>
        {
            while ((await service.MessageIds(phone)).Count == 0)
                await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System, limit.Token);
        });
        await Parallel.ForEachAsync(phones, Token, async (phone, _) => Assert.Single(await service.MessageIds(phone)));
    }
}
