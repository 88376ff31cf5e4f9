using System.Numerics;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using MessagePack;
using MessagePack.Formatters;
using NodaTime;

namespace HeapText.Store.Records;

/// <summary>A message that a gateway took, as a farmer's log holds it: without text, number or subject.</summary>
/// <param name="Tail">The message's id without the subject, see <see cref="MessageTail"/>.</param>
/// <param name="Line">Name of the line that sent it.</param>
/// <param name="Priority">Its class.</param>
/// <param name="Segments">What its text takes.</param>
/// <param name="At">When the gateway took it. [whole seconds]</param>
/// <param name="Parts">In how many parts the gateway reports on it, 1 to <see cref="MostParts"/>.</param>
/// <param name="Delivered">A bit for each part that the phone has.</param>
/// <param name="State">How it ended; null while nothing is known.</param>
/// <param name="StateAt">When that was. [whole seconds]</param>
internal sealed record SentEntry(
    string Tail, string Line, Priority Priority, int Segments, Instant At, int Parts, int Delivered = 0,
    DeliveryState? State = null, Instant? StateAt = null)
{
    /// <summary>How many parts are told apart; a text has three at most.</summary>
    public const int MostParts = 31;

    public static SentEntry Of(Outbound message, string line, int parts, Instant at) => new(
        MessageTail.Of(message.Id), line, message.Priority, Fit.Measure(message.Text).Segments, WholeSeconds(at),
        parts);

    /// <summary>The entry after a receipt for one part. Delivered is final, for a part and for the whole; the first
    /// failure of a part stands until all parts are delivered after all.</summary>
    public SentEntry Noting(int part, DeliveryState state, Instant at)
    {
        var bit = 1 << part;
        if ((Delivered & bit) != 0) return this;
        if (state != DeliveryState.Delivered)
            return State is null ? this with { State = state, StateAt = WholeSeconds(at) } : this;
        var noted = this with { Delivered = Delivered | bit };
        return BitOperations.PopCount((uint)noted.Delivered) == Parts
            ? noted with { State = DeliveryState.Delivered, StateAt = WholeSeconds(at) }
            : noted;
    }

    public SentMessage Whole(string subject) => new(
        MessageTail.Whole(Tail, subject), Line, Priority, Segments, At, Parts,
        BitOperations.PopCount((uint)Delivered), State, StateAt);

    private static Instant WholeSeconds(Instant moment) => Instant.FromUnixTimeSeconds(moment.ToUnixTimeSeconds());
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

/// <summary>Tail, line, priority, segments, at [s], parts, delivered, state or nil, state at [s after at] or
/// nil.</summary>
internal sealed class SentEntryFormatter() : PortFormatter<SentEntry>(9)
{
    protected override void Write(
        ref MessagePackWriter writer, SentEntry value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.Tail);
        writer.Write(value.Line);
        writer.Write((int)value.Priority);
        writer.Write(value.Segments);
        writer.Write(value.At.ToUnixTimeSeconds());
        writer.Write(value.Parts);
        writer.Write(value.Delivered);
        if (value.State is { } state) writer.Write((int)state);
        else writer.WriteNil();
        if (value.StateAt is { } at) writer.Write(at.ToUnixTimeSeconds() - value.At.ToUnixTimeSeconds());
        else writer.WriteNil();
    }

    protected override SentEntry Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options)
    {
        var entry = new SentEntry(
            reader.ReadString()!, reader.ReadString()!, (Priority)reader.ReadInt32(), reader.ReadInt32(),
            Instant.FromUnixTimeSeconds(reader.ReadInt64()), reader.ReadInt32(), reader.ReadInt32(),
            reader.TryReadNil() ? null : (DeliveryState)reader.ReadInt32());
        Instant? stateAt = reader.TryReadNil() ? null : entry.At + Duration.FromSeconds(reader.ReadInt64());
        return entry with { StateAt = stateAt };
    }
}
