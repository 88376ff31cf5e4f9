using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Screens;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Turns;
using HeapText.Store;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HeapText.Service.Tests.Turns;

public sealed class TurnRunnerTests : IAsyncLifetime
{
    private readonly TempFolder _folder = new();
    private readonly FakeTimeProvider _time = new(RunningService.Start);
    private FaultyStore _store = null!;

    public async ValueTask InitializeAsync() =>
        _store = new FaultyStore(await StoreFactory.Open(new StoreOptions { DataDirectory = _folder.Path },
            time: _time));

    public async ValueTask DisposeAsync()
    {
        await _store.DisposeAsync();
        _folder.Dispose();
    }

    [Fact]
    public async Task Hear_AnotherTurnComesFirst_DecidesAnewFromTheNewRecord()
    {
        var conversation = new EchoConversation();
        _store.Conflicts = 3;

        var duplicate = await Runner(conversation).Hear(Text("1"), Token);

        Assert.False(duplicate);
        Assert.Equal(4, conversation.Heard);
    }

    [Fact]
    public async Task Hear_OtherTurnsAlwaysComeFirst_GivesUpWithNothingPromised()
    {
        _store.Conflicts = int.MaxValue;

        await Assert.ThrowsAsync<StoreUnavailableException>(() =>
            Runner(new EchoConversation()).Hear(Text("1"), Token));

        Assert.InRange(_store.Commits, 2, 20);
    }

    [Fact]
    public async Task Hear_ManyTextsOfOneFarmerAtOnce_TakesOneTurnAtATime()
    {
        var conversation = new OverlapConversation();
        var runner = Runner(conversation);

        await Task.WhenAll(Enumerable.Range(0, 50).Select(i => Task.Run(() => runner.Hear(Text($"{i}"), Token))));

        Assert.Equal(0, conversation.Overlaps);
        Assert.Equal(50, _store.Commits);
    }

    [Fact]
    public async Task Hear_FirstTextOfANumber_KeepsTheSubjectForTheNext()
    {
        var conversation = new OverlapConversation();
        var runner = Runner(conversation);

        await runner.Hear(Text("1"), Token);
        await runner.Hear(Text("2"), Token);

        Assert.Single(conversation.Subjects.Distinct());
    }

    [Fact]
    public async Task Wake_NoSuchFarmer_DoesNothing()
    {
        await Runner(new EchoConversation()).Wake(new FarmerKey(new string('0', 32)), Token);

        Assert.Equal(0, _store.Commits);
    }

    private TurnRunner Runner(IConversation conversation) =>
        new(_store, conversation, new WorkSignals(), _time, NullLogger<TurnRunner>.Instance);

    private static Inbound Text(string id)
    {
        Assert.True(Msisdn.TryParse(RunningService.Number, out var number));
        return new Inbound(id, "practice", number, "HEAP");
    }

    /// <summary>Counts turns of a farmer that ran into each other.</summary>
    private sealed class OverlapConversation : IConversation
    {
        private int _inside;
        private int _overlaps;

        public int Overlaps => _overlaps;

        public List<string> Subjects { get; } = [];

        public Reaction Hear(Farmer? farmer, string subject, string line, string text, Instant now)
        {
            if (Interlocked.Increment(ref _inside) > 1) Interlocked.Increment(ref _overlaps);
            Thread.SpinWait(20_000);
            Subjects.Add(subject);
            Interlocked.Decrement(ref _inside);
            return new Reaction(farmer ?? new Farmer { Subject = subject, Line = line }, [], null);
        }

        public Reaction Ring(Farmer? farmer, string subject, string line, Instant now) =>
            throw new NotSupportedException();

        public ScreenReaction Dial(Farmer? farmer, string subject, Dialled step, Instant now) =>
            throw new InvalidOperationException("Nobody dials here.");

        public Reaction Wake(Farmer farmer, Instant now) => new(farmer, [], null);

        public Instant? NextDue(Farmer farmer, Instant now) => null;
    }
}
