using HeapText.Service.Tests.Fakes;
using HeapText.Service.Tests.Processes;
using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Verbs;

public sealed class BackupVerbTests : IDisposable
{
    private readonly TempFolder _folder = new();

    private string BackupFile => Path.Combine(_folder.Path, "all.heaptext");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Backup_NoStoreThere_IsRefusedInOneLine()
    {
        var run = await VerbRun.Of(BackupVerb.CreateBackup(), BackupFile, "--data", _folder.Path);

        run.AssertRefused(
            $"Store:DataDirectory: there is no store in '{_folder.Path}'. Name the folder of the service.");
        Assert.Empty(Directory.GetFiles(_folder.Path));
    }

    [Theory]
    [InlineData("another")]
    [InlineData("--nonsense")]
    public async Task Backup_StrayWord_IsWrongUse(string stray)
    {
        var run = await VerbRun.Of(BackupVerb.CreateBackup(), BackupFile, stray, "--data", _folder.Path);

        Assert.Equal(ExitCodes.WrongUse, run.Exit);
        Assert.Contains(stray, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Backup_FileCannotBeWritten_IsRefusedInOneLine()
    {
        await using var home = await StoreHome.Open(StoreHome.Embedded);
        await using var service = await home.Start(fresh: true);

        var run = await VerbRun.Of(
            BackupVerb.CreateBackup(), [Path.Combine(_folder.Path, "none", "all.heaptext"), .. home.Options]);

        Assert.Equal(ExitCodes.BadInput, run.Exit);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
    }

    [Theory]
    [InlineData(StoreHome.Embedded)]
    [InlineData(StoreHome.Redis)]
    public async Task Restore_WhileAServiceRuns_IsRefusedAndItGoesOn(string kind)
    {
        await using var home = await StoreHome.Open(kind);
        await using var service = await home.Start(fresh: true);
        Assert.Equal(ExitCodes.Done, (await VerbRun.Of(BackupVerb.CreateBackup(), [BackupFile, .. home.Options])).Exit);

        var run = await VerbRun.Of(BackupVerb.CreateRestore(), [BackupFile, "--replace", .. home.Options]);

        Assert.Equal(ExitCodes.BadInput, run.Exit);
        Assert.Contains("in use by another service", run.Error, StringComparison.Ordinal);
        Assert.False(await service.Text(ServiceProcess.Phone(1), "1"));
    }

    [Fact]
    public async Task Restore_NoBackupThere_IsRefusedInOneLine()
    {
        await using var home = await StoreHome.Open(StoreHome.Embedded, Convert.ToBase64String(new byte[32]));

        var run = await VerbRun.Of(BackupVerb.CreateRestore(), [BackupFile, .. home.Options]);

        Assert.Equal(ExitCodes.BadInput, run.Exit);
        Assert.StartsWith("The backup cannot be read", run.Error, StringComparison.Ordinal);
    }
}
