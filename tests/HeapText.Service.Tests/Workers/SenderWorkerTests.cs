using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Turns;
using HeapText.Service.Workers;
using HeapText.Store;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Service.Tests.Workers;

public sealed class SenderWorkerTests : IAsyncLifetime
{
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);
    private readonly TempFolder _folder = new();
    private readonly FakeTimeProvider _time = new(Start);
    private readonly SteppedClock _wall;
    private readonly ScriptedCarrier _carrier = new();
    private FaultyStore _store = null!;
    private int _phones;
    private SenderWorker _sender = null!;

    public SenderWorkerTests() => _wall = new SteppedClock(_time);

    public async ValueTask InitializeAsync()
    {
        _store = new FaultyStore(
            await StoreFactory.Open(new StoreOptions { DataDirectory = _folder.Path }, time: _wall));
        _sender = new SenderWorker(
            new OutboundRoute(_carrier, null), null, _store, new WorkSignals(), new Backoff(new Random(1)), _wall,
            NullLogger<SenderWorker>.Instance);
    }

    public async ValueTask DisposeAsync()
    {
        _sender.Dispose();
        await _store.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task RunOnce_GatewayTakesIt_SendsOnce()
    {
        await Put("a");

        await RunFor(TimeSpan.FromHours(2));

        Assert.Equal(["a-1"], _carrier.Sent);
    }

    [Fact]
    public async Task RunOnce_SeveralMessagesOfAFarmer_KeepsTheirOrder()
    {
        await Put("a", count: 5);

        await RunFor(TimeSpan.FromMinutes(1));

        Assert.Equal(["a-1", "a-2", "a-3", "a-4", "a-5"], _carrier.Sent);
    }

    [Fact]
    public async Task RunOnce_FirstMessageFails_LaterOnesOfTheFarmerWaitForIt()
    {
        await Put("a", count: 2);
        _carrier.Answers["a-1"] = Then(new SendOutcome.TryAgain(null), new SendOutcome.TryAgain(null));

        await RunFor(TimeSpan.FromMinutes(5));

        Assert.Equal(["a-1", "a-1", "a-1", "a-2"], _carrier.Sent);
    }

    [Fact]
    public async Task RunOnce_MessageTheGatewayRefuses_IsNotSentAgain()
    {
        await Put("a");
        _carrier.Answers["a-1"] = Then(new SendOutcome.Refused("No such number."));

        await RunFor(TimeSpan.FromHours(2));

        Assert.Equal(["a-1"], _carrier.Sent);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task RunOnce_MessageThatAlwaysFailsAmongOthers_IsTriedFiveTimesAndDelaysNobodyElse(bool lineBusy)
    {
        await Put("bad");
        _carrier.Answers["bad-1"] = Then([.. Enumerable.Repeat(new SendOutcome.TryAgain(null, lineBusy), 50)]);

        for (var i = 0; i < 60; i++)
        {
            await Put($"good{i}");
            await RunFor(TimeSpan.FromSeconds(10));
            Assert.Contains($"good{i}-1", _carrier.Sent);
        }

        Assert.Equal(5, _carrier.Sent.Count(id => id == "bad-1"));
        Assert.Null(await _store.NextWake(Token));
    }

    [Fact]
    public async Task RunOnce_CarrierThrowsAtOneMessage_CountsAsAFailedTry()
    {
        await Put("bad");
        _carrier.Answers["bad-1"] = Then([.. Enumerable.Repeat<SendOutcome?>(null, 50)]);

        for (var i = 0; i < 60; i++)
        {
            await Put($"good{i}");
            await RunFor(TimeSpan.FromSeconds(10));
        }

        Assert.Equal(5, _carrier.Sent.Count(id => id == "bad-1"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task RunOnce_GatewayFailsEverythingForAnHour_LosesNothing(bool lineBusy)
    {
        for (var i = 0; i < 20; i++) await Put($"f{i}");
        await RunFor(TimeSpan.Zero);
        for (var i = 0; i < 20; i++) await Put($"g{i}");
        _carrier.Always = new SendOutcome.TryAgain(null, lineBusy);
        await RunFor(TimeSpan.FromHours(1));
        _carrier.Always = null;
        _carrier.Sent.Clear();

        await RunFor(TimeSpan.FromMinutes(20));

        Assert.Equal(Enumerable.Range(0, 20).Select(i => $"g{i}-1").Order(), _carrier.Sent.Order());
    }

    [Fact]
    public async Task RunOnce_LineThrottlesOneMessageAgainAndAgain_NeverGivesItUp()
    {
        await Put("late");
        _carrier.Answers["late-1"] = Then([.. Enumerable.Repeat(new SendOutcome.Busy(null), 8)]);

        for (var i = 0; i < 12; i++)
        {
            await Put($"good{i}");
            await RunFor(TimeSpan.FromMinutes(1));
        }

        Assert.Equal(9, _carrier.Sent.Count(id => id == "late-1"));
    }

    [Fact]
    public async Task RunOnce_GatewayNeverAnswers_LetsGoBeforeTheLeaseEnds()
    {
        await Put("a");
        _carrier.Hangs = true;

        var pass = _sender.RunOnce(Token);
        while (_carrier.Sent.Count == 0) await Task.Yield();
        _time.Advance(TimeSpan.FromSeconds(29));
        await pass.WaitAsync(TimeSpan.FromSeconds(10), Token);

        Assert.Equal(["a-1"], _carrier.Sent);
    }

    [Fact]
    public async Task RunOnce_ProcessStoodStillSinceItTookAMessage_LeavesItToWhoHasTheLeaseNow()
    {
        await Put("a");
        _store.OnTaken = () => _time.Advance(TimeSpan.FromSeconds(60));

        await _sender.RunOnce(Token);
        Assert.Empty(_carrier.Sent);

        _store.OnTaken = static () => { };
        await _sender.RunOnce(Token);
        Assert.Equal(["a-1"], _carrier.Sent);
    }

    [Fact]
    public async Task RunOnce_StoppedWhileItTakes_SendsWhatItTook()
    {
        await Put("a");
        using var stop = new CancellationTokenSource();
        _store.OnTaken = stop.Cancel;

        await _sender.RunOnce(stop.Token);

        Assert.Equal(["a-1"], _carrier.Sent);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(24)]
    public async Task RunOnce_ClockSetBack_GoesOnWithinAMinute(int hours)
    {
        await Put("a");
        _carrier.Answers["a-1"] = Then(new SendOutcome.TryAgain(null));
        await RunFor(TimeSpan.Zero);

        _wall.SetBy = -TimeSpan.FromHours(hours);
        await RunFor(TimeSpan.FromMinutes(1));

        Assert.Equal(["a-1", "a-1"], _carrier.Sent);
    }

    [Fact]
    public async Task RunOnce_LineAsksForAPause_SendsNothingUntilItIsOver()
    {
        await Put("a");
        _carrier.Answers["a-1"] = Then(new SendOutcome.Busy(Duration.FromMinutes(10)));
        await RunFor(TimeSpan.FromSeconds(1));
        await Put("b");

        await RunFor(TimeSpan.FromMinutes(9.9));
        Assert.Equal(["a-1"], _carrier.Sent);

        await RunFor(TimeSpan.FromMinutes(1));
        Assert.Equal(["a-1", "a-1", "b-1"], _carrier.Sent.Order());
    }

    [Fact]
    public async Task RunOnce_LineOutOfReachForADay_LosesNothingAndTriesWithOneMessage()
    {
        for (var i = 0; i < 20; i++) await Put($"f{i}");
        _carrier.Always = new SendOutcome.TryAgain(null, LineBusy: true);
        await RunFor(TimeSpan.FromHours(24));
        var tries = _carrier.Sent.Count;
        _carrier.Always = null;
        _carrier.Sent.Clear();

        await RunFor(TimeSpan.FromMinutes(20));

        Assert.InRange(tries, 20, 20 + 200);
        Assert.Equal(20, _carrier.Sent.Distinct().Count());
        Assert.Equal(20, _carrier.Sent.Count);
    }

    [Fact]
    public async Task RunOnce_ExpiredMessage_IsSetAsideUnsent()
    {
        await Put("a");
        _time.Advance(TimeSpan.FromDays(3));

        await RunFor(TimeSpan.FromMinutes(1));

        Assert.Empty(_carrier.Sent);
        Assert.Null(await _store.NextWake(Token));
    }

    private static Queue<SendOutcome?> Then(params SendOutcome?[] answers) => new(answers);

    private async Task RunFor(TimeSpan time)
    {
        var end = _time.GetUtcNow() + time;
        do
        {
            while (await _sender.RunOnce(Token) > 0) { }
            _time.Advance(TimeSpan.FromSeconds(1));
        }
        while (_time.GetUtcNow() <= end);
    }

    private async Task Put(string subject, int count = 1)
    {
        Assert.True(Msisdn.TryParse($"+999100{++_phones:D5}", out var number));
        var now = _wall.GetUtcNow().ToInstant();
        var messages = Enumerable.Range(1, count).Select(i => new Outbound(
            $"{subject}-{i}", _carrier.Line, "Karibu", Priority.Reply, now, now + Duration.FromDays(2)));
        var commit = new Commit
        {
            Key = _store.KeyOf(number),
            Number = number,
            ExpectedVersion = 0,
            At = now,
            Farmer = new Farmer { Subject = subject, Line = "practice" },
            Send = [.. messages],
        };
        Assert.Equal(CommitOutcome.Committed, await _store.Commit(commit, Token));
    }
}
