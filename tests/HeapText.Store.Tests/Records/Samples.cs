using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using HeapText.Store.Records;
using NodaTime;

namespace HeapText.Store.Tests.Records;

/// <summary>One full record of each stored type, with no member left at its default.</summary>
internal static class Samples
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    private static readonly FarmerKey Key = new("00112233445566778899aabbccddeeff");
    private static readonly byte[] Mark = [.. Enumerable.Range(1, 16).Select(n => (byte)n)];

    public static readonly Outbound Message =
        new("s-1", "sms", "Safi, mbolea: é ✓", Priority.Notice, Noon, Noon.PlusTicks(1));

    private static readonly Farmer Farmer = FarmerFormatTests.Later with
    {
        LastAnswers = new LastAnswers(7, 8, 2, Noon),
    };

    /// <summary>The samples, by type.</summary>
    public static readonly IReadOnlyDictionary<Type, object> All = new object[]
    {
        Farmer,
        Message,
        new Group(41, "Upper Ziwani", "sw", "Africa/Dar_es_Salaam", "Trainer"),
        new OwnWord("Ziwani", "zorbix", "en", "goat-manure"),
        new AuditEntry(Noon, "officer", "group.put", "41"),
        new SetAsideEntry(Key, Noon, "expired", Message),
        new SentEntry("-17", "sms", Priority.Notice, 2, 2, 3, DeliveryState.Failed, 60),
        new Screen("1 yes 2 no", Open: true),
        new FarmerCopy
        {
            Key = Key,
            Version = 3,
            Number = [1, 2, 3],
            Record = RecordFormat.Pack(new Farmer { Subject = "s", Line = "sms" }),
            Due = 1,
            Group = 41,
            ConcernSince = 2,
            Seen = [new SeenCopy(Mark, 3)],
            Answers = [new AnswerCopy(Mark, 4, [5])],
            Outbox = [new OutboxCopy("s-1", "sms", Priority.Reminder, 6, 7, [8])],
            Sent = [new SentCopy(9, [10])],
        },
        new ReferenceCopy(Mark, Key, "-17", 1, 11),
        new EarlyReceiptCopy(Mark, DeliveryState.Rejected, 12, 13),
        new SpendingCopy("2026-03-02", "sms", 14),
    }.ToDictionary(sample => sample.GetType());
}
