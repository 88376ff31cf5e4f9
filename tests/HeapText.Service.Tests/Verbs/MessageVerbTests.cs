using System.Text.Json;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Verbs;
using HeapText.Store;
using NodaTime;

namespace HeapText.Service.Tests.Verbs;

public sealed class MessageVerbTests : IAsyncLifetime
{
    private readonly TempFolder _folder = new();
    private readonly Instant _now =
        Instant.FromUnixTimeMilliseconds(TimeProvider.System.GetUtcNow().ToUnixTimeMilliseconds());
    private IStore _store = null!;

    public async ValueTask InitializeAsync()
    {
        _store = await StoreFactory.Open(new StoreOptions { DataDirectory = _folder.Path });
        await _store.PutGroup(new Group(41, "Upper Ziwani", "en", "Africa/Nairobi", "Trainer"), Token);
        await Put(1, "ana", new Settlement.Sent(["r-1"]), new Settlement.SetAside("expired"));
        await Put(2, "ben", new Settlement.SetAside("refused"), new Settlement.Sent([]));
    }

    public async ValueTask DisposeAsync()
    {
        await _store.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task List_WhileTheServiceHasTheStoreOpen_ShowsWhatWasSentAndHowItEnded()
    {
        await _store.Note(new Receipt("lake", "r-1", DeliveryState.Delivered, _now), _now, Token);

        var sent = (await Lines("list")).ToDictionary(line => line.GetProperty("id").GetString()!);

        Assert.Equal(["ana-1", "ben-2"], sent.Keys.Order());
        Assert.Equal("delivered", sent["ana-1"].GetProperty("state").GetString());
        Assert.Equal("sent", sent["ben-2"].GetProperty("state").GetString());
        Assert.Equal("+999*******01", sent["ana-1"].GetProperty("to").GetString());
        Assert.Equal("lake", sent["ana-1"].GetProperty("line").GetString());
    }

    [Fact]
    public async Task List_SetAside_ShowsTheReasonNewestFirst()
    {
        var aside = await Lines("list", "--set-aside");

        Assert.Equal(
            ["ben-1 refused", "ana-2 expired"],
            aside.Select(line => $"{line.GetProperty("id")} {line.GetProperty("reason")}"));
        Assert.Equal("+999*******02", aside[0].GetProperty("to").GetString());
    }

    [Theory]
    [InlineData("ana", "ana-1")]
    [InlineData("an")]
    public async Task List_OfOneSubject_ShowsThatFarmersAlone(string subject, params string[] expected) =>
        Assert.Equal(
            expected, (await Lines("list", "--subject", subject)).Select(line => line.GetProperty("id").GetString()));

    [Fact]
    public async Task List_SetAsideOfOneSubject_ShowsThatFarmersAlone() =>
        Assert.Equal(
            ["ana-2"],
            (await Lines("list", "--set-aside", "--subject", "ana"))
                .Select(line => line.GetProperty("id").GetString()));

    [Fact]
    public async Task List_AnyOfThem_HoldsNeitherTextNorNumber()
    {
        var all = (await Run("list")).Output + (await Run("list", "--set-aside")).Output;

        Assert.DoesNotContain("Turn the heap", all, StringComparison.Ordinal);
        Assert.DoesNotContain("0000000", all, StringComparison.Ordinal);
    }

    [Fact]
    public async Task List_NoStoreThere_SaysSoInOneLine()
    {
        using var empty = new TempFolder();

        var run = await Run("list", "--data", empty.Path);

        Assert.Equal(1, run.Exit);
        Assert.Contains("there is no store", run.Error, StringComparison.Ordinal);
    }

    private async Task<List<JsonElement>> Lines(params string[] args)
    {
        var run = await Run(args);
        Assert.Equal((0, ""), (run.Exit, run.Error));
        return [.. run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => JsonDocument.Parse(line).RootElement)];
    }

    private Task<VerbRun> Run(params string[] args) => VerbRun.Of(
        MessageVerb.Create(), args.Contains("--data") ? args : [.. args, "--data", _folder.Path]);

    private async Task Put(int farmer, string subject, params Settlement[] settlements)
    {
        Assert.True(Msisdn.TryParse($"+999{farmer:D9}", out var number));
        await _store.Commit(
            new Commit
            {
                Key = _store.KeyOf(number),
                Number = number,
                ExpectedVersion = 0,
                At = _now,
                Farmer = new Farmer { Subject = subject, Line = "lake", Group = 41 },
                Send = [.. settlements.Select((_, i) => new Outbound(
                    $"{subject}-{i + 1}", "lake", "Turn the heap", Priority.Reply, _now, _now + Duration.FromDays(1)))],
            },
            Token);
        foreach (var settlement in settlements)
        {
            var taken = await _store.TakeNext("lake", Priority.Notice, _now, Duration.FromMinutes(1), 1, Token);
            await _store.Settle(Assert.Single(taken), settlement, Token);
        }
    }
}
