using HeapText.Carriers.Smpp.Wire;
using Microsoft.Extensions.Logging;

namespace HeapText.Carriers.Smpp;

/// <summary>What is done with each PDU that comes in.</summary>
internal sealed partial class SmppSession
{
    // Neither has an answer: SMPP 3.4, sections 4.1.7 and 4.12.1, from memory.
    private const uint Outbind = 0x0B, AlertNotification = 0x102;

    private ValueTask Take(PduReading reading)
    {
        Interlocked.Increment(ref _received);
        return reading switch
        {
            { Fault: { } fault } => TakeFault(fault),
            { Pdu: { IsResponse: true } answer } => TakeAnswer(answer),
            { Pdu: { } request } => TakeRequest(request),
            _ => ValueTask.CompletedTask,
        };
    }

    private ValueTask TakeFault(PduFaultException fault)
    {
        LogUnreadable(fault.CommandId, fault.Message);
        if (fault.IsResponse)
        {
            _window.Answer(fault.Sequence, null);
            return ValueTask.CompletedTask;
        }

        return Reply(fault.CommandId == CommandId.DeliverSm
            ? new Pdu.DeliverSmResp(fault.Sequence, fault.Status)
            : new Pdu.GenericNack(fault.Sequence, fault.Status));
    }

    private ValueTask TakeAnswer(Pdu answer)
    {
        // What refuses an unknown request of ours has another kind, yet its number.
        if (_window.Answer(answer.Sequence, answer) is { } request) Life.Prove(request.AnswersBefore);
        return ValueTask.CompletedTask;
    }

    private ValueTask TakeRequest(Pdu request) => request switch
    {
        Pdu.DeliverSm deliver => _take(new Delivery(this, deliver))
            ? ValueTask.CompletedTask
            : Reply(new Pdu.DeliverSmResp(deliver.Sequence, CommandStatus.ReceiverTemporaryError)),
        Pdu.EnquireLink => Reply(new Pdu.EnquireLinkResp(request.Sequence, CommandStatus.Ok)),
        Pdu.Unbind => TakeUnbind(request.Sequence),
        Pdu.Unknown { Number: Outbind or AlertNotification } => ValueTask.CompletedTask,
        Pdu.Bind or Pdu.SubmitSm => Reply(new Pdu.GenericNack(request.Sequence, CommandStatus.InvalidBindStatus)),
        _ => Reply(new Pdu.GenericNack(request.Sequence, CommandStatus.InvalidCommandId)),
    };

    private async ValueTask TakeUnbind(uint sequence)
    {
        _isLeaving = true;
        await Reply(new Pdu.UnbindResp(sequence, CommandStatus.Ok));
        // Not awaited: answers to what is under way may still come in.
        _ = Task.Run(async () =>
        {
            await WaitForAnswers(CancellationToken.None);
            await Finish("the peer took leave");
        });
    }

    private async ValueTask Reply(Pdu answer) => await Write(answer);

    [LoggerMessage(403, LogLevel.Warning, "A {Command} could not be read: {Fault}")]
    private partial void LogUnreadable(CommandId command, string fault);
}
