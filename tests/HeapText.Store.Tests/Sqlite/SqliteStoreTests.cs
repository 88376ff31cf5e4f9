using HeapText.Dialog.Ports;
using HeapText.Store.Tests.Contract;

namespace HeapText.Store.Tests.Sqlite;

public sealed class SqliteStoreTests : StoreContract
{
    private readonly string _folder = Directory.CreateTempSubdirectory("heaptext-store-").FullName;

    protected override ValueTask<IStore> AnotherOverTheSame() => new(Store);

    protected override ValueTask<IStore> Open() =>
        StoreFactory.Open(new StoreOptions { DataDirectory = _folder }, time: Clock);

    protected override ValueTask Discard()
    {
        Directory.Delete(_folder, recursive: true);
        return ValueTask.CompletedTask;
    }
}
