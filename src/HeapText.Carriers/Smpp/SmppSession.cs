using System.IO.Pipelines;
using System.Threading.Channels;
using HeapText.Carriers.Smpp.Wire;
using Microsoft.Extensions.Logging;

namespace HeapText.Carriers.Smpp;

/// <summary>One connection to a message centre, from its opening to its end.</summary>
/// <remarks>
/// A reader and a writer run side by side. The reader never waits for whoever handles what came in: it hands it on, or
/// answers that it comes too fast. It waits only for room among our own answers, which a peer that reads them makes;
/// one that does not is found out by enquire_link.
/// </remarks>
internal sealed partial class SmppSession : IAsyncDisposable
{
    // Above all that can wait at once: a window of 1000, and the answers to what the inbox holds.
    private const int MostToWrite = 2048;

    private readonly Stream _stream;
    private readonly SessionLimits _limits;
    private readonly Func<Delivery, bool> _take;
    private readonly ILogger _logger;
    private readonly RequestWindow _window;
    private readonly CancellationTokenSource _end = new();
    private readonly TaskCompletionSource _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task _running;
    private long _received;
    private volatile bool _isLeaving;
    private volatile string? _leave;

    private readonly Channel<Pdu> _toWrite = Channel.CreateBounded<Pdu>(
        new BoundedChannelOptions(MostToWrite) { SingleReader = true });

    /// <summary>Starts reading and writing.</summary>
    /// <param name="stream">The open connection; closed with the session.</param>
    /// <param name="limits">What bounds it.</param>
    /// <param name="take">Takes a delivery without waiting; false when it has no room.</param>
    /// <param name="time">The clock.</param>
    /// <param name="logger">Gets faults, never contents.</param>
    public SmppSession(
        Stream stream, SessionLimits limits, Func<Delivery, bool> take, TimeProvider time, ILogger logger)
    {
        (_stream, _limits, _take, Time, _logger) = (stream, limits, take, time, logger);
        _window = new RequestWindow(limits.Window, time);
        _running = Task.WhenAll(Task.Run(ReadLoop), Task.Run(WriteLoop));
    }

    public TimeProvider Time { get; }

    /// <summary>What outlives it.</summary>
    public LinkLife Life { get; } = new();

    /// <summary>Completes when the connection has ended.</summary>
    public Task Ended => _ended.Task;

    /// <summary>True while messages may be sent: neither side is leaving.</summary>
    public bool IsOpen => !_isLeaving && !_end.IsCancellationRequested;

    /// <summary>Says who we are, and from then on asks now and then whether the peer is there.</summary>
    /// <returns>What the peer says; null when it said nothing in time.</returns>
    public async Task<CommandStatus?> Bind(SmppLineOptions line, CancellationToken cancel)
    {
        var answer = await Ask(
            sequence => new Pdu.Bind(sequence, BindMode.Transceiver, line.SystemId, line.Password)
            {
                SystemType = line.SystemType,
            },
            _limits.ResponseTimeout, cancel);
        if (answer?.Status == CommandStatus.Ok) _ = Task.Run(KeepAlive, CancellationToken.None);
        return answer?.Status;
    }

    /// <summary>Puts a message on its way, as soon as the window has room.</summary>
    /// <returns>The request; null when the connection ended first, so that nothing was sent.</returns>
    public async ValueTask<PendingRequest?> Submit(MessageBody message, CancellationToken cancel)
    {
        if (!IsOpen) return null;
        if (await _window.Enter(() => Life.Written, cancel) is not { } request) return null;
        // From here on the outcome is unknown until the answer, though the connection may end before it is written.
        await Write(new Pdu.SubmitSm(request.Sequence, message));
        return request;
    }

    /// <summary>Waits for the answer to a message.</summary>
    /// <returns>The answer; null when its outcome is unknown.</returns>
    /// <exception cref="OperationCanceledException">The caller no longer waits; a late answer still ends the
    /// request.</exception>
    public async ValueTask<Pdu?> Wait(PendingRequest request, CancellationToken cancel)
    {
        var answer = await _window.Wait(request, _limits.ResponseTimeout, cancel);
        if (answer is null && _window.IsOwedTooMuch) Close("it owes a whole window of answers");
        return answer;
    }

    /// <summary>Hands one PDU to the writer; false when the connection has ended.</summary>
    public async ValueTask<bool> Write(Pdu pdu)
    {
        try
        {
            await _toWrite.Writer.WriteAsync(pdu, CancellationToken.None);
            return true;
        }
        catch (ChannelClosedException)
        {
            return false;
        }
    }

    /// <summary>Takes leave: no more is sent, what is under way is waited for, then unbind.</summary>
    public async Task Unbind(CancellationToken cancel)
    {
        _isLeaving = true;
        await WaitForAnswers(cancel);
        await Ask(sequence => new Pdu.Unbind(sequence), _limits.ResponseTimeout, cancel);
        Close("we took leave");
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        Close("it is no longer wanted");
        await _running;
        _window.Dispose();
        _end.Dispose();
    }

