using System.Collections.Concurrent;
using HeapText.Dialog.Ports;

namespace HeapText.Service.Turns;

/// <summary>The groups that can be joined: kept in the store, and held here for the conversation to read.</summary>
internal sealed class GroupBook(IStore store)
{
    private readonly ConcurrentDictionary<int, Group> _byCode = new();

    /// <summary>By code; always as the store has them.</summary>
    public IReadOnlyDictionary<int, Group> ByCode => _byCode;

    /// <summary>Reads what the store has.</summary>
    public async Task Load(CancellationToken cancel)
    {
        foreach (var group in await store.Groups(cancel)) _byCode[group.Code] = group;
    }

    /// <summary>Adds a group or replaces the one with its code.</summary>
    public async Task Put(Group group, CancellationToken cancel)
    {
        await store.PutGroup(group, cancel);
        _byCode[group.Code] = group;
    }
}
