using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using HeapText.Carriers.Signing;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HeapText.Carriers.Native;

/// <summary>A gateway that speaks the native form: signed JSON posts.</summary>
public sealed class NativeLine(NativeLineOptions options, IHttpClientFactory clients, TimeProvider time) : ICarrier
{
    /// <inheritdoc/>
    public string Line => options.Name;

    /// <inheritdoc/>
    public async ValueTask<SendOutcome> Send(Outbound message, Msisdn to, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(message);
        using var request = Write(message, to);
        return await LineHttp.Send(
            clients, request, options.Timeout, time, (answer, _) => ValueTask.FromResult(Read(answer)), cancel);
    }

    private HttpRequestMessage Write(Outbound message, Msisdn to)
    {
        var fitting = Fit.Measure(message.Text);
        var body = JsonSerializer.SerializeToUtf8Bytes(
            new NativeMessage(message.Id, options.From, to.Value, message.Text, fitting.EncodingName, fitting.Segments,
                InstantPattern.ExtendedIso.Format(message.ExpiresAt)),
            NativeJson.Default.NativeMessage);
        var now = time.GetUtcNow().ToInstant();
        var request = new HttpRequestMessage(HttpMethod.Post, options.Url) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        request.Headers.Add(WebhookSignature.IdHeader, message.Id);
        request.Headers.Add(WebhookSignature.TimestampHeader,
            now.ToUnixTimeSeconds().ToString(System.Globalization.CultureInfo.InvariantCulture));
        request.Headers.Add(WebhookSignature.SignatureHeader,
            WebhookSignature.Write(options.Keys, message.Id, now, body));
        return request;
    }

    private SendOutcome Read(HttpResponseMessage answer) => (int)answer.StatusCode switch
    {
        >= 200 and < 300 => new SendOutcome.Taken(),
        (int)HttpStatusCode.TooManyRequests or (int)HttpStatusCode.ServiceUnavailable =>
            new SendOutcome.Busy(LineHttp.AskedToWait(answer, time)),
        (int)HttpStatusCode.BadGateway or (int)HttpStatusCode.GatewayTimeout =>
            new SendOutcome.TryAgain(LineHttp.AskedToWait(answer, time), LineBusy: true),
        >= 400 and < 500 => new SendOutcome.Refused($"The gateway refused it with {(int)answer.StatusCode}."),
        _ => new SendOutcome.TryAgain(null),
    };
}
