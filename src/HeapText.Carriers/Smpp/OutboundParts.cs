using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Carriers.Smpp;

/// <summary>Makes messages into the submit_sm's of a line.</summary>
internal sealed class OutboundParts
{
    private static readonly AddressRules Addresses = new();
    private readonly Submission _submission;
    private readonly SmppLineOptions _line;
    private readonly Address _sender;

    public OutboundParts(SmppLineOptions line)
    {
        _line = line;
        _submission = new Submission(line.Alphabet, line.LongTexts);
        var sender = Addresses.Sender(line.From);
        _sender = new Address(line.SourceTon ?? sender.Ton, line.SourceNpi ?? sender.Npi, sender.Value);
    }

    /// <summary>The parts of a message, in order. The same message gives the same parts with the same references, but
    /// for the time left.</summary>
    public IReadOnlyList<MessageBody> Of(Outbound message, Msisdn to, Instant now)
    {
        var shared = new MessageBody
        {
            ServiceType = _line.ServiceType,
            Source = _sender,
            Destination = Addresses.Phone(to),
            ValidityPeriod = SmppTime.Validity(message.ExpiresAt, now, _line.Validity),
            RegisteredDelivery = (byte)(_line.Receipts ? 1 : 0),
        };
        var parts = _submission.Messages(message.Text, shared, JoiningReference(message.Id));
        var mark = Mark(message.Id);
        return [.. parts.Select((part, i) => part with
        {
            Tlvs = part.Tlvs.With(TlvTag.UserMessageReference, unchecked((ushort)(mark + i))),
        })];
    }

    /// <summary>How many segments a text takes, in the alphabet it is sent in.</summary>
    public int Segments(string text) => _submission.Segments(text);

    /// <summary>A screen in answer to a step of a session.</summary>
    public MessageBody Screen(MessageBody step, string text, UssdServiceOp operation, ItsSessionInfo? session)
    {
        var tlvs = Tlvs.None.With(TlvTag.UssdServiceOp, (byte)operation);
        if (session is { } info) tlvs = tlvs.With(TlvTag.ItsSessionInfo, info.ToOctets());
        var shared = new MessageBody
        {
            ServiceType = step.ServiceType,
            Source = step.Destination,
            Destination = step.Source,
            Tlvs = tlvs,
        };
        return _submission.Messages(text, shared, 0)[0];
    }

    // The farmer's running number of messages: two long texts in a row never have the same, which a phone would join.
    private static ushort JoiningReference(string id) =>
        uint.TryParse(
            id.AsSpan(id.LastIndexOf('-') + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? (ushort)(number & 0xFFFF)
            : Mark(id);

    private static ushort Mark(string id) =>
        BinaryPrimitives.ReadUInt16BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(id)));
}
