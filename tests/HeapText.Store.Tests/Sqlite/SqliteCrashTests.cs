using System.Diagnostics;
using System.Globalization;
using HeapText.Dialog.Ports;
using HeapText.Store.Tests.Contract;

namespace HeapText.Store.Tests.Sqlite;

public sealed class SqliteCrashTests : IDisposable
{
    private const int Rounds = 5;
    private readonly string _folder = Directory.CreateTempSubdirectory("heaptext-crash-").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Kill_WhileCommitting_LosesNothingAcknowledged()
    {
        var acknowledged = new Acknowledged();
        var random = new Random(20260302);

        for (var round = 0; round < Rounds; round++)
        {
            var more = acknowledged.Total + random.Next(200, 3_000);
            await WriteThenKill(acknowledged, more);
            await using var store = await Open();
            await acknowledged.Check(store, Cancel);
        }

        await using var end = await Open();
        await acknowledged.CheckOutbox(end, Cancel);
    }

    private async Task WriteThenKill(Acknowledged acknowledged, long until)
    {
        var writer = Path.Combine(AppContext.BaseDirectory, "HeapText.Store.CrashWriter.dll");
        using var process = Process.Start(
            new ProcessStartInfo("dotnet", [writer, _folder]) { RedirectStandardOutput = true })!;
        while (acknowledged.Total < until)
        {
            var line = await process.StandardOutput.ReadLineAsync(Cancel);
            Assert.NotNull(line);
            var parts = line.Split(' ');
            acknowledged.Note(
                int.Parse(parts[0], CultureInfo.InvariantCulture), long.Parse(parts[1], CultureInfo.InvariantCulture));
        }
        process.Kill();
        await process.WaitForExitAsync(Cancel);
    }

    private ValueTask<IStore> Open() => StoreFactory.Open(new StoreOptions { DataDirectory = _folder });
}
