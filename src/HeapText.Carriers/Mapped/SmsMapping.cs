using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HeapText.Carriers.Numbers;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Mapped;

/// <summary>Texts coming in.</summary>
public sealed record SmsMapping : HookMapping
{
    /// <summary>The longest text. [characters]</summary>
    internal const int LongestText = 64 * 1024;

    private const int LongestTime = 64;

    /// <summary>What the answer may repeat where replies are pushed.</summary>
    public static readonly IReadOnlyList<string> Names = ["id", "from"];

    /// <summary>The message's id; the last place may be <see cref="Place.Hash"/>.</summary>
    public required Field Id { get; init; }

    /// <summary>The sender's number.</summary>
    public required Field From { get; init; }

    /// <summary>What was written.</summary>
    public required Field Text { get; init; }

    /// <summary>When it was written, as the gateway writes it; null unless the id is worked out from it.</summary>
    public Field? Time { get; init; }

    /// <summary>True when the reply stands in the answer instead of being sent.</summary>
    public bool RepliesInAnswer { get; init; }

    /// <summary>How it is answered when there is nothing to say.</summary>
    public required AnswerTemplate Quiet { get; init; }

    /// <inheritdoc/>
    public override IEnumerable<Field> Fields => Time is null ? [Id, From, Text] : [Id, From, Text, Time];

    private bool Hashes => Id.Places[^1] is Place.Hash;

    /// <summary>Reads the texts of a request.</summary>
    public HookReading<Inbound> Read(HookRequest request, string line, Func<string, NumberReading> readNumber) =>
        ReadAll(request, fields => ReadOne(fields, line, readNumber));

    /// <summary>The answer: of one text, or of all a request brought.</summary>
    /// <param name="messages">What was read.</param>
    /// <param name="reply">The reply that stands in it; null where there is none.</param>
    public HookAnswer Write(IReadOnlyList<Inbound> messages, string? reply)
    {
        ArgumentNullException.ThrowIfNull(messages);
        var values = new Dictionary<string, string>
        {
            ["count"] = messages.Count.ToString(CultureInfo.InvariantCulture),
            ["text"] = reply ?? "",
        };
        if (messages is [var message]) (values["id"], values["from"]) = (message.Id, message.From.Value);
        return (RepliesInAnswer && string.IsNullOrEmpty(reply) ? Quiet : Answer).Fill(values);
    }

    private Inbound? ReadOne(FieldReader fields, string line, Func<string, NumberReading> readNumber)
    {
        var from = fields.Number(From, readNumber);
        var text = fields.Text(Text, 0, LongestText);
        var id = Hashes && fields.IsMissing(Id)
            ? HashOf(from, text, fields.Text(Time!, 1, LongestTime))
            : fields.Id(Id, Answer.RepeatsInHeader("id") || Quiet.RepeatsInHeader("id"));
        return id is null || from is null || text is null ? null : new Inbound(id, line, from.Value, text);
    }

    private static string? HashOf(Msisdn? from, string? text, string? time)
    {
        if (from is null || text is null || time is null) return null;
        // The length tells where the time ends and the text begins.
        var parts = string.Create(CultureInfo.InvariantCulture, $"{from.Value.Value}\n{time.Length}\n{time}{text}");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(parts)));
    }
}
