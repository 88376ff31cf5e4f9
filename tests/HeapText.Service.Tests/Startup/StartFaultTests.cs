using System.Net;
using System.Net.Sockets;
using HeapText.Service.Practice;
using HeapText.Service.Tests.Fakes;
using HeapText.Store.Tests.Redis;

namespace HeapText.Service.Tests.Startup;

/// <summary>What keeps the service from starting is said in one line: the setting, what is wrong, the fix.</summary>
public sealed class StartFaultTests : IDisposable
{
    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Start_DataDirectoryIsAFile_NamesTheSetting()
    {
        var file = Path.Combine(_folder.Path, "data");
        await File.WriteAllTextAsync(file, "", Token);

        AssertSays("Store:DataDirectory: ", "--data", await RefusedStart.Of(file));
    }

    [Fact]
    public async Task Start_DataDirectoryCannotBeMade_NamesTheSetting() =>
        AssertSays("Store:DataDirectory: ", "--data", await RefusedStart.Of("/proc/heaptext"));

    [Fact]
    public async Task Start_LockFileCannotBeWritten_NamesTheSetting()
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "service.lock"));

        AssertSays("Store:DataDirectory: ", "--data", await RefusedStart.Of(_folder.Path));
    }

    [Theory]
    [InlineData(PracticeJournal.FileName)]
    [InlineData("heaptext.db")]
    public async Task Start_BrokenDatabase_NamesItAndTheSetting(string file)
    {
        await File.WriteAllTextAsync(Path.Combine(_folder.Path, file), new string('x', 9000), Token);
        await File.WriteAllTextAsync(
            Path.Combine(_folder.Path, "store.key"), Convert.ToBase64String(new byte[32]), Token);

        AssertSays("Store:DataDirectory: ", "--data", await RefusedStart.Of(_folder.Path));
    }

    [Fact]
    public async Task Start_KeyOfTheStoreIsGone_NamesTheSetting()
    {
        await File.WriteAllTextAsync(Path.Combine(_folder.Path, "heaptext.db"), "", Token);

        AssertSays("Store:Secret ", "set the secret", await RefusedStart.Of(_folder.Path));
    }

    [Fact]
    public async Task Start_AddressTaken_NamesTheSetting()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();

        var url = $"http://127.0.0.1:{((IPEndPoint)taken.LocalEndpoint).Port}";

        AssertSays($"Urls: '{url}' ", "--urls", await RefusedStart.Of(_folder.Path, "--Urls=" + url));
    }

    [Theory]
    [InlineData("http://localhost:0")]
    [InlineData("http://127.0.0.1:7012;http://127.0.0.1:7012")]
    public async Task Start_AddressesThatCannotBeOpened_NamesTheSetting(string urls) =>
        AssertSays("Urls: ", "--urls", await RefusedStart.Of(_folder.Path, "--Urls=" + urls));

    [Fact]
    public async Task Start_CertificateThatIsNotThere_NamesTheSetting() =>
        AssertSays("Urls: ", "Kestrel:Certificates", await RefusedStart.Of(_folder.Path,
            "--Urls=https://127.0.0.1:0", "--Kestrel:Certificates:Default:Path=/none.pfx"));

    [Theory]
    [InlineData("127.0.0.1:1")]
    [InlineData("127.0.0.1:6379,colour=green")]
    [InlineData("127.0.0.1:6379,connectTimeout=soon")]
    [InlineData(",")]
    public async Task Start_StoreServerCannotBeReached_NamesTheSetting(string connection) =>
        AssertSays("Store:Connection: ", "connection string",
            await RefusedStart.Of(_folder.Path, "--Store:Connection=" + connection));

    [Theory]
    [InlineData("appendonly yes", "--appendonly", "no")]
    [InlineData("noeviction", "--appendonly", "yes", "--maxmemory-policy", "allkeys-lru")]
    public async Task Start_StoreServerThatMayLoseRecords_NamesTheSetting(string fix, params string[] arguments)
    {
        await using var server = await RedisServer.Start(arguments);

        AssertSays("Store:Connection: ", fix,
            await RefusedStart.Of(_folder.Path, "--Store:Connection=" + server.Connection));
    }

    [Fact]
    public async Task Start_NoSuchDialogsFolder_NamesTheSetting() =>
        AssertSays("Dialogs: ", "/none", await RefusedStart.Of(_folder.Path, "--Dialogs=/none"));

    [Fact]
    public async Task Start_DialogsFileIsAFolder_NamesItAndTheSetting()
    {
        var file = Directory.CreateDirectory(Path.Combine(_folder.Path, "en", "text.yml")).FullName;

        AssertSays("Dialogs: ", file, await RefusedStart.Of(_folder.Path, "--Dialogs=" + _folder.Path));
    }

    [Fact]
    public async Task Start_GroupInALanguageWithoutDialogs_NamesTheSettingAndTheLanguages() =>
        AssertSays("Groups:7:Language: ", "am, en, fr, pt, sw", await RefusedStart.Of(_folder.Path,
            "--Groups:7:Name=Lake", "--Groups:7:Language=xx", "--Groups:7:Zone=Africa/Nairobi",
            "--Groups:7:Officer=Trainer"));

    private static void AssertSays(string setting, string fix, string line)
    {
        Assert.StartsWith(setting, line, StringComparison.Ordinal);
        Assert.Contains(fix, line, StringComparison.Ordinal);
    }
}
