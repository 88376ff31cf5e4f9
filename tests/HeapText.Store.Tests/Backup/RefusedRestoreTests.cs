using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using HeapText.Store.Numbers;
using HeapText.Store.Redis;
using Microsoft.Extensions.Logging.Abstractions;

namespace HeapText.Store.Tests.Backup;

public sealed class RefusedRestoreTests : IDisposable
{
    private static readonly NumberVault Vault = new(Convert.FromBase64String(Home.Secret));
    private readonly string _folder = Directory.CreateTempSubdirectory("heaptext-backup-").FullName;

    private string BackupFile => Path.Combine(_folder, "season.heaptext");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(Home.Embedded)]
    [InlineData(Home.Redis)]
    public async Task Restore_StoreHoldsRecords_IsRefusedUnlessReplaced(string kind)
    {
        await using var home = await Backed(kind);
        await using (var store = await home.Open(Season.ClockAt(Season.Noon)))
            await store.ExplainWord(new OwnWord("41", "later", "sw", null), Cancel);

        var fault = await Assert.ThrowsAsync<BackupFaultException>(() => home.Restore(BackupFile));
        var kept = await Words(home);
        await home.Restore(BackupFile, replace: true);

        Assert.Contains("--replace", fault.Message, StringComparison.Ordinal);
        Assert.Equal(["later", "mbondo"], kept);
        Assert.Equal(["mbondo"], await Words(home));
    }

    [Theory]
    [InlineData(Home.Embedded)]
    [InlineData(Home.Redis)]
    public async Task Restore_FileCutOrAltered_ChangesNothing(string kind)
    {
        await using var home = await Backed(kind);
        await using (var store = await home.Open(Season.ClockAt(Season.Noon)))
            await store.ExplainWord(new OwnWord("41", "later", "sw", null), Cancel);
        var whole = await File.ReadAllBytesAsync(BackupFile, Cancel);

        foreach (var broken in Broken(whole))
        {
            await File.WriteAllBytesAsync(BackupFile, broken, Cancel);
            await Assert.ThrowsAsync<BackupFaultException>(() => home.Restore(BackupFile, replace: true));
        }

        Assert.Equal(["later", "mbondo"], await Words(home));
    }

    [Fact]
    public async Task Restore_AlteredWithANewChecksum_IsRefused()
    {
        await using var home = await Backed(Home.Embedded);
        var bytes = await File.ReadAllBytesAsync(BackupFile, Cancel);
        bytes[^80] ^= 1;
        System.Security.Cryptography.SHA256.HashData(bytes.AsSpan(..^64), bytes.AsSpan(^64..^32));
        await File.WriteAllBytesAsync(BackupFile, bytes, Cancel);

        var fault = await Assert.ThrowsAsync<BackupFaultException>(() => home.Restore(BackupFile, replace: true));

        Assert.Contains("altered", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Home.Embedded)]
    [InlineData(Home.Redis)]
    public async Task Restore_AnotherSecret_SaysWhichOneIsNeeded(string kind)
    {
        await using var home = await Backed(kind);
        await using var other = await Home.New(kind);
        other.Options.Secret = Convert.ToBase64String(new byte[32]);

        var fault = await Assert.ThrowsAsync<BackupFaultException>(() => other.Restore(BackupFile));

        Assert.StartsWith("Store:Secret", fault.Message, StringComparison.Ordinal);
        var needed = (await home.Take(BackupFile, TimeProvider.System)).Secret;
        Assert.Contains(needed, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Restore_NoSecretAtAll_MakesNone()
    {
        await using var home = await Backed(Home.Embedded);
        await using var other = await Home.New(Home.Embedded);
        other.Options.Secret = "";

        var fault = await Assert.ThrowsAsync<ArgumentException>(() => other.Restore(BackupFile));

        Assert.Contains("store.key", fault.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(other.Options.DataDirectory));
    }

    [Fact]
    public async Task Restore_ServiceConnectedToTheServer_ChangesNothing()
    {
        await using var home = await Backed(Home.Redis);
        await using var service = await home.Open(Season.ClockAt(Season.Noon));

        var fault = await Assert.ThrowsAsync<BackupFaultException>(() => home.Restore(BackupFile, replace: true));

        Assert.Contains("Stop every service", fault.Message, StringComparison.Ordinal);
        Assert.Equal(2, (await service.Groups(Cancel)).Count);
    }

    [Fact]
    public async Task Restore_CutShortOnAServer_KeepsServicesOutUntilRestoredWhole()
    {
        await using var home = await Backed(Home.Redis);
        await using (var halfWay = new RedisRestore(
            await RedisStore.Connect(home.Options, "cut-short", NullLogger.Instance), new Keys(Keys.Prefix), Vault,
            takenAt: 0, number: 0))
        {
            using var backup = BackupReader.Open(BackupFile, Vault);
            await halfWay.Clear(Cancel);
            foreach (var frame in backup.Frames().Take(5)) await halfWay.Add(frame);
        }

        var fault = await Assert.ThrowsAsync<InvalidDataException>(async () => await Words(home));
        await home.Restore(BackupFile);

        Assert.Contains("restore", fault.Message, StringComparison.Ordinal);
        Assert.Equal(["mbondo"], await Words(home));
    }

    [Fact]
    public async Task Restore_CutShortInAFolder_LeavesTheStoreAsItWas()
    {
        await using var home = await Backed(Home.Embedded);

        await Assert.ThrowsAsync<OperationCanceledException>(() => StoreBackup.Restore(
            home.Options, BackupFile, replace: true, TimeProvider.System, null, new CancellationToken(true)));

        Assert.Equal(["mbondo"], await Words(home));
    }

    [Fact]
    public async Task Restore_StoreFileDamaged_IsPutRight()
    {
        await using var home = await Backed(Home.Embedded);
        await File.WriteAllTextAsync(home.DatabaseFile, new string('x', 8_192), Cancel);

        await Assert.ThrowsAsync<BackupFaultException>(() => home.Restore(BackupFile));
        await home.Restore(BackupFile, replace: true);

        Assert.Equal(["mbondo"], await Words(home));
    }

    [Fact]
    public async Task Restore_LogOfTheOldStoreLeftBehind_IsNotAppliedToTheNew()
    {
        await using var home = await Backed(Home.Embedded);
        string log;
        await using (var store = await home.Open(Season.ClockAt(Season.Noon)))
        {
            await store.ExplainWord(new OwnWord("41", "later", "sw", null), Cancel);
            log = Path.Combine(_folder, "log");
            File.Copy(home.DatabaseFile + "-wal", log);
        }
        File.Copy(log, home.DatabaseFile + "-wal", overwrite: true);

        await home.Restore(BackupFile, replace: true);

        Assert.Equal(["mbondo"], await Words(home));
    }

    [Fact]
    public async Task Take_OverAFileThatIsNoBackup_LeavesItAlone()
    {
        await using var home = await Backed(Home.Embedded);
        var letter = Path.Combine(_folder, "letter.txt");
        await File.WriteAllTextAsync(letter, "a letter", Cancel);

        await Assert.ThrowsAsync<BackupFaultException>(() => home.Take(letter, TimeProvider.System));

        Assert.Equal("a letter", await File.ReadAllTextAsync(letter, Cancel));
        Assert.Equal(2, Directory.GetFiles(_folder).Length);
    }

    /// <summary>A home with the season in it, which is backed up.</summary>
    private async Task<Home> Backed(string kind)
    {
        var home = await Home.New(kind);
        await using (var store = await home.Open(Season.ClockAt(Season.Noon))) await Season.Write(store);
        await home.Take(BackupFile, Season.ClockAt(Season.Noon));
        return home;
    }

    private static async Task<List<string>> Words(Home home)
    {
        await using var store = await home.Open(Season.ClockAt(Season.Noon));
        return [.. (await store.OwnWords(Cancel)).Select(word => word.Word)];
    }

    private static IEnumerable<byte[]> Broken(byte[] whole)
    {
        foreach (var length in new[] { 0, 5, 40, whole.Length / 2, whole.Length - 64, whole.Length - 1 })
            yield return whole[..length];
        yield return [.. whole, 0];
        foreach (var at in new[] { 0, 8, 9, 30, 34, whole.Length / 2, whole.Length - 65, whole.Length - 1 })
        {
            var altered = whole.ToArray();
            altered[at] ^= 0x40;
            yield return altered;
        }
    }
}
