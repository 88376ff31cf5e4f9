using HeapText.Carriers.Smpp;
using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Carriers.Tests.Smpp;

/// <summary>A line to a scripted centre. Its clock stands still unless a test moves it.</summary>
internal sealed class TestLine : IAsyncDisposable
{
    private readonly SmppLine _line;
    private readonly SmppLink _link;

    public TestLine(ScriptedCentre centre, Func<SmppLineOptions, SmppLineOptions>? set = null)
    {
        var options = new SmppLineOptions
        {
            Name = "lake",
            From = "3344",
            Region = "UG",
            Host = "127.0.0.1",
            Port = centre.Port,
            Tls = false,
            SystemId = "heap",
            Password = "secret",
        };
        options = set?.Invoke(options) ?? options;
        var inbox = new SmppInbox(options, Receiver, Time, NullLogger<SmppInbox>.Instance);
        _link = new SmppLink(
            options, inbox, new ReconnectWait(options.ReconnectFirst, options.ReconnectLongest, new Random(1)), Time,
            NullLogger<SmppLink>.Instance);
        _line = new SmppLine(
            options, _link, new Throttle(new Random(1), Time), Time, NullLogger<SmppLine>.Instance);
    }

    public FakeTimeProvider Time { get; } = new(new DateTimeOffset(2026, 3, 2, 6, 0, 0, TimeSpan.Zero));

    public FakeReceiver Receiver { get; } = new();

    public SmppSession? Session => _link.Current;

    public static Msisdn Phone { get; } = Msisdn.TryParse("+256700000001", out var phone) ? phone : default;

    /// <summary>A line that is bound, with the centre's end of the connection.</summary>
    public static async Task<(TestLine Line, CentreLink Centre)> Bound(
        ScriptedCentre centre, Func<SmppLineOptions, SmppLineOptions>? set = null)
    {
        var line = new TestLine(centre, set);
        return (line, await line.Bind(centre));
    }

    public int Segments(string text) => _line.Segments(text);

    public Task Start() => _link.StartAsync(CancellationToken.None);

    public Task Stop() => _link.StopAsync(CancellationToken.None);

    /// <summary>Starts it and waits until messages may be sent.</summary>
    public async Task<CentreLink> Bind(ScriptedCentre centre)
    {
        await Start();
        return await Bound(centre.AcceptBound());
    }

    /// <summary>Waits until the line connects again and messages may be sent.</summary>
    public async Task<CentreLink> BindAgain(ScriptedCentre centre)
    {
        var before = Session;
        var link = await Passing(centre.AcceptBound());
        await Until(() => Session is { IsOpen: true } session && session != before);
        return link;
    }

    public Task<SendOutcome> Send(string id, string text = "Turn the heap today.") =>
        _line.Send(
            new Outbound(id, "lake", text, Priority.Reply, Now(), Now() + Duration.FromHours(2)), Phone,
            CancellationToken.None).AsTask();

    /// <summary>A farmer's message as a centre delivers it.</summary>
    public static MessageBody Text(string text, string from = "256700000001") => new()
    {
        Source = new Address(1, 1, from),
        Destination = new Address(3, 0, "3344"),
        ShortMessage = TextCoding.Encode(text, Alphabet.Gsm7),
    };

    /// <summary>Lets the clock run until something has come.</summary>
    public async Task<T> Passing<T>(Task<T> task)
    {
        await Until(() =>
        {
            if (!task.IsCompleted) Time.Advance(TimeSpan.FromMilliseconds(100));
            return task.IsCompleted;
        });
        return await task;
    }

    /// <summary>Waits, with the clock standing still.</summary>
    public static async Task Until(Func<bool> isSo)
    {
        var began = TimeProvider.System.GetTimestamp();
        while (!isSo())
        {
            Assert.True(TimeProvider.System.GetElapsedTime(began) < CentreLink.Patience, "it never came");
            await Task.Delay(TimeSpan.FromMilliseconds(2), TimeProvider.System);
        }
    }

    public async ValueTask DisposeAsync()
    {
        var stopping = Task.Run(async () =>
        {
            await Stop();
            return true;
        });
        await Passing(stopping);
        _link.Dispose();
    }

    private async Task<CentreLink> Bound(Task<CentreLink> accepting)
    {
        var link = await accepting;
        await Until(() => Session is not null);
        return link;
    }

    private Instant Now() => Time.GetUtcNow().ToInstant();
}
