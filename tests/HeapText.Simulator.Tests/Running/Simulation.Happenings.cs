using HeapText.Dialog.Ports;
using HeapText.Simulator.Tests.Rules;
using HeapText.Simulator.Tests.Store;
using HeapText.Simulator.Tests.World;

namespace HeapText.Simulator.Tests.Running;

/// <summary>What comes from outside: texts, dials, faults.</summary>
internal sealed partial class Simulation
{
    private static readonly TimeSpan GatewayWaits = TimeSpan.FromSeconds(10);

    private static Msisdn NumberOf(int farmer) =>
        Msisdn.TryParse($"+99910000{farmer:D3}", out var number)
            ? number
            : throw new ArgumentOutOfRangeException(nameof(farmer));

    private void Settle(Happening.Lives lives)
    {
        var number = NumberOf(lives.Farmer);
        var key = Home.KeyOf(number);
        Rules.Name(key, $"f{lives.Farmer}");
        Note($"f{lives.Farmer} of {Villages.Zones[lives.Village]}: {lives.Opening}");
        var opened = Villages.Open(lives.Village, _scenario.Start, lives.Opening, $"subject{lives.Farmer}");
        if (opened is null) return;
        var commit = new Commit
        {
            Key = key,
            Number = number,
            ExpectedVersion = 0,
            At = _scenario.Start,
            Farmer = opened.Farmer,
            NextDue = opened.NextDue,
        };
        var clock = new InstanceClock(Timeline, null!);
        var outcome = new MemoryStore(Home, clock).Commit(commit, CancellationToken.None).AsTask().Result;
        if (outcome == CommitOutcome.Committed) Rules.Committed(commit);
    }

    private void Happen(Happening.Timed timed)
    {
        switch (timed)
        {
            case Happening.Texts text:
                Come(text.Id, text.Farmer, text.Text, instance => instance.Turns.Hear(
                    new Inbound(text.Id, Villages.Line, NumberOf(text.Farmer), text.Text), CancellationToken.None));
                break;
            case Happening.Calls call:
                Come($"\u001e{call.Id}", call.Farmer, "(rings)", instance => instance.Turns.Ring(
                    new MissedCall(call.Id, Villages.Line, NumberOf(call.Farmer)), CancellationToken.None));
                break;
            case Happening.Dials dials:
                var at = new Dialled(
                    dials.Session, dials.Step, Villages.Line, NumberOf(dials.Farmer), dials.Entry);
                Dial(at, dials.Farmer);
                break;
            default:
                Fail(timed);
                break;
        }
    }

    /// <summary>A message comes in, and is brought again until it is taken.</summary>
    private void Come(string id, int farmer, string text, Func<Instance, Task<bool>> hand)
    {
        if (Rules.Arrivals.TryGetValue(id, out var arrival)) Met("message", "brought again");
        else arrival = new Arrival(Home.KeyOf(NumberOf(farmer)), new SeenId(Villages.Line, id), text);
        Rules.Arrivals[id] = arrival;
        Note($"f{farmer} {Shown(id)}: \"{text}\"");
        Bring(arrival, hand);
    }

    private void Bring(Arrival arrival, Func<Instance, Task<bool>> hand)
    {
        var again = TimeSpan.FromSeconds(_random.Next(1, 120));
        if (AnyInstance() is not { } instance)
        {
            Timeline.After(again, () => Bring(arrival, hand));
            return;
        }
        var answered = false;
        _tasks.Start(async () =>
        {
            try
            {
                var duplicate = await hand(instance);
                Note(instance, "accepts", arrival.From, Shown(arrival.Seen.Id), duplicate ? "again" : null);
                Rules.Accepted(arrival);
                answered = true;
            }
            catch (Exception fault) when (fault is StoreUnavailableException or TurnFailedException)
            {
                Note(instance, "cannot take", arrival.From, Shown(arrival.Seen.Id));
            }
        });
        Timeline.After(GatewayWaits, () =>
        {
            if (!answered) Timeline.After(again, () => Bring(arrival, hand));
        });
    }

    private void Dial(Dialled step, int farmer)
    {
        Note($"f{farmer} dials {step.Session}/{step.Step}: \"{step.Input}\"");
        if (AnyInstance() is not { } instance) return;
        _tasks.Start(async () =>
        {
            try
            {
                var (screen, _) = await instance.Turns.Dial(step, CancellationToken.None);
                Rules.Shown(step, screen);
            }
            catch (Exception fault) when (fault is StoreUnavailableException or TurnFailedException)
            {
                Note(instance, "shows nothing", Home.KeyOf(step.From));
            }
        });
    }

    /// <summary>The gateway reports on a message it took, some time later.</summary>
    public void Report(Outbound message)
    {
        if (_random.Next(3) > 0) return;
        var reference = message.Id.EndsWith('1') ? $"ref {message.Id}" : message.Id;
        var receipt = new Receipt(
            Villages.Line, reference, DeliveryState.Delivered, NodaTime.Instant.FromDateTimeOffset(Timeline.Wall));
        Timeline.After(TimeSpan.FromSeconds(_random.Next(0, 100)), () => Bring(receipt));
    }

    private void Bring(Receipt receipt)
    {
        if (AnyInstance() is not { } instance) return;
        _tasks.Start(async () =>
        {
            try
            {
                await instance.Turns.Note(receipt, CancellationToken.None);
            }
            catch (StoreUnavailableException)
            {
                Timeline.After(GatewayWaits, () => Bring(receipt));
            }
        });
    }

    private Instance? AnyInstance()
    {
        var first = _random.Next(_instances.Length);
        for (var i = 0; i < _instances.Length; i++)
            if (_instances[(first + i) % _instances.Length] is { IsAlive: true } instance) return instance;
        return null;
    }

    private static string Shown(string id) => id.TrimStart('\u001e');
}
