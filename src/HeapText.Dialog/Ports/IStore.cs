using HeapText.Dialog.Engine;
using NodaTime;

namespace HeapText.Dialog.Ports;

/// <summary>Everything the service keeps. Each member is one atomic, durable step in one partition.</summary>
/// <remarks>
/// Every member throws <see cref="StoreUnavailableException"/> when the store is gone, stalled, full or too busy to
/// take the step in time; nothing of the step has then been promised. A step that was late may still have taken
/// effect: the caller tries again, and finds a duplicate or a conflict.
/// </remarks>
public interface IStore : IAsyncDisposable
{
    /// <summary>Where the record of this number lives.</summary>
    FarmerKey KeyOf(Msisdn number);

    /// <summary>Reads what a turn starts from, in one round trip.</summary>
    /// <param name="key">The farmer.</param>
    /// <param name="message">The message that starts the turn; null when a due item does.</param>
    /// <param name="now">Used to ignore seen ids past <see cref="SeenId.Kept"/>.</param>
    /// <param name="cancel">Cancels the wait.</param>
    ValueTask<TurnStart> Begin(FarmerKey key, SeenId? message, Instant now, CancellationToken cancel);

    /// <summary>Takes the whole effect of a turn, or none of it. Completes only when it is durable.</summary>
    ValueTask<CommitOutcome> Commit(Commit commit, CancellationToken cancel);

    /// <summary>Claims farmers whose due instant has passed, earliest first. A claimed farmer is not claimed again
    /// until the lease ends; a commit sets the next due instant and so ends the claim.</summary>
    ValueTask<IReadOnlyList<FarmerKey>> ClaimDue(Instant now, Duration lease, int most, CancellationToken cancel);

    /// <summary>Asks what a line may send now, and charges it. In any second no more segments are granted than the
    /// line's rate, whichever instance asks; a message longer than that takes the seconds that follow too. What is
    /// granted stays charged until it is taken off.</summary>
    /// <param name="budget">The line's.</param>
    /// <param name="loads">The messages, those that go first in front; empty to ask for the room alone.</param>
    /// <param name="now">The present.</param>
    /// <param name="cancel">Cancels the wait.</param>
    ValueTask<Allowance> Allow(
        LineBudget budget, IReadOnlyList<Load> loads, Instant now, CancellationToken cancel);

    /// <summary>Takes off the day's counts what was granted and surely not sent: a gateway that cannot be reached must
    /// not use up a cap. The rate stays charged.</summary>
    /// <param name="budget">The line's.</param>
    /// <param name="segments">How many.</param>
    /// <param name="granted">When they were granted.</param>
    /// <param name="cancel">Cancels the wait.</param>
    ValueTask TakeOff(LineBudget budget, int segments, Instant granted, CancellationToken cancel);

    /// <summary>Takes messages to send on a line: not before their time, by priority up to the one given, then by
    /// not-before; at most one in flight for a farmer. A farmer's messages go by not-before, and as they were committed
    /// where that is the same; one that was tried holds back all others until it is settled for good. A taken message
    /// is not given again until it is settled or its lease ends; then it comes as the next attempt, under the same
    /// id.</summary>
    ValueTask<IReadOnlyList<Sending>> TakeNext(
        string line, Priority through, Instant now, Duration lease, int most, CancellationToken cancel);

    /// <summary>Says how a taken message ended. Settling a message that is no longer there does nothing, and so does
    /// an attempt other than the latest, unless it says that the message was sent.</summary>
    ValueTask Settle(Sending sending, Settlement settlement, CancellationToken cancel);

    /// <summary>Notes how a message, or the part of it that goes by the receipt's reference, ended. The same receipt
    /// again changes nothing; what was delivered stays delivered, whatever comes later.</summary>
    /// <param name="receipt">The receipt.</param>
    /// <param name="now">When it came in.</param>
    /// <param name="cancel">Cancels the wait.</param>
    ValueTask<NoteOutcome> Note(Receipt receipt, Instant now, CancellationToken cancel);

