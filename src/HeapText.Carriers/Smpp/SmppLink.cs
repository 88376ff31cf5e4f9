using System.Net.Sockets;
using System.Security.Authentication;
using HeapText.Carriers.Smpp.Wire;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace HeapText.Carriers.Smpp;

/// <summary>Keeps a line connected to its centre: connects, binds, and begins again when the link is lost.</summary>
internal sealed partial class SmppLink(
    SmppLineOptions options, SmppInbox inbox, ReconnectWait wait, TimeProvider time, ILogger<SmppLink> logger)
    : BackgroundService
{
    private volatile SmppSession? _current;
    private Task _working = Task.CompletedTask;

    /// <summary>The connection that is bound; null when there is none.</summary>
    public SmppSession? Current => _current;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        _working = inbox.Run();
        var failures = 0;
        while (!stoppingToken.IsCancellationRequested)
        {
            var began = time.GetTimestamp();
            await Connect(stoppingToken);
            if (stoppingToken.IsCancellationRequested) break;
            // A link that held is no failure of the connecting.
            if (time.GetElapsedTime(began) > options.ReconnectLongest) failures = 0;
            try
            {
                await Task.Delay(wait.After(++failures), time, stoppingToken);
            }
            catch (OperationCanceledException)
            {
                break;
            }
        }

        inbox.Complete();
        await _working;
    }

    private async Task Connect(CancellationToken stop)
    {
        using var deadline = new CancellationTokenSource(options.ResponseTimeout, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(deadline.Token, stop);
        try
        {
            var stream = await CentreConnection.Open(options, null, either.Token);
            await using var session = new SmppSession(stream, SessionLimits.Of(options), inbox.TryAdd, time, logger);
            if (await session.Bind(options, stop) is not CommandStatus.Ok and var refused)
            {
                LogRefused(options.Name, refused?.ToString() ?? "no answer");
                return;
            }

            await Hold(session, stop);
        }
        catch (Exception fault) when (
            fault is SocketException or IOException or AuthenticationException or OperationCanceledException)
        {
            if (!stop.IsCancellationRequested) LogUnreachable(options.Name, fault.GetType().Name);
        }
    }

    private async Task Hold(SmppSession session, CancellationToken stop)
    {
        LogBound(options.Name);
        _current = session;
        try
        {
            await session.Ended.WaitAsync(stop);
            LogLost(options.Name);
        }
        catch (OperationCanceledException)
        {
            await TakeLeave(session);
        }
        finally
        {
            _current = null;
        }
    }

    // What was taken in is answered first, or it would come again.
    private async Task TakeLeave(SmppSession session)
    {
        inbox.Complete();
        try
        {
            await _working.WaitAsync(options.ResponseTimeout, time);
        }
        catch (TimeoutException)
        {
            // It comes again at the next start.
        }

        await session.Unbind(CancellationToken.None);
    }

    [LoggerMessage(430, LogLevel.Information, "Line {Line} is bound to its message centre")]
    private partial void LogBound(string line);

    [LoggerMessage(431, LogLevel.Warning, "Line {Line} lost its message centre and connects again")]
    private partial void LogLost(string line);

    [LoggerMessage(432, LogLevel.Error, "The message centre of line {Line} does not let it bind: {Why}")]
    private partial void LogRefused(string line, string why);

    [LoggerMessage(433, LogLevel.Warning, "The message centre of line {Line} cannot be reached: {Kind}")]
    private partial void LogUnreachable(string line, string kind);
}
