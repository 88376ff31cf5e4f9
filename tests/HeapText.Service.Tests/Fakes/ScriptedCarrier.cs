using HeapText.Dialog.Ports;

namespace HeapText.Service.Tests.Fakes;

/// <summary>Takes every message, unless told what to answer; null means it throws.</summary>
internal sealed class ScriptedCarrier : ICarrier
{
    private readonly Lock _lock = new();

    public string Line => "lake";

    /// <summary>Answered to every message while it is set.</summary>
    public SendOutcome? Always { get; set; }

    /// <summary>No answer ever comes, except by cancellation.</summary>
    public bool Hangs { get; set; }

    public Dictionary<string, Queue<SendOutcome?>> Answers { get; } = [];

    public List<string> Sent { get; } = [];

    public async ValueTask<SendOutcome> Send(Outbound message, Msisdn to, CancellationToken cancel)
    {
        lock (_lock)
        {
            Sent.Add(message.Id);
            if (!Hangs) return Answer(message.Id);
        }

        await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, cancel);
        throw new System.Diagnostics.UnreachableException();
    }

    private SendOutcome Answer(string id)
    {
        if (Always is { } always) return always;
        if (!Answers.TryGetValue(id, out var answers) || answers.Count == 0) return new SendOutcome.Taken();
        return answers.Dequeue() ?? throw new InvalidOperationException("The carrier broke.");
    }
}
