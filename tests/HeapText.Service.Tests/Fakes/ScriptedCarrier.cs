using HeapText.Dialog.Ports;

namespace HeapText.Service.Tests.Fakes;

/// <summary>Takes every message, unless told what to answer; null means it throws.</summary>
internal sealed class ScriptedCarrier : ICarrier
{
    private readonly Lock _lock = new();

    public string Line => "lake";

    public bool IsDown { get; set; }

    public Dictionary<string, Queue<SendOutcome?>> Answers { get; } = [];

    public List<string> Sent { get; } = [];

    public ValueTask<SendOutcome> Send(Outbound message, Msisdn to, CancellationToken cancel)
    {
        lock (_lock)
        {
            Sent.Add(message.Id);
            if (IsDown) return new(new SendOutcome.TryAgain(null, LineBusy: true));
            if (!Answers.TryGetValue(message.Id, out var answers) || answers.Count == 0)
                return new(new SendOutcome.Taken());
            return new(answers.Dequeue() ?? throw new InvalidOperationException("The carrier broke."));
        }
    }
}
