namespace HeapText.Simulator.Tests.Running;

/// <summary>Runs all tasks of a simulation on one thread, in the order in which they became ready.</summary>
internal sealed class StepScheduler : TaskScheduler
{
    private readonly Queue<Task> _ready = new();

    public override int MaximumConcurrencyLevel => 1;

    /// <summary>Starts asynchronous work that stays on this scheduler.</summary>
    public void Start(Func<Task> work) =>
        Task.Factory.StartNew(work, CancellationToken.None, TaskCreationOptions.None, this);

    /// <summary>Runs until all work waits for something outside.</summary>
    public void RunReady()
    {
        while (_ready.TryDequeue(out var task)) TryExecuteTask(task);
    }

    protected override void QueueTask(Task task) => _ready.Enqueue(task);

    protected override bool TryExecuteTaskInline(Task task, bool taskWasPreviouslyQueued) => false;

    protected override IEnumerable<Task> GetScheduledTasks() => _ready;
}
