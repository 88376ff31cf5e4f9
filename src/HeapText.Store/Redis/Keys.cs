using System.Globalization;
using HeapText.Dialog.Ports;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>Every key of the server store; no key is spelled elsewhere.</summary>
/// <remarks>
/// Moments are scores in whole milliseconds since 1970-01-01T00:00Z. All that belongs to a farmer carries the hash
/// tag of the partition, so that one script reaches it in one slot of a cluster. Nothing expires unless said.
/// </remarks>
/// <param name="prefix">First part of each key, to share a server with other programs.</param>
internal sealed class Keys(string prefix)
{
    /// <summary>First part of each key, unless a test sets its own.</summary>
    public const string Prefix = "ht";

    private const int MarkLength = 16;
    private readonly string[] _partitions =
        [.. Enumerable.Range(0, FarmerKey.Partitions).Select(n => $"{prefix}:{{p{n:D3}}}:")];

    /// <summary>A farmer as member of a sorted set and end of a key: the 16 bytes of the hash, which take less
    /// memory than its digits.</summary>
    public static byte[] Member(FarmerKey key) => Convert.FromHexString(key.Hash);

    /// <summary>The farmer back.</summary>
    public static FarmerKey FarmerOf(byte[] member) => new(Convert.ToHexStringLower(member));

    /// <summary>String: the layout's number, or <see cref="Restoring"/>; then the fingerprint of the
    /// secret.</summary>
    public RedisKey Layout => $"{prefix}:layout";

    /// <summary>Hash: group code → packed group.</summary>
    public RedisKey Groups => $"{prefix}:groups";

    /// <summary>Hash: district, a line feed and a word → packed own word.</summary>
    public RedisKey OwnWords => $"{prefix}:words";

    /// <summary>The field of a word in <see cref="OwnWords"/>.</summary>
    public static RedisValue FieldOf(OwnWord word) => $"{word.District}\n{word.Word}";

    /// <summary>List of packed entries, newest first.</summary>
    public RedisKey Audit => $"{prefix}:audit";

    /// <summary>Set of the names of all lines that messages were ever queued for.</summary>
    public RedisKey Lines => $"{prefix}:lines";

    /// <summary>Sorted set: charges of a line, each "a number, a space, segments" → its moment [ms]. All that says what
    /// lines may send carries one hash tag, since caps reach over lines. Expires with the line's window.</summary>
    public RedisKey Rate(string line) => $"{prefix}:{{lines}}:rate:{line}";

    /// <summary>Integer: segments a line has sent on a day; those of all lines where the name is empty. Expires after
    /// <see cref="SpendingLifetime"/>.</summary>
    public RedisKey Spending(string line, string day) => $"{prefix}:{{lines}}:{day}:{line}";

    /// <summary>How long a day's count stays after the last charge: longer than a day is anywhere.</summary>
    public static readonly TimeSpan SpendingLifetime = TimeSpan.FromDays(2);

    /// <summary>String, see <see cref="StoredFarmer"/>: version, sealed number, packed record.</summary>
    public RedisKey Farmer(FarmerKey key) => Of(key, "f:");

    /// <summary>Sorted set: 16-byte mark of an inbound message → when it was taken. Marks past their time are
    /// trimmed by the farmer's next commit; the whole expires <see cref="SeenLifetime"/> after the last.</summary>
    public RedisKey Seen(FarmerKey key) => Of(key, "s:");

    /// <summary>Hash: 16-byte mark of a step on the screen → the packed screen it was answered with. The whole expires
    /// <see cref="Dialog.Ports.Screen.Kept"/> after the last.</summary>
    public RedisKey Answers(FarmerKey key) => Of(key, "a:");

    /// <summary>Sorted set: entry (<see cref="OutboxEntry"/>) → not-before; minus the count of attempts once taken,
    /// so that the entry stays first until it is settled. Absent when nothing waits.</summary>
    public RedisKey Outbox(FarmerKey key) => Of(key, "o:");

    /// <summary>Sorted set: packed <see cref="Records.SentEntry"/> → when it was sent [s], the newest
    /// <see cref="SentMessage.KeptOfFarmer"/>. The whole expires <see cref="SentLifetime"/> after the last.</summary>
    public RedisKey Sent(FarmerKey key) => Of(key, "l:");

    /// <summary>Hash: 16-byte mark of a reference → <see cref="ReferenceEntry"/>, of one day. Each day has 8 for each
    /// of 256 hash tags: small ones, which the server packs tightly. Expires <see cref="ReferenceLifetime"/> after the
    /// last.</summary>
    public RedisKey References(byte[] mark, long day) => $"{OfMark(mark)}{day}:{mark[1] >> 5}";

