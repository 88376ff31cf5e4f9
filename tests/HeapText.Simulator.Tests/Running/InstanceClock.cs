namespace HeapText.Simulator.Tests.Running;

/// <summary>The clocks as one instance sees them; its timers stand still while it does.</summary>
internal sealed class InstanceClock(Timeline timeline, Instance instance) : TimeProvider
{
    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => timeline.Elapsed;

    public override DateTimeOffset GetUtcNow() => timeline.Wall;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new Timer(timeline, instance, () => callback(state));
        timer.Change(dueTime, period);
        return timer;
    }

    private sealed class Timer(Timeline timeline, Instance instance, Action callback) : ITimer
    {
        private int _setting;

        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            var setting = ++_setting;
            if (dueTime >= TimeSpan.Zero) timeline.After(dueTime, () => Fire(setting));
            return true;
        }

        public void Dispose() => _setting++;

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }

        private void Fire(int setting)
        {
            if (setting != _setting || !instance.IsAlive) return;
            if (instance.PausedUntil > timeline.Elapsed) timeline.At(instance.PausedUntil, () => Fire(setting));
            else callback();
        }
    }
}
