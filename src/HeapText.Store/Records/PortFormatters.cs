using System.Buffers;
using HeapText.Dialog.Ports;
using MessagePack;
using MessagePack.Formatters;
using NodaTime;

namespace HeapText.Store.Records;

/// <summary>A record of the port as an array; fields past those known are skipped.</summary>
internal abstract class PortFormatter<T>(int fields) : IMessagePackFormatter<T?> where T : class
{
    public void Serialize(ref MessagePackWriter writer, T? value, MessagePackSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(value);
        writer.WriteArrayHeader(fields);
        Write(ref writer, value, options.Resolver.GetFormatterWithVerify<Instant>(), options);
    }

    public T Deserialize(ref MessagePackReader reader, MessagePackSerializerOptions options)
    {
        var present = reader.ReadArrayHeader();
        if (present < fields) throw new MessagePackSerializationException($"{typeof(T).Name} has {present} fields.");
        var value = Read(ref reader, options.Resolver.GetFormatterWithVerify<Instant>(), options);
        for (var i = fields; i < present; i++) reader.Skip();
        return value;
    }

    protected abstract void Write(
        ref MessagePackWriter writer, T value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options);

    protected abstract T Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options);
}

/// <summary>Id, line, text, priority, not-before, expires-at.</summary>
internal sealed class OutboundFormatter() : PortFormatter<Outbound>(6)
{
    protected override void Write(
        ref MessagePackWriter writer, Outbound value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.Id);
        writer.Write(value.Line);
        writer.Write(value.Text);
        writer.Write((int)value.Priority);
        instant.Serialize(ref writer, value.NotBefore, options);
        instant.Serialize(ref writer, value.ExpiresAt, options);
    }

    protected override Outbound Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new(reader.ReadString()!, reader.ReadString()!, reader.ReadString()!, (Priority)reader.ReadInt32(),
            instant.Deserialize(ref reader, options), instant.Deserialize(ref reader, options));
}

/// <summary>Code, name, language, zone, officer.</summary>
internal sealed class GroupFormatter() : PortFormatter<Group>(5)
{
    protected override void Write(
        ref MessagePackWriter writer, Group value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.Code);
        writer.Write(value.Name);
        writer.Write(value.Language);
        writer.Write(value.Zone);
        writer.Write(value.Officer);
    }

    protected override Group Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new(reader.ReadInt32(), reader.ReadString()!, reader.ReadString()!, reader.ReadString()!, reader.ReadString()!);
}

/// <summary>District, word, language, material or nil.</summary>
internal sealed class OwnWordFormatter() : PortFormatter<OwnWord>(4)
{
    protected override void Write(
        ref MessagePackWriter writer, OwnWord value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.District);
        writer.Write(value.Word);
        writer.Write(value.Language);
        writer.Write(value.Material);
    }

    protected override OwnWord Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new(reader.ReadString()!, reader.ReadString()!, reader.ReadString()!, reader.ReadString());
}

/// <summary>At, actor, action, subject.</summary>
internal sealed class AuditEntryFormatter() : PortFormatter<AuditEntry>(4)
{
    protected override void Write(
        ref MessagePackWriter writer, AuditEntry value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        instant.Serialize(ref writer, value.At, options);
        writer.Write(value.Actor);
        writer.Write(value.Action);
        writer.Write(value.Subject);
    }

    protected override AuditEntry Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new(instant.Deserialize(ref reader, options), reader.ReadString()!, reader.ReadString()!, reader.ReadString()!);
}

/// <summary>Key, at, reason, packed message.</summary>
internal sealed class SetAsideFormatter() : PortFormatter<SetAsideEntry>(4)
{
    protected override void Write(
        ref MessagePackWriter writer, SetAsideEntry value, IMessagePackFormatter<Instant> instant,
        MessagePackSerializerOptions options)
    {
        writer.Write(value.Key.Hash);
        instant.Serialize(ref writer, value.At, options);
        writer.Write(value.Reason);
        writer.Write(RecordFormat.Pack(value.Message));
    }

    protected override SetAsideEntry Read(
        ref MessagePackReader reader, IMessagePackFormatter<Instant> instant, MessagePackSerializerOptions options) =>
        new(new FarmerKey(reader.ReadString()!), instant.Deserialize(ref reader, options), reader.ReadString()!,
            RecordFormat.Unpack<Outbound>(reader.ReadBytes()!.Value.ToArray()));
}
