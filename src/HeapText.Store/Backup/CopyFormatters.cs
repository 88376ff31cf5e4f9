using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using MessagePack;
using MessagePack.Formatters;
using NodaTime;

namespace HeapText.Store.Backup;

/// <summary>Key, version, number, record, due, group and concern or nil, then arrays: seen (mark, at), answers (mark,
/// at, screen), outbox (id, line, priority, not-before, tries, message), sent (at, entry).</summary>
internal sealed class FarmerCopyFormatter() : PortFormatter<FarmerCopy>(11)
{
    protected override void Write(
        ref MessagePackWriter writer, FarmerCopy value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.Key.Hash);
        writer.Write(value.Version);
        writer.Write(value.Number);
        writer.Write(value.Record);
        Write(ref writer, value.Due);
        Write(ref writer, value.Group);
        Write(ref writer, value.ConcernSince);
        WriteSeen(ref writer, value);
        WriteOutbox(ref writer, value.Outbox);
        writer.WriteArrayHeader(value.Sent.Count);
        foreach (var sent in value.Sent)
        {
            writer.WriteArrayHeader(2);
            writer.Write(sent.At);
            writer.Write(sent.Entry);
        }
    }

    protected override FarmerCopy Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new()
        {
            Key = new FarmerKey(reader.ReadString()!),
            Version = reader.ReadInt64(),
            Number = Bytes(ref reader),
            Record = Bytes(ref reader),
            Due = Moment(ref reader),
            Group = (int?)Moment(ref reader),
            ConcernSince = Moment(ref reader),
            Seen = Each(ref reader, static (ref MessagePackReader one) =>
                new SeenCopy(Bytes(ref one), one.ReadInt64())),
            Answers = Each(ref reader, static (ref MessagePackReader one) =>
                new AnswerCopy(Bytes(ref one), one.ReadInt64(), Bytes(ref one))),
            Outbox = Each(ref reader, static (ref MessagePackReader one) => new OutboxCopy(
                one.ReadString()!, one.ReadString()!, (Priority)one.ReadInt32(), one.ReadInt64(), one.ReadInt32(),
                Bytes(ref one))),
            Sent = Each(ref reader, static (ref MessagePackReader one) =>
                new SentCopy(one.ReadInt64(), Bytes(ref one))),
        };

    private delegate T ReadOne<T>(ref MessagePackReader reader);

    private static T[] Each<T>(ref MessagePackReader reader, ReadOne<T> read)
    {
        var all = new T[reader.ReadArrayHeader()];
        for (var i = 0; i < all.Length; i++)
        {
            reader.ReadArrayHeader();
            all[i] = read(ref reader);
        }
        return all;
    }

    internal static byte[] Bytes(ref MessagePackReader reader) =>
        reader.ReadBytes() is { } bytes ? System.Buffers.BuffersExtensions.ToArray(bytes) : [];

    private static long? Moment(ref MessagePackReader reader) => reader.TryReadNil() ? null : reader.ReadInt64();

    private static void Write(ref MessagePackWriter writer, long? moment)
    {
        if (moment is { } known) writer.Write(known);
        else writer.WriteNil();
    }

    private static void WriteSeen(ref MessagePackWriter writer, FarmerCopy value)
    {
        writer.WriteArrayHeader(value.Seen.Count);
        foreach (var seen in value.Seen)
        {
            writer.WriteArrayHeader(2);
            writer.Write(seen.Mark);
            writer.Write(seen.At);
        }
        writer.WriteArrayHeader(value.Answers.Count);
        foreach (var answer in value.Answers)
        {
            writer.WriteArrayHeader(3);
            writer.Write(answer.Mark);
            writer.Write(answer.At);
            writer.Write(answer.Screen);
        }
    }

    private static void WriteOutbox(ref MessagePackWriter writer, IReadOnlyList<OutboxCopy> outbox)
    {
        writer.WriteArrayHeader(outbox.Count);
        foreach (var message in outbox)
        {
            writer.WriteArrayHeader(6);
            writer.Write(message.Id);
            writer.Write(message.Line);
            writer.Write((int)message.Priority);
            writer.Write(message.NotBefore);
            writer.Write(message.Tries);
            writer.Write(message.Message);
        }
    }
}

/// <summary>Mark, key, tail, part, at.</summary>
internal sealed class ReferenceCopyFormatter() : PortFormatter<ReferenceCopy>(5)
{
    protected override void Write(
        ref MessagePackWriter writer, ReferenceCopy value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.Mark);
        writer.Write(value.Key.Hash);
        writer.Write(value.Tail);
        writer.Write(value.Part);
        writer.Write(value.At);
    }

    protected override ReferenceCopy Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new(FarmerCopyFormatter.Bytes(ref reader), new FarmerKey(reader.ReadString()!), reader.ReadString()!,
            reader.ReadInt32(), reader.ReadInt64());
}

/// <summary>Mark, state, state at, at.</summary>
internal sealed class EarlyReceiptCopyFormatter() : PortFormatter<EarlyReceiptCopy>(4)
{
    protected override void Write(
        ref MessagePackWriter writer, EarlyReceiptCopy value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.Mark);
        writer.Write((int)value.State);
        writer.Write(value.StateAt);
        writer.Write(value.At);
    }

    protected override EarlyReceiptCopy Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new(FarmerCopyFormatter.Bytes(ref reader), (DeliveryState)reader.ReadInt32(), reader.ReadInt64(),
            reader.ReadInt64());
}

/// <summary>Day, line, segments.</summary>
internal sealed class SpendingCopyFormatter() : PortFormatter<SpendingCopy>(3)
{
    protected override void Write(
        ref MessagePackWriter writer, SpendingCopy value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.Day);
        writer.Write(value.Line);
        writer.Write(value.Segments);
    }

    protected override SpendingCopy Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new(reader.ReadString()!, reader.ReadString()!, reader.ReadInt64());
}
