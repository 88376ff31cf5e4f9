using System.Net.Mime;
using System.Text.Json;
using HeapText.Carriers.Mapped;
using HeapText.Carriers.Signing;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Service.Hooks;

/// <summary>Our own form: JSON, signed by Standard Webhooks.</summary>
/// <param name="keys">Keys a message must be signed with; null on the practice line, which takes unsigned ones.</param>
internal sealed class NativeForm(IReadOnlyList<WebhookKey>? keys) : ILineForm
{
    private static readonly string[] Post = [HttpMethods.Post];

    public string HowToProve =>
        "Sign the message per the Standard Webhooks specification with a live secret of this line.";

    public bool RepliesInAnswer => false;

    public IReadOnlyList<string> Methods(HookKind hook) => Post;

    public bool IsGenuine(HookRequest request, Instant now) => keys is null || WebhookSignature.IsGenuine(
        keys,
        Single(request, WebhookSignature.IdHeader),
        Single(request, WebhookSignature.TimestampHeader),
        Single(request, WebhookSignature.SignatureHeader),
        request.Body.Span,
        now);

    public IResult? Refuse(HookRequest request) => HookBody.IsJson(request.Headers) ? null : Faults.NotJson();

    public HookReading<Inbound> ReadTexts(HookRequest request, InboundLine line) =>
        Reading(SmsBody.Read(request.Body, line, out var fault), fault);

    public HookAnswer AnswerTexts(IReadOnlyList<Inbound> texts, string? reply, bool duplicate) => Accepted(duplicate);

    public HookReading<Dialled> ReadStep(HookRequest request, InboundLine line) =>
        Reading(UssdBody.Read(request.Body, line, out var fault), fault);

    public HookAnswer AnswerStep(Dialled step, Screen screen) =>
        Json(StatusCodes.Status200OK, new UssdScreen(screen.Text, screen.Open));

    public HookReading<StateReport> ReadReceipts(HookRequest request, InboundLine line, Instant now)
    {
        var receipt = ReceiptBody.Read(request.Body, line, now, out var fault);
        return Reading(receipt is null ? null : new StateReport(receipt.Reference, receipt), fault);
    }

    public HookAnswer AnswerReceipts(IReadOnlyList<StateReport> reports, bool duplicate) => Accepted(duplicate);

    public HookReading<MissedCall> ReadCalls(HookRequest request, InboundLine line) =>
        Reading(CallBody.Read(request.Body, line, out var fault), fault);

    public HookAnswer AnswerCalls(IReadOnlyList<MissedCall> calls, bool duplicate) => Accepted(duplicate);

    private static HookReading<T> Reading<T>(T? read, string fault)
        where T : class => read is null ? new([], [fault]) : new([read], []);

    private static HookAnswer Accepted(bool duplicate) =>
        Json(StatusCodes.Status202Accepted, new HookAccepted(true, duplicate));

    private static HookAnswer Json<T>(int status, T body) => new(
        status, $"{MediaTypeNames.Application.Json}; charset=utf-8", [],
        JsonSerializer.Serialize(body, JsonSerializerOptions.Web));

    private static string? Single(HookRequest request, string header) =>
        request.Headers[header] is [var value] ? value : null;
}

/// <summary>The answer once the message and all its effects are durable.</summary>
/// <param name="Accepted">Always true.</param>
/// <param name="Duplicate">True when this id had its effect before.</param>
internal sealed record HookAccepted(bool Accepted, bool Duplicate);
