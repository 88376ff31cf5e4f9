using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Text;
using NodaTime;
using NodaTime.Text;
using PhoneNumbers;

namespace HeapText.Carriers.Mapped;

/// <summary>Builds the request that hands one message to the gateway.</summary>
public static class SendRequest
{
    private static readonly PhoneNumberUtil Plans = PhoneNumberUtil.GetInstance();

    /// <summary>The request, with proof of who we are.</summary>
    /// <param name="line">The line.</param>
    /// <param name="message">The message.</param>
    /// <param name="to">The farmer's number.</param>
    /// <param name="now">When it is sent.</param>
    public static HttpRequestMessage Write(MappedLineOptions line, Outbound message, Msisdn to, Instant now)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(message);
        var send = line.Send;
        string Value(string name) => ValueOf(name, line, message, to, now);
        var request = new HttpRequestMessage(send.Method, Address(send, Value));
        if (send is { Body: { } body, ContentType: { } type })
        {
            request.Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body.Fill(send.Format, Value)));
            request.Content.Headers.ContentType = MediaTypeHeaderValue.Parse(type);
        }

        foreach (var (name, value) in send.Headers)
            request.Headers.TryAddWithoutValidation(name, value.Fill(TextFormat.Plain, Value));
        AuthWriter.Prove(send.Auth, request, now);
        return request;
    }

    // Escaped as for a query, which is right for a path as well.
    private static Uri Address(SendMapping send, Func<string, string> value)
    {
        var url = send.Url.Fill(TextFormat.Form, value);
        return new Uri(send.Auth is LineAuth.QueryKey key
            ? url + (url.Contains('?', StringComparison.Ordinal) ? '&' : '?')
                + $"{Uri.EscapeDataString(key.Parameter)}={Uri.EscapeDataString(key.Keys[0].Reveal())}"
            : url);
    }

    private static string ValueOf(string name, MappedLineOptions line, Outbound message, Msisdn to, Instant now)
    {
        var left = Math.Max(1, (long)(message.ExpiresAt - now).TotalSeconds);
        return name switch
        {
            "id" => message.Id,
            "from" => line.From,
            "to" => to.Value,
            "to-digits" => to.Value[1..],
            "to-national" => National(to),
            "text" => message.Text,
            "encoding" => EncodingName(line.Send, message.Text),
            "segments" => Number(Fit.Measure(message.Text).Segments),
            "expires" => InstantPattern.General.Format(message.ExpiresAt),
            "expires-unix" => Number(message.ExpiresAt.ToUnixTimeSeconds()),
            "validity-seconds" => Number(left),
            "validity-minutes" => Number((left + 59) / 60),
            _ => throw new System.Diagnostics.UnreachableException(),
        };
    }

    private static string EncodingName(SendMapping send, string text)
    {
        var name = Fit.Measure(text).EncodingName;
        return send.Encodings.GetValueOrDefault(name, name);
    }

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    // As it is dialled inside its country.
    private static string National(Msisdn to)
    {
        try
        {
            var written = Plans.Format(Plans.Parse(to.Value, null), PhoneNumberFormat.NATIONAL);
            return string.Concat(written.Where(char.IsAsciiDigit));
        }
        catch (NumberParseException)
        {
            return to.Value[1..];
        }
    }
}
