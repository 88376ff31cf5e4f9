using HeapText.Dialog.Engine;
using HeapText.Service.Turns;
using HeapText.Service.Workers;
using Microsoft.Extensions.Logging.Abstractions;

namespace HeapText.Simulator.Tests.Running;

/// <summary>One running service: its turns and workers, and all they hold in memory.</summary>
internal sealed class Instance
{
    public Instance(int number, Simulation simulation, IConversation conversation, Random random)
    {
        Number = number;
        var time = new InstanceClock(simulation.Timeline, this);
        var store = new InstanceStore(this, simulation, time);
        var signals = new WorkSignals();
        var carrier = new InstanceCarrier(this, simulation);
        Turns = new TurnRunner(store, conversation, signals, time, NullLogger<TurnRunner>.Instance);
        Due = new DueWorker(store, Turns, time, NullLogger<DueWorker>.Instance);
        Sender = new SenderWorker(
            new OutboundRoute(carrier, null), null, store, signals, new Backoff(random), time,
            NullLogger<SenderWorker>.Instance);
    }

    public int Number { get; }

    public TurnRunner Turns { get; }

    public DueWorker Due { get; }

    public SenderWorker Sender { get; }

    /// <summary>When it took a message from the store last. [ticks since the start]</summary>
    public Dictionary<string, long> TakenAt { get; } = [];

    /// <summary>False once it was killed: nothing of it goes on.</summary>
    public bool IsAlive { get; set; } = true;

    /// <summary>Until when it stands still. [ticks since the start]</summary>
    public long PausedUntil { get; set; }
}
