using System.Numerics;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using MessagePack;
using MessagePack.Formatters;
using NodaTime;

namespace HeapText.Store.Records;

/// <summary>A message that a gateway took, as a farmer's log holds it beside the moment it was sent: without text,
/// number or subject.</summary>
/// <param name="Tail">The message's id without the subject, see <see cref="MessageTail"/>.</param>
/// <param name="Line">Name of the line that sent it.</param>
/// <param name="Priority">Its class.</param>
/// <param name="Segments">What its text takes.</param>
/// <param name="Parts">In how many parts the gateway reports on it, 1 to <see cref="MostParts"/>.</param>
/// <param name="Delivered">A bit for each part that the phone has.</param>
/// <param name="State">How it ended; null while nothing is known.</param>
/// <param name="EndedAfter">How long after it was sent. [s]</param>
internal sealed record SentEntry(
    string Tail, string Line, Priority Priority, int Segments, int Parts, int Delivered = 0,
    DeliveryState? State = null, long EndedAfter = 0)
{
    /// <summary>How many parts are told apart; a text has three at most.</summary>
    public const int MostParts = 31;

    public static SentEntry Of(Outbound message, string line, int parts) => new(
        MessageTail.Of(message.Id), line, message.Priority, Fit.Measure(message.Text).Segments, parts);

    /// <summary>The entry after a receipt for one part. Delivered is final, for a part and for the whole; the first
    /// failure of a part stands until all parts are delivered after all.</summary>
    /// <param name="part">Which, from 0.</param>
    /// <param name="state">How it ended.</param>
    /// <param name="after">How long after the message was sent. [s]</param>
    public SentEntry Noting(int part, DeliveryState state, long after)
    {
        var bit = 1 << part;
        if ((Delivered & bit) != 0) return this;
        if (state != DeliveryState.Delivered)
            return State is null ? this with { State = state, EndedAfter = after } : this;
        var noted = this with { Delivered = Delivered | bit };
        return BitOperations.PopCount((uint)noted.Delivered) == Parts
            ? noted with { State = DeliveryState.Delivered, EndedAfter = after }
            : noted;
    }

    /// <param name="subject">The farmer's.</param>
    /// <param name="at">When it was sent. [s since 1970-01-01T00:00Z]</param>
    public SentMessage Whole(string subject, long at) => new(
        MessageTail.Whole(Tail, subject), Line, Priority, Segments, Instant.FromUnixTimeSeconds(at), Parts,
        BitOperations.PopCount((uint)Delivered), State,
        State is null ? null : Instant.FromUnixTimeSeconds(at + EndedAfter));
}

/// <summary>Shortens a message's id by the subject it begins with, which the farmer's record holds.</summary>
internal static class MessageTail
{
    /// <summary>"-17" of "subject-17"; the whole id where it does not end so.</summary>
    public static string Of(string id)
    {
        var dash = id.LastIndexOf('-');
        return dash > 0 && dash < id.Length - 1 && id.AsSpan(dash + 1).IndexOfAnyExceptInRange('0', '9') < 0
            ? id[dash..]
            : id;
    }

    public static string Whole(string tail, string subject) => tail.StartsWith('-') ? subject + tail : tail;
}

/// <summary>Tail, line, priority, segments, parts, delivered, state or nil, ended after [s].</summary>
internal sealed class SentEntryFormatter() : PortFormatter<SentEntry>(8)
{
    protected override void Write(
        ref MessagePackWriter writer, SentEntry value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.Tail);
        writer.Write(value.Line);
        writer.Write((int)value.Priority);
        writer.Write(value.Segments);
        writer.Write(value.Parts);
        writer.Write(value.Delivered);
        if (value.State is { } state) writer.Write((int)state);
        else writer.WriteNil();
        writer.Write(value.EndedAfter);
    }

    protected override SentEntry Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new(reader.ReadString()!, reader.ReadString()!, (Priority)reader.ReadInt32(), reader.ReadInt32(),
            reader.ReadInt32(), reader.ReadInt32(),
            reader.TryReadNil() ? null : (DeliveryState)reader.ReadInt32(), reader.ReadInt64());
}
