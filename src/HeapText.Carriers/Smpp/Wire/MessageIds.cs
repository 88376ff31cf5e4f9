using System.Globalization;
using System.Numerics;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>How a peer writes the ids of messages.</summary>
internal enum MessageIdForm
{
    /// <summary>Characters with no meaning, compared as they are.</summary>
    AsIs,

    /// <summary>A number in hexadecimal.</summary>
    Hex,

    /// <summary>A number in decimal.</summary>
    Decimal,
}

/// <summary>Brings the ids of a line's responses and receipts into one form, so that a receipt finds its message though
/// the peer writes the id in two ways.</summary>
/// <param name="Responses">The form in submit_sm_resp.</param>
/// <param name="ReceiptTexts">The form in the text of receipts.</param>
/// <param name="ReceiptTlvs">The form in receipted_message_id; null for that of responses, as the standard has
/// it.</param>
internal sealed record MessageIds(
    MessageIdForm Responses = MessageIdForm.AsIs,
    MessageIdForm ReceiptTexts = MessageIdForm.AsIs,
    MessageIdForm? ReceiptTlvs = null)
{
    // The longest id the standard allows.
    private const int MostDigits = 64;

    public string OfResponse(string id) => Normal(id, Responses);

    public string OfReceiptText(string id) => Normal(id, ReceiptTexts);

    public string OfReceiptTlv(string id) => Normal(id, ReceiptTlvs ?? Responses);

    // Decimal without leading zeros; what is no number of its form stays as it is.
    private static string Normal(string id, MessageIdForm form)
    {
        var bare = id.Trim();
        var isNumber = bare.Length is > 0 and <= MostDigits && form switch
        {
            MessageIdForm.Hex => bare.All(char.IsAsciiHexDigit),
            MessageIdForm.Decimal => bare.All(char.IsAsciiDigit),
            _ => false,
        };
        if (!isNumber) return bare;
        // A zero in front keeps the highest bit of a hexadecimal number from being its sign.
        var style = form == MessageIdForm.Hex ? NumberStyles.AllowHexSpecifier : NumberStyles.None;
        return BigInteger.Parse("0" + bare, style, CultureInfo.InvariantCulture)
            .ToString(CultureInfo.InvariantCulture);
    }
}
