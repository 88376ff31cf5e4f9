using HeapText.Dialog.Ports;
using HeapText.Service.Turns;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Workers;

/// <summary>Sends what waits on one line, and keeps off the line while it is busy or out of reach.</summary>
internal sealed partial class SenderWorker(
    ICarrier carrier, IStore store, WorkSignals signals, Backoff backoff, TimeProvider time,
    ILogger<SenderWorker> logger)
    : BackgroundService
{
    private const int Batch = 64;
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);
    private static readonly Duration Lease = Duration.FromSeconds(60);
    private readonly SemaphoreSlim _pass = new(1, 1);
    private readonly Tries _tries = new();
    private readonly LineRest _rest = new(backoff, time);

    /// <summary>One pass over what may be sent now; returns how many messages were taken.</summary>
    public async Task<int> RunOnce(CancellationToken cancel)
    {
        await _pass.WaitAsync(cancel);
        try
        {
            if (_rest.IsResting) return 0;
            var most = _rest.IsDoubtful ? 1 : Batch;
            var taken = await store.TakeNext(carrier.Line, Now(), Lease, most, cancel);
            // What was taken is finished even while stopping: each send ends within the line's timeout.
            await Task.WhenAll(taken.Select(SendAndSettle));
            return taken.Count;
        }
        finally
        {
            _pass.Release();
        }
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        _pass.Dispose();
        base.Dispose();
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (await RunOnce(stoppingToken) == 0)
                    await signals.WaitToSend(carrier.Line, Pause, time, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
            {
                LogPassFailed(fault, carrier.Line);
                await Task.Delay(Pause, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task SendAndSettle(Sending sending)
    {
        try
        {
            var settlement = sending.Message.ExpiresAt <= Now()
                ? new Settlement.SetAside("expired")
                : Judge(sending, await Send(sending));
            if (settlement is Settlement.SetAside aside)
                LogSetAside(sending.To.Masked, sending.Message.Id, aside.Reason);
            await store.Settle(sending, settlement, CancellationToken.None);
        }
        catch (StoreUnavailableException fault)
        {
            // The lease runs out and the message is taken again, under the same id.
            LogNotSettled(fault, sending.Message.Id);
        }
    }

    private async Task<SendOutcome> Send(Sending sending)
    {
        try
        {
            return await carrier.Send(sending.Message, sending.To, CancellationToken.None);
        }
        catch (Exception fault)
        {
            LogSendFailed(sending.To.Masked, sending.Message.Id, FaultTrace.Of(fault));
            return new SendOutcome.TryAgain(null);
        }
    }

    private Settlement Judge(Sending sending, SendOutcome outcome)
    {
        var id = sending.Message.Id;
        var now = Now();
        switch (outcome)
        {
            case SendOutcome.TryAgain { LineBusy: true } busy:
                return new Settlement.Retry(now + _rest.Busy(busy.After));
            case SendOutcome.TryAgain again:
                if (_tries.FailedForGood(id)) return new Settlement.SetAside($"failed {Tries.Most} times");
                return new Settlement.Retry(now + (again.After ?? backoff.After(_tries.Failed(id))));
            default:
                _tries.Forget(id);
                _rest.Answered();
                return outcome is SendOutcome.Refused refused
                    ? new Settlement.SetAside(refused.Reason)
                    : new Settlement.Sent();
        }
    }

    private Instant Now() => time.GetUtcNow().ToInstant();

    [LoggerMessage(300, LogLevel.Error, "Messages of line {Line} could not be taken; it is tried again in a second.")]
    private partial void LogPassFailed(Exception fault, string line);

    [LoggerMessage(301, LogLevel.Error, "Sending message {Message} to {Farmer} failed and is tried again: {Trace}")]
    private partial void LogSendFailed(string farmer, string message, string trace);

    [LoggerMessage(302, LogLevel.Warning, "Message {Message} to {Farmer} was set aside: {Reason}")]
    private partial void LogSetAside(string farmer, string message, string reason);

    [LoggerMessage(303, LogLevel.Warning,
        "How message {Message} ended could not be stored; it is sent again under its id.")]
    private partial void LogNotSettled(Exception fault, string message);
}
