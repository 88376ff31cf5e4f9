using System.Collections.Concurrent;
using System.Text.Json;
using HeapText.Carriers.Smpp;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Carriers.Tests.Smpp;

/// <summary>A line against a message centre over the npm package "smpp", in real time.</summary>
public sealed class RealPeerTests(ITestOutputHelper output)
{
    private const int Farmers = 400, MessagesEach = 25, All = Farmers * MessagesEach;
    private const int Window = 50, AtOnce = 64;
    private static readonly string[] Troubles = ["throttled", "dropped", "receiptsAgain"];
    private static readonly Duration LeastPause = Duration.FromMilliseconds(20);
    private readonly ConcurrentDictionary<string, string> _references = new(StringComparer.Ordinal);

    [Fact]
    public async Task Send_TenThousandToAnUnreliableCentre_NoneIsLostAndEachFarmersKeepTheirOrder()
    {
        await using var peer = await PeerProcess.Start(
            """{"throttleEvery": 1009, "dropEvery": 1499, "answerInGroupsOf": 40, "receiptTwiceEvery": 10, """
            + "\"receiptFirstEvery\": 11}");
        var receiver = new FakeReceiver();
        var (line, link) = Line(peer.Port, receiver);
        using var _ = link;
        await link.StartAsync(CancellationToken.None);

        using var senders = new SemaphoreSlim(AtOnce);
        await Task.WhenAll(Enumerable.Range(0, Farmers).Select(async farmer =>
        {
            await senders.WaitAsync(CancellationToken.None);
            try
            {
                await SendAll(line, farmer);
            }
            finally
            {
                senders.Release();
            }
        }));
        await TestLine.Until(() => _references.Values.All(
            receiver.Noted.Select(one => one.Reference).ToHashSet().Contains));
        await link.StopAsync(CancellationToken.None);
        var (taken, counts) = await peer.Report();

        await Tell(counts);
        var ids = taken.ConvertAll(one => one.GetProperty("text").GetString()!);
        Assert.Equal(All, ids.Distinct().Count());
        foreach (var farmer in ids.GroupBy(id => id.Split('-')[0]))
        {
            var numbers = farmer.Select(id => int.Parse(id.Split('-')[1], null)).ToList();
            Assert.Equal(numbers.Order(), numbers);
        }

        Assert.All(
            taken.GroupBy(one => one.GetProperty("text").GetString()!),
            same => Assert.Single(same.Select(one => one.GetProperty("mark").GetInt32()).Distinct()));
        Assert.InRange(counts.GetProperty("mostWaiting").GetInt32(), 2, Window);
        Assert.All(Troubles, name => Assert.True(counts.GetProperty(name).GetInt32() > 0, name));
    }

    // As the outbox does: one message of a farmer at a time, again under the same id until it is taken.
    private async Task SendAll(SmppLine line, int farmer)
    {
        Assert.True(Msisdn.TryParse($"+2567{farmer:00000000}", out var to));
        for (var number = 0; number < MessagesEach; number++)
        {
            var id = $"f{farmer}-{number}";
            while (true)
            {
                var now = TimeProvider.System.GetUtcNow().ToInstant();
                var outcome = await line.Send(
                    new Outbound(id, line.Line, id, Priority.Reply, now, now + Duration.FromHours(1)), to,
                    CancellationToken.None);
                if (outcome is SendOutcome.Taken { References: [var reference] })
                {
                    _references[id] = reference;
                    break;
                }

                var asked = outcome switch
                {
                    SendOutcome.Busy busy => busy.After,
                    SendOutcome.TryAgain again => again.After,
                    _ => throw new InvalidOperationException($"{id} was refused"),
                };
                var pause = Duration.Min(Duration.FromMilliseconds(250), Duration.Max(LeastPause, asked ?? LeastPause));
                await Task.Delay(pause.ToTimeSpan(), TimeProvider.System);
            }
        }
    }

    private async Task Tell(JsonElement counts)
    {
        int Count(string name) => counts.GetProperty(name).GetInt32();
        var told = $"{All} messages through a window of {Window}: {Count("taken")} taken by the centre, "
            + $"{Count("taken") - All} of them repeats under the same id; {Count("throttled")} throttled, "
            + $"{Count("dropped")} links cut, {Count("receipts")} receipts ({Count("receiptsAgain")} of them twice), "
            + $"0 lost: each was taken at least once and has its receipt.";
        output.WriteLine(told);
        var folder = Directory.CreateDirectory(Path.Combine(PeerProcess.Root(), "artifacts", "lines"));
        await File.WriteAllTextAsync(Path.Combine(folder.FullName, "smpp-peer.txt"), told + "\n");
    }

    private static (SmppLine Line, SmppLink Link) Line(int port, FakeReceiver receiver)
    {
        var time = TimeProvider.System;
        var options = new SmppLineOptions
        {
            Name = "lake",
            From = "3344",
            Host = "127.0.0.1",
            Port = port,
            Tls = false,
            SystemId = "heap",
            Password = "secret",
            Window = Window,
            ReconnectFirst = TimeSpan.FromMilliseconds(100),
            ReconnectLongest = TimeSpan.FromMilliseconds(500),
        };
        var random = new Random(7);
        var inbox = new SmppInbox(options, receiver, time, NullLogger<SmppInbox>.Instance);
        var wait = new ReconnectWait(options.ReconnectFirst, options.ReconnectLongest, random);
        var link = new SmppLink(options, inbox, wait, time, NullLogger<SmppLink>.Instance);
        return (new SmppLine(options, link, new Throttle(random, time), time, NullLogger<SmppLine>.Instance), link);
    }
}
