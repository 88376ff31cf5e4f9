using HeapText.Carriers.Mapped;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Service.Hooks;

/// <summary>What comes in at a hook.</summary>
internal enum HookKind
{
    /// <summary>Texts.</summary>
    Sms,

    /// <summary>Steps of dialled sessions.</summary>
    Ussd,

    /// <summary>Receipts.</summary>
    Receipts,

    /// <summary>Missed calls.</summary>
    Calls,
}

/// <summary>The form in which a line's gateway speaks: how its requests are told from forged ones, read and
/// answered.</summary>
internal interface ILineForm
{
    /// <summary>The methods a hook takes; none where the line has no such hook.</summary>
    IReadOnlyList<string> Methods(HookKind hook);

    /// <summary>Whether a request comes from the gateway.</summary>
    bool IsGenuine(HookRequest request, Instant now);

    /// <summary>What a request that does not is told: the same for each.</summary>
    string HowToProve { get; }

    /// <summary>What is wrong with the request as a whole, before its fields are read; null when nothing is.</summary>
    IResult? Refuse(HookRequest request);

    /// <summary>True when the reply to a text stands in the answer instead of being sent.</summary>
    bool RepliesInAnswer { get; }

    /// <summary>Reads texts.</summary>
    HookReading<Inbound> ReadTexts(HookRequest request, InboundLine line);

    /// <summary>Answers texts whose effect is durable.</summary>
    /// <param name="texts">What was read.</param>
    /// <param name="reply">The reply that stands in the answer; null where there is none.</param>
    /// <param name="duplicate">True when all had their effect before.</param>
    HookAnswer AnswerTexts(IReadOnlyList<Inbound> texts, string? reply, bool duplicate);

    /// <summary>Reads a step of a session.</summary>
    HookReading<Dialled> ReadStep(HookRequest request, InboundLine line);

    /// <summary>Answers a step with a screen.</summary>
    HookAnswer AnswerStep(Dialled step, Screen screen);

    /// <summary>Reads receipts.</summary>
    HookReading<StateReport> ReadReceipts(HookRequest request, InboundLine line, Instant now);

    /// <summary>Answers receipts that are kept.</summary>
    HookAnswer AnswerReceipts(IReadOnlyList<StateReport> reports, bool duplicate);

    /// <summary>Reads missed calls.</summary>
    HookReading<MissedCall> ReadCalls(HookRequest request, InboundLine line);

    /// <summary>Answers missed calls whose effect is durable.</summary>
    HookAnswer AnswerCalls(IReadOnlyList<MissedCall> calls, bool duplicate);
}
