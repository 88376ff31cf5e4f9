using System.Globalization;
using HeapText.Carriers.Numbers;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Mapped;

/// <summary>Missed calls coming in.</summary>
public sealed record CallMapping : HookMapping
{
    /// <summary>What the answer may repeat.</summary>
    public static readonly IReadOnlyList<string> Names = ["id", "from"];

    /// <summary>The call's id.</summary>
    public required Field Id { get; init; }

    /// <summary>The caller's number.</summary>
    public required Field From { get; init; }

    /// <inheritdoc/>
    public override IEnumerable<Field> Fields => [Id, From];

    /// <summary>Reads the calls of a request.</summary>
    public HookReading<MissedCall> Read(HookRequest request, string line, Func<string, NumberReading> readNumber) =>
        ReadAll(request, fields =>
        {
            var id = fields.Id(Id, Answer.RepeatsInHeader("id"));
            var from = fields.Number(From, readNumber);
            return id is null || from is null ? null : new MissedCall(id, line, from.Value);
        });

    /// <summary>The answer: of one call, or of all a request brought.</summary>
    public HookAnswer Write(IReadOnlyList<MissedCall> calls)
    {
        ArgumentNullException.ThrowIfNull(calls);
        var values = new Dictionary<string, string>
        {
            ["count"] = calls.Count.ToString(CultureInfo.InvariantCulture),
        };
        if (calls is [var call]) (values["id"], values["from"]) = (call.Id, call.From.Value);
        return Answer.Fill(values);
    }
}
