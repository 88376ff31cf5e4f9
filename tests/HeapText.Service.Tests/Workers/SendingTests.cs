using System.Collections.Concurrent;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Turns;
using HeapText.Service.Workers;
using HeapText.Store;
using HeapText.Store.Tests.Redis;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Tests.Workers;

/// <summary>Senders over one store, on a clock of the test's.</summary>
public abstract class SendingTests : IAsyncLifetime
{
    protected const string Brief = "Turn the heap today.";
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);
    private readonly TempFolder _folder = new();
    private readonly ConcurrentDictionary<FarmerKey, long> _versions = [];
    private readonly List<SenderWorker> _senders = [];
    private readonly LoggerFactory _loggers;
    private RedisServer? _server;

    protected SendingTests() => _loggers = new LoggerFactory([Logs]);

    internal IStore Store { get; private set; } = null!;

    internal LogRecords Logs { get; } = new();

    protected FakeTimeProvider Time { get; } = new(Start);

    protected Instant Now => Time.GetUtcNow().ToInstant();

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async ValueTask DisposeAsync()
    {
        foreach (var sender in _senders) sender.Dispose();
        if (Store is not null) await Store.DisposeAsync();
        if (_server is not null) await _server.DisposeAsync();
        _loggers.Dispose();
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }

    protected async Task OpenStore(bool redis = false)
    {
        var options = new StoreOptions { DataDirectory = _folder.Path, Secret = Convert.ToBase64String(new byte[32]) };
        if (redis)
        {
            _server = await RedisServer.StartDurable();
            options.Connection = _server.Connection;
        }
        Store = await StoreFactory.Open(options, time: Time);
    }

    private protected SenderWorker Sender(OutboundRoute own, OutboundRoute? backup = null, IStore? store = null)
    {
        var sender = new SenderWorker(
            own, backup, store ?? Store, new WorkSignals(), new Backoff(new Random(_senders.Count)), Time,
            _loggers.CreateLogger<SenderWorker>());
        _senders.Add(sender);
        return sender;
    }

    private protected static LineBudget Budget(string line, double rate = 10, long? day = null, long? all = null) =>
        new(line, rate, day, all, DateTimeZone.Utc);

    /// <summary>Puts a message of its own to a farmer into the outbox.</summary>
    protected async Task Put(
        int farmer, string line, Priority priority = Priority.Reply, string text = Brief, Duration? expires = null)
    {
        Assert.True(Msisdn.TryParse($"+999{farmer:D9}", out var number));
        var key = Store.KeyOf(number);
        var version = _versions.AddOrUpdate(key, 1, static (_, before) => before + 1);
        var message = new Outbound(
            $"s{farmer}-{version}", line, text, priority, Now, Now + (expires ?? Duration.FromDays(2)));
        var commit = new Commit
        {
            Key = key,
            Number = number,
            ExpectedVersion = version - 1,
            At = Now,
            Farmer = new Farmer { Subject = $"s{farmer}", Line = line },
            Send = [message],
        };
        Assert.Equal(CommitOutcome.Committed, await Store.Commit(commit, Token));
    }

    /// <summary>Lets the senders work for so long, in steps of the clock.</summary>
    protected async Task RunFor(TimeSpan time, TimeSpan step)
    {
        for (var end = Time.GetUtcNow() + time; Time.GetUtcNow() < end; Time.Advance(step))
            await Task.WhenAll(_senders.Select(async sender =>
            {
                while (await sender.RunOnce(Token) > 0) { }
            }));
    }
}

/// <summary>Takes every message unless told otherwise, and writes down when.</summary>
internal sealed class NotingCarrier(string line, TimeProvider time) : ICarrier
{
    public string Line => line;

    /// <summary>Answers in place of taking the message.</summary>
    public Func<Outbound, SendOutcome> Answer { get; set; } = static _ => new SendOutcome.Taken();

    public ConcurrentQueue<(Instant At, string Id, int Segments)> Sent { get; } = new();

    public ValueTask<SendOutcome> Send(Outbound message, Msisdn to, CancellationToken cancel)
    {
        Sent.Enqueue((time.GetUtcNow().ToInstant(), message.Id, Fit.Measure(message.Text).Segments));
        return ValueTask.FromResult(Answer(message));
    }
}
