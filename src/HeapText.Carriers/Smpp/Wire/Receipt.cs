using NodaTime;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>What became of a message, as a deliver_sm reports it.</summary>
/// <param name="MessageId">The peer's id, in the form <see cref="MessageIds"/> gives to all ids.</param>
/// <param name="State">What became of it.</param>
/// <param name="DoneAt">When, by the peer's own clock, whose zone it does not say; null when not well written.</param>
/// <param name="Error">The network's error code; null when there is none.</param>
internal sealed record Receipt(string MessageId, ReceiptState State, LocalDateTime? DoneAt, string? Error)
{
    /// <summary>Reads a receipt.</summary>
    /// <param name="body">A deliver_sm.</param>
    /// <param name="ids">How the line writes ids.</param>
    /// <param name="whenDefault">What a data_coding of 0 means on the line.</param>
    /// <returns>Null when it is no receipt, or has no id. That a text looks like one does not make it one: any phone
    /// can send such a text.</returns>
    /// <remarks>Where parameter and text differ, the parameter holds.</remarks>
    public static Receipt? Read(MessageBody body, MessageIds ids, Alphabet whenDefault)
    {
        var tlvs = body.Tlvs;
        if (!EsmClass.IsReceipt(body.EsmClass) && tlvs.ReceiptedMessageId is null) return null;
        var text = ReceiptText.Read(TextOf(body, whenDefault));
        var id = tlvs.ReceiptedMessageId is { Length: > 0 } given
            ? ids.OfReceiptTlv(given)
            : text.Id is { } written ? ids.OfReceiptText(written) : null;
        if (id is null) return null;
        var state = tlvs.MessageState is { } byTlv ? Of(byTlv) : null;
        return new Receipt(
            id,
            EsmClass.IsIntermediate(body.EsmClass) ? ReceiptState.OnTheWay : state ?? text.State,
            text.DoneAt,
            tlvs.NetworkError is { } error ? $"{error.Code}" : text.Error);
    }

    // Peers write it in ASCII whatever data_coding says, and the GSM alphabet has other characters for some of that;
    // UCS-2 alone is told apart. Common practice, no source.
    private static string TextOf(MessageBody body, Alphabet whenDefault)
    {
        var data = UserData.Of(body, whenDefault);
        return data.Alphabet == Alphabet.Ucs2 ? data.Text : TextCoding.Decode(data.Octets.Span, Alphabet.Latin1);
    }

    private static ReceiptState? Of(MessageState state) => state switch
    {
        MessageState.Enroute or MessageState.Accepted => ReceiptState.OnTheWay,
        MessageState.Delivered => ReceiptState.Delivered,
        MessageState.Expired => ReceiptState.Expired,
        MessageState.Deleted or MessageState.Undeliverable => ReceiptState.Failed,
        MessageState.Rejected => ReceiptState.Rejected,
        MessageState.Unknown => ReceiptState.Unknown,
        _ => null,
    };
}

/// <summary>What became of a message.</summary>
internal enum ReceiptState
{
    /// <summary>The peer does not say, or does not know: nothing changes.</summary>
    Unknown,

    /// <summary>Not final: enroute or accepted.</summary>
    OnTheWay,

    /// <summary>It is on the phone.</summary>
    Delivered,

    /// <summary>It cannot be delivered, or was deleted.</summary>
    Failed,

    /// <summary>Its time was over.</summary>
    Expired,

    /// <summary>The network refused it.</summary>
    Rejected,
}
