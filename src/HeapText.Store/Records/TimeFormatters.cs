using MessagePack;
using MessagePack.Formatters;
using NodaTime;

namespace HeapText.Store.Records;

/// <summary>Instant: 100-nanosecond ticks since 1970-01-01T00:00Z.</summary>
internal sealed class InstantFormatter : IMessagePackFormatter<Instant>
{
    public void Serialize(ref MessagePackWriter writer, Instant value, MessagePackSerializerOptions options) =>
        writer.Write(value.ToUnixTimeTicks());

    public Instant Deserialize(ref MessagePackReader reader, MessagePackSerializerOptions options) =>
        Instant.FromUnixTimeTicks(reader.ReadInt64());
}

/// <summary>LocalDate, in the ISO calendar: days since 1970-01-01.</summary>
internal sealed class LocalDateFormatter : IMessagePackFormatter<LocalDate>
{
    private static readonly LocalDate Epoch = new(1970, 1, 1);

    public void Serialize(ref MessagePackWriter writer, LocalDate value, MessagePackSerializerOptions options) =>
        writer.Write(Period.DaysBetween(Epoch, value));

    public LocalDate Deserialize(ref MessagePackReader reader, MessagePackSerializerOptions options) =>
        Epoch.PlusDays(reader.ReadInt32());
}

/// <summary>LocalTime: 100-nanosecond ticks since midnight.</summary>
internal sealed class LocalTimeFormatter : IMessagePackFormatter<LocalTime>
{
    public void Serialize(ref MessagePackWriter writer, LocalTime value, MessagePackSerializerOptions options) =>
        writer.Write(value.TickOfDay);

    public LocalTime Deserialize(ref MessagePackReader reader, MessagePackSerializerOptions options) =>
        LocalTime.FromTicksSinceMidnight(reader.ReadInt64());
}
