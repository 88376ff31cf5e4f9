using HeapText.Dialog.Ports;
using Microsoft.Extensions.Primitives;
using NodaTime.Extensions;

namespace HeapText.Carriers.Mapped;

/// <summary>Sends on a line to a gateway that is met by a mapping.</summary>
public sealed class MappedLine(MappedLineOptions options, IHttpClientFactory clients, TimeProvider time) : ICarrier
{
    /// <summary>The most that is read of an answer. [bytes]</summary>
    public const int MostAnswerBytes = 64 * 1024;

    /// <inheritdoc/>
    public string Line => options.Name;

    /// <inheritdoc/>
    public async ValueTask<SendOutcome> Send(Outbound message, Msisdn to, CancellationToken cancel)
    {
        using var request = SendRequest.Write(options, message, to, time.GetUtcNow().ToInstant());
        return await LineHttp.Send(clients, request, options.Send.Timeout, time, Judge, cancel);
    }

    private async ValueTask<SendOutcome> Judge(HttpResponseMessage answer, CancellationToken cancel)
    {
        var source = options.Send.Answers.Reads(answer.StatusCode) ? await Open(answer, cancel) : null;
        return options.Send.Answers.Judge(answer.StatusCode, source, LineHttp.AskedToWait(answer, time));
    }

    // An answer that breaks off, or is too long, tells by its status alone.
    private static async Task<FieldSource> Open(HttpResponseMessage answer, CancellationToken cancel)
    {
        ReadOnlyMemory<byte> body = default;
        try
        {
            body = await Read(answer.Content, cancel);
        }
        catch (Exception broken) when (broken is HttpRequestException or IOException or OperationCanceledException)
        {
            // The headers are here.
        }

        return new FieldSource(name => Header(answer, name), "", body);
    }

    private static async Task<ReadOnlyMemory<byte>> Read(HttpContent content, CancellationToken cancel)
    {
        await using var stream = await content.ReadAsStreamAsync(cancel);
        var buffer = new byte[MostAnswerBytes + 1];
        var length = await stream.ReadAtLeastAsync(buffer, buffer.Length, throwOnEndOfStream: false, cancel);
        return length > MostAnswerBytes ? default : buffer.AsMemory(0, length);
    }

    private static StringValues Header(HttpResponseMessage answer, string name) =>
        answer.Headers.TryGetValues(name, out var values) || answer.Content.Headers.TryGetValues(name, out values)
            ? new StringValues([.. values])
            : StringValues.Empty;
}
