using HeapText.Dialog.Ports;
using HeapText.Service.Tests.Fakes;
using HeapText.Service.Workers;
using NodaTime;

namespace HeapText.Service.Tests.Workers;

public sealed class SenderRateTests : SendingTests
{
    private const string Lake = "lake";
    private static readonly string Lengthy = new('m', 300);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task TwoSendersOfALine_ForAMinute_NoSecondHoldsMoreThanItsRate(bool redis)
    {
        await OpenStore(redis);
        var carrier = new NotingCarrier(Lake, Time);
        Sender(new OutboundRoute(carrier, Budget(Lake)));
        Sender(new OutboundRoute(carrier, Budget(Lake)));
        for (var i = 0; i < 500; i++) await Put(i, Lake, Priority.Reminder, i % 3 == 0 ? Lengthy : Brief);

        await RunFor(TimeSpan.FromMinutes(1), TimeSpan.FromMilliseconds(130));

        var sent = carrier.Sent.ToList();
        Assert.All(sent, one => Assert.InRange(
            sent.Where(other => other.At >= one.At && other.At < one.At + Duration.FromSeconds(1))
                .Sum(other => other.Segments),
            1, 10));
        Assert.Equal(sent.Count, sent.Select(one => one.Id).Distinct().Count());
        Assert.InRange(sent.Sum(one => one.Segments), 450, 600);
    }

    [Fact]
    public async Task Reply_BehindAHundredThousandReminders_GoesWithinASecond()
    {
        const int due = 100_000;
        await OpenStore();
        var carrier = new NotingCarrier(Lake, Time);
        Sender(new OutboundRoute(carrier, Budget(Lake)));
        await Task.WhenAll(Enumerable.Range(0, 8).Select(part => Task.Run(
            async () =>
            {
                foreach (var some in Enumerable.Range(1, due).Where(n => n % 8 == part).Chunk(512))
                    await Task.WhenAll(some.Select(n => Put(n, Lake, Priority.Reminder)));
            },
            Token)));

        for (var i = 0; i < 20; i++)
        {
            await RunFor(TimeSpan.FromSeconds(1.3), TimeSpan.FromMilliseconds(100));
            await Put(due + 1 + i, Lake);
            var put = Now;
            await RunFor(TimeSpan.FromSeconds(1.1), TimeSpan.FromMilliseconds(100));
            var reply = Assert.Single(carrier.Sent, one => one.Id == $"s{due + 1 + i}-1");
            Assert.InRange((reply.At - put).TotalSeconds, 0, 1);
        }
    }

    [Fact]
    public async Task DayCapMet_MessagesWaitForTheNextDayAndItIsWarnedOfOnce()
    {
        await OpenStore();
        var carrier = new NotingCarrier(Lake, Time);
        Sender(new OutboundRoute(carrier, Budget(Lake, day: 20)));
        for (var i = 0; i < 30; i++) await Put(i, Lake, Priority.Reminder);

        await RunFor(TimeSpan.FromHours(1), TimeSpan.FromSeconds(5));
        for (var i = 30; i < 40; i++) await Put(i, Lake, expires: Duration.FromHours(4));
        await RunFor(TimeSpan.FromHours(1), TimeSpan.FromSeconds(5));
        Assert.Equal(18 + 2, carrier.Sent.Count);

        await RunFor(TimeSpan.FromHours(17), TimeSpan.FromMinutes(1));
        Assert.Equal(20 + 12, carrier.Sent.Count);
        Assert.All(await Store.SetAside(100, Token), aside => Assert.Equal("expired", aside.Reason));
        Assert.Equal(8, (await Store.SetAside(100, Token)).Count);
        Assert.Single(Logs.Lines, line => line.Contains("nothing goes", StringComparison.Ordinal));
        Assert.Single(Logs.Lines, line => line.Contains("only Reply", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task GatewayOutOfReachForHours_UsesUpNothingOfTheDaysCap(bool redis)
    {
        await OpenStore(redis);
        var carrier = new NotingCarrier(Lake, Time)
        {
            Answer = static _ => new SendOutcome.Busy(Duration.FromSeconds(1)),
        };
        Sender(new OutboundRoute(carrier, Budget(Lake, day: 20, all: 20)));
        for (var i = 0; i < 20; i++) await Put(i, Lake);
        await RunFor(TimeSpan.FromMinutes(2), TimeSpan.FromSeconds(1));
        Assert.InRange(carrier.Sent.Count, 100, 140);
        carrier.Sent.Clear();

        carrier.Answer = static _ => new SendOutcome.Taken();
        await RunFor(TimeSpan.FromMinutes(1), TimeSpan.FromSeconds(1));

        Assert.Equal(20, carrier.Sent.Count);
    }

    [Fact]
    public async Task CapWithOneSegmentLeft_LongerMessage_IsLookedAtOnceAMinute()
    {
        await OpenStore();
        var looks = 0;
        var faulty = new FaultyStore(Store) { OnTaken = () => looks++ };
        Sender(new OutboundRoute(new NotingCarrier(Lake, Time), Budget(Lake, day: 1)), store: faulty);
        await Put(1, Lake, text: Lengthy);

        await RunFor(TimeSpan.FromMinutes(5), TimeSpan.FromSeconds(1));

        Assert.InRange(looks, 5, 6);
    }

    [Fact]
    public async Task CapOverAllLines_TwoLines_HoldsForTheirSum()
    {
        await OpenStore();
        var (lake, hill) = (new NotingCarrier(Lake, Time), new NotingCarrier("hill", Time));
        Sender(new OutboundRoute(lake, Budget(Lake, all: 30)));
        Sender(new OutboundRoute(hill, Budget("hill", all: 30)));
        for (var i = 0; i < 60; i++) await Put(i, i % 2 == 0 ? Lake : "hill");

        await RunFor(TimeSpan.FromMinutes(5), TimeSpan.FromSeconds(1));

        Assert.Equal(30, lake.Sent.Count + hill.Sent.Count);
    }
}
