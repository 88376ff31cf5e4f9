using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Workers;
using HeapText.Simulator.Tests.Rules;
using HeapText.Simulator.Tests.Store;
using HeapText.Simulator.Tests.World;

namespace HeapText.Simulator.Tests.Running;

/// <summary>Plays one scenario on one thread: instances of the real turns and workers over a store in memory, a gateway
/// and clocks of its own. The same scenario gives the same trace.</summary>
internal sealed partial class Simulation
{
    private const int MostSteps = 100_000;

    private readonly Scenario _scenario;
    private readonly Func<IConversation, IConversation> _spoil;
    private readonly StepScheduler _tasks = new();
    private readonly Random _random;
    private readonly Dictionary<int, Group> _groups = Villages.Groups();
    private readonly Conversation _conversation;
    private readonly Instance[] _instances;
    private readonly List<(Instance Instance, TaskCompletionSource Step)> _steps = [];
    private readonly List<Sleeper> _sleepers = [];
    private readonly Dictionary<int, CallFault> _callFaults = [];
    private readonly Dictionary<int, SendFault> _sendFaults = [];
    private int _calls;
    private int _sends;
    private int _storeOutages;

    private Simulation(Scenario scenario, Flaw flaw, Func<IConversation, IConversation> spoil, Trace? trace)
    {
        (_scenario, Flaw, _spoil, _trace) = (scenario, flaw, spoil, trace);
        _random = new Random(scenario.Seed);
        Timeline = new Timeline(scenario.Start.ToDateTimeOffset());
        _conversation = Villages.Conversation(_groups);
        Rules = new RuleBook(Home, Timeline, _conversation);
        foreach (var happening in scenario.Happenings)
        {
            if (happening is Happening.CallFails call) _callFaults[call.Call] = call.Fault;
            if (happening is Happening.SendFails send) _sendFaults[send.Send] = send.Fault;
        }
        _instances = new Instance[scenario.Instances];
    }

    public Timeline Timeline { get; }

    public MemoryHome Home { get; } = new();

    public RuleBook Rules { get; }

    public Flaw Flaw { get; }

    /// <summary>True while the store takes nothing.</summary>
    public bool IsStoreGone => _storeOutages > 0;

    /// <summary>Plays a scenario to its end, or to the first broken rule.</summary>
    public static Outcome Play(
        Scenario scenario, Flaw flaw = Flaw.None, Func<IConversation, IConversation>? spoil = null,
        Trace? trace = null)
    {
        var simulation = new Simulation(scenario, flaw, spoil ?? (same => same), trace);
        return simulation.Play();
    }

    private Outcome Play()
    {
        foreach (var lives in _scenario.Happenings.OfType<Happening.Lives>()) Settle(lives);
        for (var i = 0; i < _instances.Length; i++) StartInstance(i);
        foreach (var timed in _scenario.Happenings.OfType<Happening.Timed>())
            Timeline.After(TimeSpan.FromSeconds(timed.Seconds), () => Happen(timed));
        var steps = 0;
        while (Rules.Broken is null && Advance())
        {
            if (++steps < MostSteps) continue;
            Rules.Break("it never came to rest");
        }
        if (Rules.Broken is null) Rules.CheckEnd();
        if (Rules.Broken is { } broken) Note($"BROKEN: {broken}");
        return new Outcome(Rules.Broken, steps, Rules.Messages, Rules.Overtaken, Timeline.Elapsed, _met);
    }

    /// <summary>One step further; false at the end.</summary>
    private bool Advance()
    {
        _tasks.RunReady();
        if (Rules.Broken is not null) return false;
        if (Timeline.DoNext()) return true;
        if (TakeStep()) return true;
        var end = (Scenario.Faulty + Scenario.Quiet).Ticks;
        var wake = NextWake();
        var next = Timeline.Next is { } timed && !(wake < timed) ? timed : wake;
        if (next is not { } at || at > end) return false;
        Timeline.PassTo(at);
        if (wake <= at) WakeSleepers(at);
        return true;
    }

    /// <summary>Lets one waiting step go on, any of those that can.</summary>
    private bool TakeStep()
    {
        if (_steps.Count == 0) return false;
        var at = _random.Next(_steps.Count);
        for (var tried = 0; tried < _steps.Count; tried++, at = (at + 1) % _steps.Count)
        {
            var (instance, step) = _steps[at];
            if (instance.PausedUntil > Timeline.Elapsed) continue;
            _steps.RemoveAt(at);
            Timeline.PassTo(Timeline.Elapsed + (_random.Next(1, 20) * TimeSpan.TicksPerMillisecond));
            step.SetResult();
            return true;
        }
        return false;
    }

    /// <summary>Waits until the simulation lets this instance go on.</summary>
    public Task Step(Instance instance)
    {
        var step = new TaskCompletionSource();
        if (instance.IsAlive) _steps.Add((instance, step));
        return step.Task;
    }

    /// <summary>Waits for some time, or for the cancellation.</summary>
    public async Task Wait(Instance instance, TimeSpan time, CancellationToken cancel)
    {
        var wait = new TaskCompletionSource();
        if (time != Timeout.InfiniteTimeSpan) Timeline.After(time, () => wait.TrySetResult());
        await using var cancelled = cancel.Register(() => wait.TrySetCanceled(cancel));
        await wait.Task;
        await Step(instance);
    }

    public CallFault? FaultOfCall() =>
        _callFaults.TryGetValue(_calls++, out var fault) ? Met("store call", fault) : null;

    public SendFault? FaultOfSend() =>
        _sendFaults.TryGetValue(_sends++, out var fault) ? Met("send", fault) : null;

    private void StartInstance(int number)
    {
        var instance = new Instance(number, this, Rules.Watching(_spoil(_conversation)), new Random(_scenario.Seed));
        _instances[number] = instance;
        Note(instance, "starts", null);
        _tasks.Start(() => GoOn(instance, instance.Due));
        _tasks.Start(() => GoOn(instance, instance.Sender));
    }

    /// <summary>A worker's passes, one after the other, as the host drives them.</summary>
    private async Task GoOn(Instance instance, PassWorker worker)
    {
        var sleep = new Sleeper(instance, worker is SenderWorker);
        while (instance.IsAlive)
        {
            var took = 0;
            try
            {
                took = await worker.RunOnce(CancellationToken.None);
            }
            catch (StoreUnavailableException)
            {
                // The host logs it and goes on.
            }
            if (took > 0) sleep.Rest = Sleeper.Shortest;
            else await sleep.Sleep(_sleepers, Timeline.Elapsed);
        }
    }
}