    /// <summary>String: when it came in [ms], state, when that was [ms]: a receipt for a message not settled yet.
    /// Expires after <see cref="SentMessage.EarlyKept"/>.</summary>
    public RedisKey EarlyReceipt(byte[] mark) => ((RedisKey)(OfMark(mark) + "e:")).Append(mark);

    /// <summary>Sorted set: each farmer whose next message is of this line and priority → when it may go: its
    /// not-before, its retry moment, or the end of the lease on it.</summary>
    public RedisKey Waiting(int partition, string line, Priority priority) =>
        $"{_partitions[partition]}w:{(int)priority}:{line}";

    /// <summary>Sorted set: farmer → next due moment, or the end of the claim on it.</summary>
    public RedisKey Due(int partition) => _partitions[partition] + "due";

    /// <summary>Sorted set: farmer → code of the farmer's group.</summary>
    public RedisKey Members(int partition) => _partitions[partition] + "members";

    /// <summary>Sorted set: farmer → since when the farmer waits for a person.</summary>
    public RedisKey Concerns(int partition) => _partitions[partition] + "concerns";

    /// <summary>Integer: how many farmers the partition holds.</summary>
    public RedisKey FarmerCount(int partition) => _partitions[partition] + "count";

    /// <summary>List of packed messages given up, newest first, at most <see cref="SetAsideKept"/>.</summary>
    public RedisKey SetAside(int partition) => _partitions[partition] + "aside";

    /// <summary>Messages given up that a partition keeps.</summary>
    public const int SetAsideKept = 100;

    /// <summary>How long seen marks stay after the last one came: a day past their use, for clocks that
    /// disagree.</summary>
    public static readonly TimeSpan SeenLifetime = SeenId.Kept.ToTimeSpan() + TimeSpan.FromDays(1);

    /// <summary>How long a log stays after the last message sent: a day past its use, for clocks that
    /// disagree.</summary>
    public static readonly TimeSpan SentLifetime = SentMessage.Kept.ToTimeSpan() + TimeSpan.FromDays(1);

    /// <summary>How long the references of a day stay after the last.</summary>
    public static readonly TimeSpan ReferenceLifetime = SentMessage.ReferencesKept.ToTimeSpan() + TimeSpan.FromDays(1);

    /// <summary>Stands in place of the layout's number while a backup is being put back.</summary>
    public const string Restoring = "restoring";

    /// <summary>Pattern: every key.</summary>
    public RedisValue All => $"{prefix}:*";

    /// <summary>Pattern: every <see cref="Farmer"/>.</summary>
    public RedisValue AllFarmers => $"{prefix}:{{p[0-9][0-9][0-9]}}:f:*";

    /// <summary>Pattern: every key of <see cref="References"/>.</summary>
    public RedisValue AllReferences => $"{prefix}:{{r[0-9][0-9][0-9]}}:[0-9]*";

    /// <summary>Pattern: every <see cref="EarlyReceipt"/>.</summary>
    public RedisValue AllEarlyReceipts => $"{prefix}:{{r[0-9][0-9][0-9]}}:e:*";

    /// <summary>Pattern: every key of <see cref="Spending"/>.</summary>
    public RedisValue AllSpending => $"{prefix}:{{lines}}:[0-9]*";

    /// <summary>Day and line of a key of <see cref="Spending"/>.</summary>
    public (string Day, string Line) SpendingOf(RedisKey spending)
    {
        var parts = ((string)spending!)[(prefix.Length + 1)..].Split(':', 3);
        return (parts[1], parts[2]);
    }

    /// <summary>The farmer of a key <see cref="Farmer"/>.</summary>
    public FarmerKey FarmerOf(RedisKey farmer) => FarmerOf(((byte[])farmer!)[(_partitions[0].Length + 2)..]);

    /// <summary>The day of a key of <see cref="References"/>.</summary>
    public static long DayOf(RedisKey references) =>
        long.Parse(((string)references!).Split(':')[^2], CultureInfo.InvariantCulture);

    /// <summary>The mark of a key <see cref="EarlyReceipt"/>.</summary>
    public static byte[] MarkOf(RedisKey earlyReceipt) => ((byte[])earlyReceipt!)[^MarkLength..];

    /// <summary>The three sets of farmers waiting on a line, by priority.</summary>
    public IEnumerable<RedisKey> WaitingAll(int partition, string line)
    {
        for (var priority = Priority.Reply; priority <= Priority.Notice; priority++)
            yield return Waiting(partition, line, priority);
    }

    private string OfMark(byte[] mark) => $"{prefix}:{{r{mark[0]:D3}}}:";

    private RedisKey Of(FarmerKey key, string kind) =>
        ((RedisKey)(_partitions[key.Partition] + kind)).Append(Member(key));
}
