using HeapText.Carriers.Mapped;
using HeapText.Dialog.Ports;
using Microsoft.Net.Http.Headers;
using NodaTime;

namespace HeapText.Service.Hooks;

/// <summary>The form of a gateway that is met by a mapping.</summary>
internal sealed class MappedForm(MappedLineOptions options) : ILineForm
{
    public string HowToProve => $"Prove who you are as Lines:{options.Name}:Auth says.";

    public bool RepliesInAnswer => options.Sms is { RepliesInAnswer: true };

    public IReadOnlyList<string> Methods(HookKind hook) => (hook switch
    {
        HookKind.Sms => (HookMapping?)options.Sms,
        HookKind.Ussd => options.Ussd,
        HookKind.Receipts => options.Receipts,
        _ => options.Calls,
    })?.Methods ?? [];

    public bool IsGenuine(HookRequest request, Instant now) => AuthCheck.IsGenuine(options.Auth, request, now);

    // No gateway sends these; a page of another site, opened on a machine of the gateway's network, does.
    public IResult? Refuse(HookRequest request) =>
        request.Headers.ContainsKey(HeaderNames.Origin) || request.Headers.ContainsKey("Sec-Fetch-Site")
            ? Faults.FromPage()
            : null;

    public HookReading<Inbound> ReadTexts(HookRequest request, InboundLine line) =>
        options.Sms!.Read(request, line.Name, line.ReadNumber);

    public HookAnswer AnswerTexts(IReadOnlyList<Inbound> texts, string? reply, bool duplicate) =>
        options.Sms!.Write(texts, reply);

    public HookReading<Dialled> ReadStep(HookRequest request, InboundLine line) =>
        options.Ussd!.Read(request, line.Name, line.ReadNumber);

    public HookAnswer AnswerStep(Dialled step, Screen screen) => options.Ussd!.Write(step, screen);

    public HookReading<StateReport> ReadReceipts(HookRequest request, InboundLine line, Instant now) =>
        options.Receipts!.Read(request, line.Name, now);

    public HookAnswer AnswerReceipts(IReadOnlyList<StateReport> reports, bool duplicate) =>
        options.Receipts!.Write(reports);

    public HookReading<MissedCall> ReadCalls(HookRequest request, InboundLine line) =>
        options.Calls!.Read(request, line.Name, line.ReadNumber);

    public HookAnswer AnswerCalls(IReadOnlyList<MissedCall> calls, bool duplicate) => options.Calls!.Write(calls);
}
