using System.Diagnostics;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Tests.Verbs;
using HeapText.Service.Verbs;
using HeapText.Store;
using HeapText.Store.Backup;
using NodaTime;

namespace HeapText.Service.Tests.Processes;

/// <summary>kill -9 in the middle of a restore.</summary>
public sealed class KilledRestoreTests : IDisposable
{
    private const int Farmers = 6_000;
    private static readonly string Secret = Convert.ToBase64String("a secret of thirty-two bytes ..."u8);
    private readonly TempFolder _folder = new();

    private string BackupFile => Path.Combine(_folder.Path, "all.heaptext");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Restore_KilledOnAServer_NoServiceStartsUntilItIsRestoredWhole()
    {
        await MakeBackup();
        await using var home = await StoreHome.Open(StoreHome.Redis, Secret);

        await KillRestore(home, once: async () => await home.Server!.Ask("EXISTS ht:groups") is ":1\r\n");

        var fault = await RefusedStart.Of(home.Options[1], [.. home.Options.Skip(2)]);
        Assert.Contains("'heaptext restore'", fault, StringComparison.Ordinal);
        await GoesOnAfterRestore(home);
    }

    [Fact]
    public async Task Restore_KilledInAFolder_LeavesTheStoreAsItWas()
    {
        await MakeBackup();
        await using var home = await StoreHome.Open(StoreHome.Embedded, Secret);
        await using (var before = await home.Start(fresh: true))
            Assert.False(await before.Text(ServiceProcess.Phone(1), "before"));

        await KillRestore(home, once: () => Task.FromResult(
            File.Exists(Path.Combine(home.Options[1], "heaptext.db.restoring-wal"))));

        await using (var after = await home.Start())
            Assert.True(await after.Text(ServiceProcess.Phone(1), "before"));
        await GoesOnAfterRestore(home);
    }

    private async Task GoesOnAfterRestore(StoreHome home)
    {
        var run = await VerbRun.Of(BackupVerb.CreateRestore(), [BackupFile, "--replace", .. home.Options]);
        Assert.Equal((ExitCodes.Done, ""), (run.Exit, run.Error));
        await using var service = await home.Start();
        Assert.True(await service.Text(ServiceProcess.Phone(Farmers), "in"));
    }

    private async Task KillRestore(StoreHome home, Func<Task<bool>> once)
    {
        var program = Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "heaptext.exe" : "heaptext");
        var start = new ProcessStartInfo(program, ["restore", BackupFile, "--replace", .. home.Options])
        {
            RedirectStandardOutput = true,
        };
        using var restore = Process.Start(start)!;
        while (!restore.HasExited && !await once()) { }
        restore.Kill();
        await restore.WaitForExitAsync(Token);
        Assert.Equal("", await restore.StandardOutput.ReadToEndAsync(Token));
    }

    private async Task MakeBackup()
    {
        var options = new StoreOptions { DataDirectory = Path.Combine(_folder.Path, "source"), Secret = Secret };
        await using (var store = await StoreFactory.Open(options))
        {
            await store.PutGroup(new Group(41, "Upper Ziwani", "en", "Africa/Nairobi", "Trainer"), Token);
            foreach (var some in Enumerable.Range(1, Farmers).Chunk(500))
                await Task.WhenAll(some.Select(n => store.Commit(Turn(store, n), Token).AsTask()));
        }
        await StoreBackup.Take(options, BackupFile, TimeProvider.System, farmers: null, Token);
    }

    private static Commit Turn(IStore store, int n)
    {
        Assert.True(Msisdn.TryParse(ServiceProcess.Phone(n), out var number));
        var now = TimeProvider.System.GetUtcNow();
        return new Commit
        {
            Key = store.KeyOf(number),
            Number = number,
            ExpectedVersion = 0,
            Seen = new SeenId("practice", "in"),
            At = Instant.FromDateTimeOffset(now),
            Farmer = new Farmer { Subject = $"s{n}", Line = "practice", Group = 41 },
        };
    }
}
