using System.Threading.Channels;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using HeapText.Service.Hooks;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HeapText.Service.Practice;

/// <summary>Stands in for a gateway: keeps each message by its id, and takes a repeat for the message it already
/// has.</summary>
internal sealed partial class PracticeGateway(
    PracticeJournal journal, PracticeClock clock, ILogger<PracticeGateway> logger) : ICarrier
{
    /// <inheritdoc/>
    public string Line => InboundLine.Practice;

    /// <inheritdoc/>
    public async ValueTask<SendOutcome> Send(Outbound message, Msisdn to, CancellationToken cancel)
    {
        try
        {
            await Keep("out", to, message.Id, message.Text, clock.Now);
            return new SendOutcome.Taken();
        }
        catch (SqliteException fault)
        {
            LogNotKept(fault);
            return new SendOutcome.TryAgain(null, LineBusy: true);
        }
    }

    /// <summary>Keeps a text that came in, for the thread on the phone's screen; nothing waits for it.</summary>
    public void Heard(Inbound message, Instant at) => _ = KeepHeard(message, at);

    private async Task KeepHeard(Inbound message, Instant at)
    {
        try
        {
            await Keep("in", message.From, message.Id, message.Text, at);
        }
        catch (Exception fault) when (fault is SqliteException or ChannelClosedException)
        {
            LogNotKept(fault);
        }
    }

    private Task Keep(string way, Msisdn number, string id, string text, Instant at)
    {
        var fitting = Fit.Measure(text);
        return journal.Keep(new PracticeMessage(
            0, way, number.Value, id, text, fitting.EncodingName, fitting.Segments, at));
    }

    [LoggerMessage(400, LogLevel.Error, "The practice journal could not keep a message.")]
    private partial void LogNotKept(Exception fault);
}
