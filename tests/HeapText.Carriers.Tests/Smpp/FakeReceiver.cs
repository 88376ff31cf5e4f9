using System.Collections.Concurrent;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Tests.Smpp;

/// <summary>Keeps what lines hand in, and knows what had its effect before, as the store does.</summary>
internal sealed class FakeReceiver : IReceiver
{
    private readonly ConcurrentDictionary<string, bool> _seen = new(StringComparer.Ordinal);

    /// <summary>Texts as they had their effect, each once.</summary>
    public ConcurrentQueue<Inbound> Heard { get; } = [];

    /// <summary>Ids of all texts handed in, repeats too.</summary>
    public ConcurrentQueue<string> Asked { get; } = [];

    public ConcurrentQueue<MissedCall> Rung { get; } = [];

    public ConcurrentQueue<Receipt> Noted { get; } = [];

    public ConcurrentQueue<Dialled> Steps { get; } = [];

    /// <summary>What is awaited before a text has its effect.</summary>
    public Func<Task> BeforeEffect { get; set; } = () => Task.CompletedTask;

    /// <summary>What is awaited after a text had its effect, before that is said.</summary>
    public Func<Task> AfterEffect { get; set; } = () => Task.CompletedTask;

    public Func<Dialled, Screen> Show { get; set; } = step => new Screen("", false);

    public async Task<bool> Hear(Inbound message, CancellationToken cancel)
    {
        Asked.Enqueue(message.Id);
        await BeforeEffect();
        var isNew = _seen.TryAdd(message.Id, true);
        if (isNew) Heard.Enqueue(message);
        await AfterEffect();
        return !isNew;
    }

    public Task<(Screen Screen, bool Duplicate)> Dial(Dialled step, CancellationToken cancel)
    {
        Steps.Enqueue(step);
        return Task.FromResult((Show(step), false));
    }

    public Task<bool> Ring(MissedCall call, CancellationToken cancel)
    {
        Rung.Enqueue(call);
        return Task.FromResult(!_seen.TryAdd(call.Id, true));
    }

    public async Task<NoteOutcome> Note(Receipt receipt, CancellationToken cancel)
    {
        await BeforeEffect();
        Noted.Enqueue(receipt);
        return NoteOutcome.Noted;
    }
}
