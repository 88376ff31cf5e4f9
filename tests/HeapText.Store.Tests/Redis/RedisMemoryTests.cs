using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Wording;
using HeapText.Store.Records;
using HeapText.Store.Redis;
using HeapText.Store.Tests.Contract;
using HeapText.Store.Tests.Records;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using System.Globalization;

namespace HeapText.Store.Tests.Redis;

/// <summary>What a farmer takes of the server's memory.</summary>
public sealed class RedisMemoryTests : IAsyncLifetime
{
    private const int Farmers = 10_000;
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    private readonly FakeTimeProvider _clock = new(Noon.ToDateTimeOffset());
    private static readonly Farmer Active = FarmerFormatTests.Full with
    {
        Subject = new string('s', 26),
        Concern = null,
        Heaps =
        [
            FarmerFormatTests.Heap with
            {
                Stock = Five(7),
                Plan = FarmerFormatTests.Heap.Plan! with { PerRound = Five(1) },
            },
        ],
    };

    private RedisServer _server = null!;
    private RedisStore _store = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _server = await RedisServer.Start();
        _store = await RedisStore.Open(
            new StoreOptions { Connection = _server.Connection, RequireDurableServer = false },
            RedisStoreContract.Vault, NullLogger.Instance, _clock);
    }

    public async ValueTask DisposeAsync()
    {
        await _store.DisposeAsync();
        await _server.DisposeAsync();
    }

    [Fact]
    public async Task Farmer_ThreeRemindersSent_TakesLittleMoreThanTheRecord()
    {
        var empty = await UsedMemory();
        await Each(n => Commit(n, 0));
        var record = await UsedMemory() - empty;
        for (var sent = 1; sent <= 2; sent++) await Send(sent);
        await ForgetReferences();
        await Send(3);
        var three = await UsedMemory() - empty;
        for (var sent = 4; sent <= 6; sent++) await Send(sent);
        await ForgetReferences();
        for (var sent = 7; sent <= 8; sent++) await Send(sent);
        var most = await UsedMemory() - empty;

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"Bytes a farmer, with a record of {RecordFormat.Pack(Active).Length}: {record / Farmers} before the first "
            + $"message; {three / Farmers} with three, one of them in the last four days; {most / Farmers} with eight, "
            + "two of them in the last four days, in three parts.");
        Assert.InRange((three - record) / Farmers, 1, 360);
        Assert.InRange((most - record) / Farmers, 1, 640);
    }

    /// <summary>As if four days had passed.</summary>
    private async Task ForgetReferences() => await _store.Server.GetDatabase().KeyDeleteAsync(
        [.. _store.Server.GetServers()[0].Keys(pattern: "ht:{r*", pageSize: 1_000)]);

    /// <summary>A message to every farmer, taken by the gateway and delivered; the eighth in two parts.</summary>
    private async Task Send(int sent)
    {
        _clock.Advance(TimeSpan.FromDays(1));
        await Each(n => Commit(n, sent));
        var now = Instant.FromDateTimeOffset(_clock.GetUtcNow());
        var taken = await _store.TakeNext("lake", Priority.Notice, now, Duration.FromMinutes(1), Farmers, Cancel);
        await Task.WhenAll(taken.Select(async sending =>
        {
            var id = sending.Message.Id;
            await _store.Settle(sending, new Settlement.Sent(sent == 8 ? [id, id + "b"] : []), Cancel);
            await _store.Note(new Receipt("lake", id, DeliveryState.Delivered, now), now, Cancel);
        }));
    }

    private async Task Commit(int n, int sent)
    {
        var now = Instant.FromDateTimeOffset(_clock.GetUtcNow());
        var number = Acknowledged.Number(n);
        var subject = $"{n:D26}";
        await _store.Commit(
            new Commit
            {
                Key = _store.KeyOf(number),
                Number = number,
                ExpectedVersion = sent,
                At = now,
                Farmer = Active with { Subject = subject },
                NextDue = now + Duration.FromDays(3),
                Send = sent == 0
                    ? []
                    : [new($"{subject}-{sent}", "lake", "text", Priority.Reminder, now, now + Duration.FromDays(1))],
            },
            Cancel);
    }

    private static List<Portion> Five(decimal amount) =>
    [
        new("maize-stover", amount, "wheelbarrow"), new("cow-dung", amount, "bucket"), new("wood-ash", amount, "tin"),
        new("green-grass", amount, "basket"), new("topsoil", amount, "bucket"),
    ];

    private static Task Each(Func<int, Task> step) => Task.WhenAll(Enumerable.Range(1, Farmers).Select(step));

    private async Task<long> UsedMemory()
    {
        var line = (await _server.Ask("INFO memory")).Split('\n')
            .Single(one => one.StartsWith("used_memory:", StringComparison.Ordinal));
        return long.Parse(line["used_memory:".Length..].Trim(), CultureInfo.InvariantCulture);
    }
}