    private async Task ReadLoop()
    {
        var input = PipeReader.Create(_stream, new StreamPipeReaderOptions(leaveOpen: true));
        try
        {
            while (true)
            {
                var result = await input.ReadAsync(_end.Token);
                var buffer = result.Buffer;
                while (PduReading.Next(ref buffer) is { } reading) await Take(reading);
                input.AdvanceTo(buffer.Start, buffer.End);
                if (result.IsCompleted) break;
            }

            Close("the peer closed it");
        }
        catch (PduFaultException fault)
        {
            await Write(new Pdu.GenericNack(0, fault.Status));
            await Finish("what came in is no SMPP");
        }
        catch (Exception fault) when (fault is IOException or OperationCanceledException or ObjectDisposedException)
        {
            Close("it broke");
        }
        catch (Exception fault)
        {
            // A fault of our own must not leave a connection that nobody reads.
            LogFault(fault.GetType().Name, fault.StackTrace);
            Close("reading failed");
        }
        finally
        {
            await input.CompleteAsync();
        }
    }

    private async Task WriteLoop()
    {
        var output = PipeWriter.Create(_stream, new StreamPipeWriterOptions(leaveOpen: true));
        try
        {
            while (await _toWrite.Reader.WaitToReadAsync(_end.Token))
            {
                while (output.UnflushedBytes < PduReader.UsualMostBytes && _toWrite.Reader.TryRead(out var pdu))
                    WriteOne(pdu, output);
                await output.FlushAsync(_end.Token);
            }
        }
        catch (Exception fault) when (fault is IOException or OperationCanceledException or ObjectDisposedException)
        {
            await output.CompleteAsync(fault);
        }

        Close(_leave ?? "it broke");
    }

    private void WriteOne(Pdu pdu, PipeWriter output)
    {
        try
        {
            PduWriter.Write(pdu, output);
        }
        catch (ArgumentException fault)
        {
            LogUnwritable(fault, pdu.CommandId);
            _window.Answer(pdu.Sequence, new Pdu.GenericNack(pdu.Sequence, CommandStatus.InvalidParameterLength));
        }
    }

    private async Task KeepAlive()
    {
        using var timer = new PeriodicTimer(_limits.EnquireEvery, Time);
        try
        {
            while (await timer.WaitForNextTickAsync(_end.Token))
            {
                var before = Interlocked.Read(ref _received);
                var answer = await Ask(s => new Pdu.EnquireLink(s), _limits.EnquireTimeout, _end.Token);
                if (answer is null && Interlocked.Read(ref _received) == before) Close("it gave no sign of life");
            }
        }
        catch (Exception fault) when (fault is OperationCanceledException or ObjectDisposedException)
        {
            // The connection ended.
        }
    }

    private async Task<Pdu?> Ask(Func<uint, Pdu> request, TimeSpan timeout, CancellationToken cancel)
    {
        if (_window.EnterBeside(Life.Written) is not { } pending) return null;
        // Not awaited: a peer that reads nothing leaves no room, and is found out by the time that runs.
        _ = Write(request(pending.Sequence)).AsTask();
        return await _window.Wait(pending, timeout, cancel);
    }

    private async Task WaitForAnswers(CancellationToken cancel)
    {
        var until = Time.GetTimestamp();
        while (!_window.IsIdle && !_end.IsCancellationRequested
            && Time.GetElapsedTime(until) < _limits.ResponseTimeout)
            await Task.Delay(TimeSpan.FromMilliseconds(20), Time, cancel);
    }

    /// <summary>Closes once all that waits is written.</summary>
    private async Task Finish(string why)
    {
        (_isLeaving, _leave) = (true, why);
        _toWrite.Writer.TryComplete();
        try
        {
            await _ended.Task.WaitAsync(_limits.EnquireTimeout, Time);
        }
        catch (TimeoutException)
        {
            // The peer does not even read.
        }

        Close(why);
    }

    private void Close(string why)
    {
        lock (_end)
        {
            if (_end.IsCancellationRequested) return;
            _isLeaving = true;
            _end.Cancel();
        }

        LogEnded(why);
        _toWrite.Writer.TryComplete();
        _stream.Dispose();
        Life.End();
        _window.Close();
        _ended.TrySetResult();
    }

    [LoggerMessage(401, LogLevel.Information, "A connection to a message centre ended: {Why}")]
    private partial void LogEnded(string why);

    [LoggerMessage(404, LogLevel.Error, "Reading from a message centre failed: {Kind} {Trace}")]
    private partial void LogFault(string kind, string? trace);

    [LoggerMessage(402, LogLevel.Error, "A {Command} could not be written")]
    private partial void LogUnwritable(Exception fault, CommandId command);
}