    /// <summary>What was sent to a farmer, newest first: the newest <see cref="SentMessage.KeptOfFarmer"/>, none older
    /// than <see cref="SentMessage.Kept"/>.</summary>
    ValueTask<IReadOnlyList<SentMessage>> Sent(FarmerKey key, CancellationToken cancel);

    /// <summary>The newest messages given up, newest first.</summary>
    ValueTask<IReadOnlyList<SetAsideMessage>> SetAside(int most, CancellationToken cancel);

    /// <summary>Makes ready now what was taken or postponed on a line and would come only later than so long from
    /// now: a clock that was set back since had set its moment.</summary>
    ValueTask GiveBack(string line, Instant now, Duration later, CancellationToken cancel);

    /// <summary>The earliest instant at which something is due or may be sent; null when nothing waits.</summary>
    ValueTask<Instant?> NextWake(CancellationToken cancel);

    /// <summary>Adds a group, or replaces the one with the same code.</summary>
    ValueTask PutGroup(Group group, CancellationToken cancel);

    /// <summary>All groups, by code.</summary>
    ValueTask<IReadOnlyList<Group>> Groups(CancellationToken cancel);

    /// <summary>The farmers of a group, in no order.</summary>
    ValueTask<IReadOnlyList<FarmerKey>> Members(int groupCode, CancellationToken cancel);

    /// <summary>Farmers with an open concern for a person, oldest first, with their number to call back.</summary>
    ValueTask<IReadOnlyList<OpenConcern>> Concerns(int most, CancellationToken cancel);

    /// <summary>Remembers what a district's word means, in place of what it was taken for before.</summary>
    ValueTask ExplainWord(OwnWord word, CancellationToken cancel);

    /// <summary>The own words of all districts, by district and word.</summary>
    ValueTask<IReadOnlyList<OwnWord>> OwnWords(CancellationToken cancel);

    /// <summary>Adds an entry to the audit trail.</summary>
    ValueTask Audit(AuditEntry entry, CancellationToken cancel);

    /// <summary>The newest audit entries, newest first.</summary>
    ValueTask<IReadOnlyList<AuditEntry>> AuditTrail(int most, CancellationToken cancel);

    /// <summary>True when the store holds no farmer and no group.</summary>
    ValueTask<bool> IsEmpty(CancellationToken cancel);
}

/// <summary>The store could not take a step: nothing was promised, and the caller may try again later.</summary>
public sealed class StoreUnavailableException(string message, Exception? inner = null) : Exception(message, inner);

/// <summary>Identifies one inbound message of a farmer.</summary>
/// <param name="Line">The line it came in on.</param>
/// <param name="Id">The gateway's id.</param>
public readonly record struct SeenId(string Line, string Id)
{
    /// <summary>How long a seen id is remembered.</summary>
    public static readonly Duration Kept = Duration.FromDays(7);
}

/// <summary>What a turn starts from.</summary>
/// <param name="Farmer">The record; null when the number was never heard from.</param>
/// <param name="Version">0 when there is no record; rises by one with each commit.</param>
/// <param name="Number">The farmer's number, unsealed; null when there is no record.</param>
/// <param name="Seen">True when the message had its effect before.</param>
/// <param name="Answer">What was shown in answer to the message before; null when it was answered otherwise, or
/// longer ago than <see cref="Screen.Kept"/>.</param>
public sealed record TurnStart(Farmer? Farmer, long Version, Msisdn? Number, bool Seen, Screen? Answer = null);

/// <summary>The whole effect of one turn.</summary>
public sealed record Commit
{
    /// <summary>The farmer.</summary>
    public required FarmerKey Key { get; init; }

    /// <summary>The number, sealed by the store before it is written.</summary>
    public required Msisdn Number { get; init; }

