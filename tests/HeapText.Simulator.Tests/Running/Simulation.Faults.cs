using HeapText.Simulator.Tests.World;

namespace HeapText.Simulator.Tests.Running;

/// <summary>What goes wrong at a moment, and when workers look again.</summary>
internal sealed partial class Simulation
{
    private static readonly TimeSpan RestartsAfter = TimeSpan.FromSeconds(7);

    private void Fail(Happening.Timed fault)
    {
        Met("world", fault.GetType().Name);
        Note($"{fault}");
        switch (fault)
        {
            case Happening.ClockSet set:
                Timeline.SetBy += set.By.Ticks;
                Rules.ClockWasSet();
                foreach (var sleeper in _sleepers) sleeper.Until = Math.Min(sleeper.Until, SoonestWake);
                break;
            case Happening.ZoneSet zone:
                var group = Villages.GroupOf(zone.Village, zone.Zone);
                _groups[group.Code] = group;
                break;
            case Happening.Killed killed when killed.Instance < _instances.Length:
                Kill(_instances[killed.Instance], TimeSpan.FromSeconds(killed.DownSeconds));
                break;
            case Happening.Paused paused when paused.Instance < _instances.Length:
                Pause(_instances[paused.Instance], TimeSpan.FromSeconds(paused.ForSeconds));
                break;
            case Happening.StoreGone gone:
                _storeOutages++;
                Timeline.After(TimeSpan.FromSeconds(gone.ForSeconds), () => _storeOutages--);
                break;
        }
    }

    private long SoonestWake => Timeline.Elapsed + Sleeper.Shortest;

    /// <summary>Kills the instance whose call this is; the call never ends.</summary>
    public Task KillFromInside(Instance instance)
    {
        Kill(instance, RestartsAfter);
        return new TaskCompletionSource().Task;
    }

    private void Kill(Instance instance, TimeSpan down)
    {
        if (!instance.IsAlive) return;
        Note(instance, "is killed", null);
        instance.IsAlive = false;
        _steps.RemoveAll(one => one.Instance == instance);
        _sleepers.RemoveAll(one => one.Instance == instance);
        Timeline.After(down, () => StartInstance(instance.Number));
    }

    private void Pause(Instance instance, TimeSpan time)
    {
        instance.PausedUntil = Math.Max(instance.PausedUntil, Timeline.Elapsed + time.Ticks);
        // So that what it holds goes on then.
        Timeline.At(instance.PausedUntil, () => Note(instance, "goes on", null));
    }

    /// <summary>When a worker is to look again: once there is something to do; null for never.</summary>
    private long? NextWake()
    {
        if (_sleepers.Count == 0) return null;
        long? soonest = null;
        var (due, ready) = (ElapsedAt(Home.NextDue()), ElapsedAt(Home.NextReady()));
        foreach (var sleeper in _sleepers)
            if ((sleeper.Sends ? ready : due) is { } work && !(soonest <= WakeOf(sleeper, work)))
                soonest = WakeOf(sleeper, work);
        return soonest;
    }

    private void WakeSleepers(long at)
    {
        var (due, ready) = (ElapsedAt(Home.NextDue()), ElapsedAt(Home.NextReady()));
        foreach (var sleeper in _sleepers.ToList())
            if ((sleeper.Sends ? ready : due) is { } work && WakeOf(sleeper, work) <= at)
            {
                _sleepers.Remove(sleeper);
                sleeper.Wake();
            }
    }

    private static long WakeOf(Sleeper sleeper, long work) =>
        Math.Max(Math.Max(sleeper.Until, sleeper.Instance.PausedUntil), work);

    private long? ElapsedAt(long? millis)
    {
        if (millis is not { } wall || wall > DateTimeOffset.MaxValue.ToUnixTimeMilliseconds()) return null;
        var moment = DateTimeOffset.FromUnixTimeMilliseconds(wall);
        return Math.Max(Timeline.Elapsed, Timeline.Elapsed + (moment - Timeline.Wall).Ticks);
    }
}
