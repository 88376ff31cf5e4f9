using System.Security.Cryptography;
using System.Text;
using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Smpp;

/// <summary>What tells the contents of one delivery from another's.</summary>
/// <param name="Octets">All of it.</param>
internal readonly record struct Fingerprint(ReadOnlyMemory<byte> Octets)
{
    private const int Length = 16;

    /// <summary>Of one message: everything in it, any reference or time stamp of the centre's or the phone's
    /// included.</summary>
    public static Fingerprint Of(MessageBody body)
    {
        using var all = new MemoryStream();
        using var writer = new BinaryWriter(all, Encoding.UTF8);
        writer.Write(body.ServiceType);
        Write(writer, body.Source);
        Write(writer, body.Destination);
        writer.Write(body.EsmClass);
        writer.Write(body.ProtocolId);
        writer.Write(body.DataCoding);
        writer.Write(body.ScheduleDeliveryTime);
        writer.Write(body.ShortMessage.Length);
        writer.Write(body.ShortMessage.Span);
        foreach (var tlv in body.Tlvs.All)
        {
            writer.Write((ushort)tlv.Tag);
            writer.Write(tlv.Value.Length);
            writer.Write(tlv.Value.Span);
        }

        return new Fingerprint(all.ToArray());
    }

    /// <summary>Of a text joined from parts.</summary>
    public static Fingerprint Of(GivenText<Delivery> text)
    {
        using var all = new MemoryStream();
        using var writer = new BinaryWriter(all, Encoding.UTF8);
        Write(writer, text.From);
        Write(writer, text.To);
        writer.Write(text.Part?.Reference ?? 0);
        writer.Write(text.Part?.Total ?? 0);
        writer.Write(text.IsComplete);
        writer.Write(text.Text);
        return new Fingerprint(all.ToArray());
    }

    /// <summary>SHA-256 of a name and the contents, cut to 128 bits, in hexadecimal.</summary>
    public string Of(string name)
    {
        var hash = SHA256.HashData((byte[])[.. Encoding.UTF8.GetBytes(name), 0, .. Octets.Span]);
        return Convert.ToHexStringLower(hash.AsSpan(0, Length));
    }

    private static void Write(BinaryWriter writer, Address address)
    {
        writer.Write(address.Ton);
        writer.Write(address.Npi);
        writer.Write(address.Value);
    }
}
