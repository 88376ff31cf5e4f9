using System.Text;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Tests;

/// <summary>Writes of every kind with one number, and the search for it afterwards.</summary>
internal static class Privacy
{
    public static async Task WriteEverything(IStore store, Msisdn number, CancellationToken cancel)
    {
        var noon = Instant.FromUtc(2026, 3, 2, 12, 0);
        Outbound[] messages =
        [
            new("s-1", "sms", "text of a", Priority.Reply, noon, noon),
            new("s-2", "sms", "text of b", Priority.Reply, noon, noon),
        ];
        await store.Commit(
            new Commit
            {
                Key = store.KeyOf(number),
                Number = number,
                ExpectedVersion = 0,
                At = noon,
                NextDue = noon,
                Seen = new SeenId("sms", $"{number.Value}-17"),
                Send = messages,
                Farmer = new Farmer
                {
                    Subject = "s",
                    Line = "sms",
                    Group = 41,
                    Concern = new() { Reason = ConcernReason.Person, Since = noon },
                },
            },
            cancel);
        await store.ClaimDue(noon, Duration.FromMinutes(1), 1, cancel);
        foreach (var settlement in new Settlement[] { new Settlement.SetAside("expired"), new Settlement.Retry(noon) })
        {
            var sending = Assert.Single(
                await store.TakeNext("sms", Priority.Notice, noon, Duration.FromMinutes(1), 1, cancel));
            Assert.Equal(number, sending.To);
            await store.Settle(sending, settlement, cancel);
        }
        await Report(store, number, cancel);
    }

    private static async Task Report(IStore store, Msisdn number, CancellationToken cancel)
    {
        var noon = Instant.FromUtc(2026, 3, 2, 12, 0);
        var sending = Assert.Single(
                await store.TakeNext("sms", Priority.Notice, noon, Duration.FromMinutes(1), 1, cancel));
        var now = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow());
        var reference = $"{number.Value}-99";
        await store.Note(new Receipt("sms", reference + "-early", DeliveryState.Failed, now), now, cancel);
        await store.Settle(sending, new Settlement.Sent([reference]), cancel);
        await store.Note(new Receipt("sms", reference, DeliveryState.Delivered, now), now, cancel);
        Assert.Equal(DeliveryState.Delivered, Assert.Single(await store.Sent(sending.Key, cancel)).State);
    }

    public static bool Holds(string file, string text) =>
        File.ReadAllBytes(file).AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;
}
