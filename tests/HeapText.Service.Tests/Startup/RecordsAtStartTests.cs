using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text.Json;
using HeapText.Dialog.Ports;
using HeapText.Service.Practice;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Tests.Processes;
using HeapText.Store;
using HeapText.Store.Tests.Redis;
using NodaTime;

namespace HeapText.Service.Tests.Startup;

/// <summary>What a start empties, fills, and leaves alone.</summary>
public sealed class RecordsAtStartTests : IDisposable
{
    private static readonly string Secret = Convert.ToBase64String(new byte[32]);
    private static readonly Group Odd = new(99, "Odd", "en", "Africa/Nairobi", "Trainer");
    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Fresh_ServerHoldsRecords_IsRefusedWithNothingLost()
    {
        await using var server = await RedisServer.StartDurable();
        await PutOdd(new StoreOptions { Connection = server.Connection, Secret = Secret });
        await KeepMessage();
        await PutOdd(new StoreOptions { DataDirectory = _folder.Path });

        var fault = await RefusedStart.Of(
            _folder.Path, "--fresh", "--Store:Connection=" + server.Connection, "--Store:Secret=" + Secret);

        Assert.StartsWith("--fresh: the store server holds records.", fault, StringComparison.Ordinal);
        await AssertNothingIsLost();
    }

    [Fact]
    public async Task Fresh_AddressTaken_IsRefusedWithNothingLost()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        await KeepMessage();
        await PutOdd(new StoreOptions { DataDirectory = _folder.Path });

        await RefusedStart.Of(
            _folder.Path, "--fresh", $"--Urls=http://127.0.0.1:{((IPEndPoint)taken.LocalEndpoint).Port}");

        await AssertNothingIsLost();
    }

    [Fact]
    public async Task Fresh_StoreThatPracticeModeDidNotMake_IsRefusedWithNothingLost()
    {
        await PutOdd(new StoreOptions { DataDirectory = _folder.Path });

        var fault = await RefusedStart.Of(_folder.Path, "--fresh");

        Assert.StartsWith("--fresh: ", fault, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_folder.Path, "heaptext.db")));
    }

    [Fact]
    public async Task Fresh_EmptyServer_LeavesTheEmbeddedStoreAlone()
    {
        await using var server = await RedisServer.StartDurable();
        await KeepMessage();
        await PutOdd(new StoreOptions { DataDirectory = _folder.Path });

        await using (var service = await ServiceProcess.Start(
            _folder.Path, "--fresh", "--Store:Connection=" + server.Connection))
            Assert.Equal([41, 42, 43], await Codes(service));

        await using var store = await StoreFactory.Open(new StoreOptions { DataDirectory = _folder.Path });
        Assert.Equal([Odd], await store.Groups(Token));
        await using var journal = PracticeJournal.Open(_folder.Path);
        Assert.Empty(await journal.Messages(RunningService.Number, 0, bothWays: true));
    }

    [Theory]
    [InlineData("--fresh")]
    [InlineData("--AllowedHosts=*")]
    public async Task Groups_InPracticeMode_StandBesideTheDemoVillage(string option)
    {
        await using var service = await ServiceProcess.Start(_folder.Path, option,
            "--Groups:44:Name=Lake", "--Groups:44:Zone=Africa/Nairobi", "--Groups:44:Officer=Trainer");

        Assert.Equal([41, 42, 43, 44], await Codes(service));
        Assert.Equal(option == "--fresh", (await Concerns(service)).Count == 0);
    }

    [Fact]
    public async Task HalfMadeVillage_Embedded_IsMadeAnew()
    {
        await KeepMessage(seeding: true);
        await PutOdd(new StoreOptions { DataDirectory = _folder.Path });

        await using (var service = await ServiceProcess.Start(_folder.Path))
        {
            Assert.Equal([41, 42, 43], await Codes(service));
            Assert.NotEmpty(await Concerns(service));
        }

        await using var journal = PracticeJournal.Open(_folder.Path);
        Assert.False(await journal.IsSeeding());
    }

    [Fact]
    public async Task HalfMadeVillage_OnAServer_IsLeftAndToldOnce()
    {
        await using var server = await RedisServer.StartDurable();
        await PutOdd(new StoreOptions { Connection = server.Connection, Secret = Secret });
        await KeepMessage(seeding: true);
        string[] settings = ["--Store:Connection=" + server.Connection, "--Store:Secret=" + Secret];

        var first = await ServiceProcess.Start(_folder.Path, settings);
        Assert.Equal([99], await Codes(first));
        await first.DisposeAsync();
        var second = await ServiceProcess.Start(_folder.Path, settings);
        await second.DisposeAsync();

        Assert.Contains(first.Errors, line => line.Contains("half made", StringComparison.Ordinal));
        Assert.DoesNotContain(second.Errors, line => line.Contains("half made", StringComparison.Ordinal));
    }

    [Fact]
    public async Task RealMode_TwoOnOneServer_ShareAWorkingFolder()
    {
        await using var server = await RedisServer.StartDurable();
        string[] settings =
        [
            "--Store:Connection=" + server.Connection, "--Store:Secret=" + Secret, "--Lines:lake:From=4040",
            "--Lines:lake:Url=http://127.0.0.1:9/send", "--Lines:lake:Secrets:0=" + RunningService.Secret,
        ];

        await using var first = await ServiceProcess.Start(_folder.Path, settings);
        await using var second = await ServiceProcess.Start(_folder.Path, settings);

        using var ready = await second.Http.GetAsync("/health/ready", Token);
        Assert.Equal(HttpStatusCode.OK, ready.StatusCode);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    private static async Task PutOdd(StoreOptions options)
    {
        await using var store = await StoreFactory.Open(options);
        await store.PutGroup(Odd, Token);
    }

    private async Task KeepMessage(bool seeding = false)
    {
        await using var journal = PracticeJournal.Open(_folder.Path);
        if (seeding) await journal.KeepSeeding(true);
        await journal.Keep(new PracticeMessage(
            0, "out", RunningService.Number, "s-1", "Karibu", "GSM7", 1, Instant.FromUnixTimeSeconds(0)));
    }

    private async Task AssertNothingIsLost()
    {
        await using var journal = PracticeJournal.Open(_folder.Path);
        Assert.Single(await journal.Messages(RunningService.Number, 0, bothWays: true));
        await using var store = await StoreFactory.Open(new StoreOptions { DataDirectory = _folder.Path });
        Assert.Equal([Odd], await store.Groups(Token));
    }

    private static async Task<IEnumerable<int>> Codes(ServiceProcess service)
    {
        var village = await service.Http.GetFromJsonAsync<JsonElement>("/practice/village", Token);
        return [.. village.GetProperty("groups").EnumerateArray().Select(one => one.GetProperty("code").GetInt32())];
    }

    private static async Task<List<JsonElement>> Concerns(ServiceProcess service) =>
        await service.Http.GetFromJsonAsync<List<JsonElement>>("/practice/concerns", Token) ?? [];
}
