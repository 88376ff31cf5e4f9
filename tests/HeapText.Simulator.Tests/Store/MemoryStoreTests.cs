using HeapText.Dialog.Ports;
using HeapText.Store.Tests.Contract;

namespace HeapText.Simulator.Tests.Store;

/// <summary>The store in memory keeps what the real homes keep.</summary>
public sealed class MemoryStoreTests : StoreContract
{
    private readonly MemoryHome _home = new();

    protected override ValueTask<IStore> Open() => new(new MemoryStore(_home, Clock));

    protected override ValueTask Discard() => ValueTask.CompletedTask;
}