    /// <summary>The version the turn started from; another turn in between makes a conflict.</summary>
    public required long ExpectedVersion { get; init; }

    /// <summary>The message answered; null for a due item.</summary>
    public SeenId? Seen { get; init; }

    /// <summary>What the message is answered with on the phone's screen; null for one that is not.</summary>
    public Screen? Answer { get; init; }

    /// <summary>When the turn was taken.</summary>
    public required Instant At { get; init; }

    /// <summary>The record after the turn; its group and its open concern are indexed from here.</summary>
    public required Farmer Farmer { get; init; }

    /// <summary>When the farmer is due next; null when nothing is.</summary>
    public Instant? NextDue { get; init; }

    /// <summary>Messages to send, in order.</summary>
    public IReadOnlyList<Outbound> Send { get; init; } = [];
}

/// <summary>How a commit ended.</summary>
public enum CommitOutcome
{
    /// <summary>Durable, whole.</summary>
    Committed,

    /// <summary>The message had its effect before; nothing was changed.</summary>
    Duplicate,

    /// <summary>Another turn came first; nothing was changed. Begin again.</summary>
    Conflict,
}

/// <summary>What a receipt changed.</summary>
public enum NoteOutcome
{
    /// <summary>A message sent within <see cref="SentMessage.ReferencesKept"/> shows it.</summary>
    Noted,

    /// <summary>Nothing: the message had ended so before, or is past keeping.</summary>
    Unchanged,

    /// <summary>No message goes by its reference as yet: it is kept for <see cref="SentMessage.EarlyKept"/>, and
    /// <see cref="IStore.Settle"/> applies it when it came before the send was settled.</summary>
    Early,
}

/// <summary>A message taken for sending.</summary>
/// <param name="Key">The farmer.</param>
/// <param name="To">The farmer's number, unsealed.</param>
/// <param name="Message">The message.</param>
/// <param name="Attempt">1 for the first try.</param>
public sealed record Sending(FarmerKey Key, Msisdn To, Outbound Message, int Attempt);

/// <summary>How a send ended.</summary>
public abstract record Settlement
{
    private Settlement() { }

    /// <summary>The gateway took it. Receipts find it by what the gateway calls it.</summary>
    /// <param name="References">What the gateway calls the message, one for each part; empty when it goes by our own
    /// id.</param>
    /// <param name="Over">Name of the line that sent it in place of its own; null for its own.</param>
    public sealed record Sent(IReadOnlyList<string> References, string? Over = null) : Settlement;

    /// <summary>Tried, perhaps taken: to be tried again, under the same id.</summary>
    public sealed record Retry(Instant At) : Settlement;

    /// <summary>Not tried, or surely not taken: to be given again from then on, as the same attempt.</summary>
    public sealed record PutBack(Instant At) : Settlement;

    /// <summary>Never to be sent: expired, refused, or tried too often. Kept for the office with its
    /// reason.</summary>
    public sealed record SetAside(string Reason) : Settlement;
}

/// <summary>A village group.</summary>
/// <param name="Code">The number farmers text to join, 1 to 9999.</param>
/// <param name="Name">The village.</param>
/// <param name="Language">Language for members who wrote nothing that tells theirs.</param>
/// <param name="Zone">Time zone of the village, by its tz database name.</param>
/// <param name="Officer">Name of the trainer, as farmers know it.</param>
public sealed record Group(int Code, string Name, string Language, string Zone, string Officer);

/// <summary>A farmer who waits for a person.</summary>
public sealed record OpenConcern(FarmerKey Key, Msisdn Number, Farmer Farmer, Concern Concern);

/// <summary>One written line of who did what.</summary>
/// <param name="At">When.</param>
/// <param name="Actor">Who: an account, or "service".</param>
/// <param name="Action">What, as a short key.</param>
/// <param name="Subject">On what: a subject id or a group code; never a number.</param>
public sealed record AuditEntry(Instant At, string Actor, string Action, string Subject);
