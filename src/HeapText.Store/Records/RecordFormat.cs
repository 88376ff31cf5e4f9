using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using MessagePack;
using MessagePack.Resolvers;

namespace HeapText.Store.Records;

/// <summary>Turns records into bytes and back: one byte of format version, then MessagePack arrays.</summary>
/// <remarks>
/// The place of a field in its array is its order number, so fields may be added at the end: an older reader skips
/// what it does not know, a newer one leaves what is missing at its default. Any other change needs a new format
/// version.
/// </remarks>
internal static class RecordFormat
{
    /// <summary>The version written.</summary>
    public const byte Version = 1;

    private static readonly MessagePackSerializerOptions Options = MessagePackSerializerOptions.Standard.WithResolver(
        CompositeResolver.Create(
            [new InstantFormatter(), new LocalDateFormatter(), new LocalTimeFormatter(),
             new OutboundFormatter(), new GroupFormatter(), new OwnWordFormatter(), new AuditEntryFormatter(),
             new SetAsideFormatter(), new SentEntryFormatter(), new FarmerCopyFormatter(), new ReferenceCopyFormatter(),
             new EarlyReceiptCopyFormatter(), new SpendingCopyFormatter()],
            [StandardResolver.Instance]));

    /// <summary>Packs a <see cref="Farmer"/>, <see cref="Outbound"/>, <see cref="Group"/>, <see cref="OwnWord"/>,
    /// <see cref="AuditEntry"/>, <see cref="Screen"/>, <see cref="SetAsideEntry"/>,
    /// <see cref="SentEntry"/>, <see cref="FarmerCopy"/>, <see cref="ReferenceCopy"/>,
    /// <see cref="EarlyReceiptCopy"/> or <see cref="SpendingCopy"/>.</summary>
    public static byte[] Pack<T>(T record) where T : class
    {
        var buffer = new System.Buffers.ArrayBufferWriter<byte>(512);
        buffer.GetSpan(1)[0] = Version;
        buffer.Advance(1);
        MessagePackSerializer.Serialize(buffer, record, Options);
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Reads what <see cref="Pack"/> wrote.</summary>
    /// <exception cref="InvalidDataException">Written by a newer version of this program, or damaged.</exception>
    public static T Unpack<T>(ReadOnlyMemory<byte> packed) where T : class
    {
        if (packed.IsEmpty || packed.Span[0] != Version)
            throw new InvalidDataException(
                $"A stored {typeof(T).Name} is not of format {Version}: written by a newer version of this program?");
        try
        {
            return MessagePackSerializer.Deserialize<T>(packed[1..], Options);
        }
        catch (MessagePackSerializationException e)
        {
            throw new InvalidDataException($"A stored {typeof(T).Name} cannot be read.", e);
        }
    }
}
