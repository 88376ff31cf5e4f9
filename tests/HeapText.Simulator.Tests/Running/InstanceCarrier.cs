using HeapText.Dialog.Ports;
using HeapText.Simulator.Tests.World;
using NodaTime;

namespace HeapText.Simulator.Tests.Running;

/// <summary>The gateway as one instance reaches it: any send may go wrong, before the gateway takes it or
/// after.</summary>
internal sealed class InstanceCarrier(Instance instance, Simulation simulation) : ICarrier
{
    private static readonly TimeSpan SlowAnswer = TimeSpan.FromSeconds(12);

    public string Line => Villages.Line;

    public async ValueTask<SendOutcome> Send(Outbound message, Msisdn to, CancellationToken cancel)
    {
        var fault = simulation.FaultOfSend();
        simulation.Rules.Sending(message, to, instance.TakenAt.GetValueOrDefault(message.Id));
        await simulation.Step(instance);
        switch (fault)
        {
            case null or SendFault.KilledAfter or SendFault.TakenWithoutAnswer or SendFault.TakenThenLinkLost:
                Take(message, to);
                break;
            case SendFault.KilledBefore:
                await simulation.KillFromInside(instance);
                break;
            case SendFault.Slow:
                await simulation.Wait(instance, SlowAnswer, cancel);
                Take(message, to);
                break;
        }
        simulation.Note(instance, "send", null, simulation.Rules.NameOf(message), fault);
        if (fault == SendFault.KilledAfter) await simulation.KillFromInside(instance);
        if (fault is SendFault.TakenWithoutAnswer or SendFault.LostWithoutAnswer)
            await simulation.Wait(instance, Timeout.InfiniteTimeSpan, cancel);
        await simulation.Step(instance);
        return Answer(fault, message);
    }

    private void Take(Outbound message, Msisdn to)
    {
        simulation.Rules.Arrived(message, to);
        simulation.Report(message);
    }

    private static SendOutcome Answer(SendFault? fault, Outbound message) => fault switch
    {
        SendFault.TakenThenLinkLost or SendFault.LinkLost => new SendOutcome.TryAgain(null, LineBusy: true),
        SendFault.Busy => new SendOutcome.Busy(null),
        SendFault.BusyForMinutes => new SendOutcome.Busy(Duration.FromMinutes(5)),
        SendFault.Refused => new SendOutcome.Refused("refused"),
        SendFault.Throws => throw new InvalidOperationException("The carrier broke."),
        _ => new SendOutcome.Taken(message.Id.EndsWith('1') ? [$"ref {message.Id}"] : null),
    };
}
