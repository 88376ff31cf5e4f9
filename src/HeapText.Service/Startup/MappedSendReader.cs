using System.Globalization;
using System.Text.RegularExpressions;
using HeapText.Carriers.Mapped;

namespace HeapText.Service.Startup;

/// <summary>Reads how messages are handed to the gateway.</summary>
internal static partial class MappedSendReader
{
    private static readonly TimeSpan ShortestTimeout = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestTimeout = TimeSpan.FromSeconds(25);

    /// <summary>How messages are sent; null when it cannot be told.</summary>
    /// <param name="send">Its section.</param>
    /// <param name="from">The number or code farmers see.</param>
    public static SendMapping? Read(MappedSection send, string from)
    {
        send.Know("Method", "Url", "Headers", "ContentType", "Body", "Encodings", "Auth", "Answers", "Timeout");
        var method = send.OneOf("Method", "POST", "GET", "PUT");
        var url = Template.Parse(send.Wanted("Url", "write the gateway's https address that takes messages"));
        CheckUrl(send, url);
        var body = ReadBody(send, method, out var format);
        var headers = send.Headers(Placeholders.SendingPlain);
        if (headers.Any(header => header.Value.Names.Contains("from")) && !HeaderText.IsValue(from))
            send.Fault("Headers", "repeat {from}, which holds more than printable ASCII; put it into the body");
        CheckWhole(send, url, body);
        var auth = send.Part("Auth");
        if (!auth.IsThere)
            auth.Fault("Kind", "is missing; write how the gateway knows us: basic, bearer, header-key, query-key or "
                + "hmac, or none where it goes by our address");
        var proof = MappedAuthReader.Read(auth, inbound: false);
        CheckCovered(auth, proof, headers);
        return new SendMapping
        {
            Method = new HttpMethod(method),
            Url = url,
            Headers = headers,
            ContentType = body is null ? null : send.Text("ContentType"),
            Format = format,
            Body = body,
            Encodings = ReadEncodings(send.Part("Encodings")),
            Auth = proof,
            Answers = ReadAnswers(send.Part("Answers")),
            Timeout = ReadTimeout(send),
        };
    }

    // The host is fixed, so no text or number ever chooses where a request goes.
    private static void CheckUrl(MappedSection send, Template url)
    {
        if (url.Text.Length == 0) return;
        var parts = Address().Match(url.Text);
        if (!parts.Success || !Uri.TryCreate(parts.Groups["origin"].Value, UriKind.Absolute, out var origin)
            || !(origin.Scheme == Uri.UriSchemeHttps || (origin.Scheme == Uri.UriSchemeHttp && origin.IsLoopback)))
        {
            send.Fault("Url", "is not an https address with a fixed host, without a name, a password or a #; write one "
                + "like https://gateway.example/send?to={to}");
            return;
        }

        var path = Template.Parse(parts.Groups["path"].Value);
        if (TemplateCheck.Unknown(path, Placeholders.SendingPlain) is { } inPath)
            send.Fault("Url", $"{inPath} in its path");
        else if (parts.Groups["query"].Value is { Length: > 1 } query
            && TemplateCheck.FaultOf(Template.Parse(query[1..]), TextFormat.Form, Placeholders.Sending) is { } inQuery)
            send.Fault("Url", $"{inQuery} in its query");
    }

    private static Template? ReadBody(MappedSection send, string method, out TextFormat format)
    {
        format = TextFormat.Plain;
        if (send.Raw("Body") is not { } text)
        {
            if (send.Text("ContentType") is not null)
                send.Fault("Body", "is missing; write it, or take out ContentType");
            return null;
        }

        var body = Template.Parse(text);
        if (method == "GET") send.Fault("Body", "goes with no GET; write Method POST, or put the fields into Url");
        var type = send.Wanted("ContentType", "write what the body is, like application/json");
        if (type.Length == 0) return body;
        format = MappedAnswerReader.ReadFormat(send, type);
        if (TemplateCheck.FaultOf(body, format, Placeholders.Sending) is { } fault) send.Fault("Body", fault);
        return body;
    }

    private static void CheckWhole(MappedSection send, Template url, Template? body)
    {
        var names = url.Names.Concat(body?.Names ?? []).ToHashSet();
        if (!names.Contains("text")) send.Fault("leaves out {text}; put it into Body or into the query of Url");
        if (!names.Overlaps(["to", "to-digits", "to-national"]))
            send.Fault("leaves out the farmer's number; put {to}, {to-digits} or {to-national} into Body or Url");
    }

    private static void CheckCovered(
        MappedSection auth, LineAuth proof, IReadOnlyList<KeyValuePair<string, Template>> headers)
    {
        if (proof is not LineAuth.Hmac { Scheme: var scheme }) return;
        foreach (var name in scheme.Over.Names.Where(name => name.StartsWith("header:", StringComparison.Ordinal)))
        {
            var header = name["header:".Length..];
            if (headers.All(one => !one.Key.Equals(header, StringComparison.OrdinalIgnoreCase)))
                auth.Fault("Over", $"names the header {header}, which is not sent; add it to Headers, or take it out");
        }
    }

    private static Dictionary<string, string> ReadEncodings(MappedSection encodings)
    {
        string[] known = ["GSM7", "UCS2"];
        encodings.Know(known);
        foreach (var name in known.Where(name => !HeaderText.IsValue(encodings.Text(name) ?? "")))
            encodings.Fault(name, "holds more than printable ASCII; write the gateway's word for it");
        return known.Where(name => encodings.Text(name) is not null)
            .ToDictionary(name => name, name => encodings.Text(name)!);
    }

    private static AnswerRules ReadAnswers(MappedSection answers)
    {
        answers.Know("Statuses", "Result", "Results", "Reference");
        var (statuses, results) = (answers.Part("Statuses"), answers.Part("Results"));
        statuses.Know(Enum.GetNames<Verdict>());
        results.Know(Enum.GetNames<Verdict>());
        var rules = new AnswerRules
        {
            Statuses = [.. Each(statuses).Select(one => ReadRange(statuses, one.Word, one.Verdict)).OfType<Range>()
                .Select(range => (range.First, range.Last, range.Verdict))],
            Result = ReadPlace(answers, "Result"),
            Results = [.. Each(results)],
            Reference = ReadPlace(answers, "Reference"),
        };
        if (answers.Text("Result") is not null && rules.Results.Count == 0)
            results.Fault("Taken", "is missing; write the gateway's words for it, parted by commas");
        if (answers.Text("Result") is null && rules.Results.Count > 0)
            answers.Fault("Result", "is missing; say where the words of Results stand, like json:/status");
        return rules;
    }

    private static IEnumerable<(string Word, Verdict Verdict)> Each(MappedSection words) =>
        Enum.GetValues<Verdict>().SelectMany(verdict => words.List(verdict.ToString()).Select(word => (word, verdict)));

    private static Range? ReadRange(MappedSection statuses, string word, Verdict verdict)
    {
        var parts = word.Split('-');
        if (parts.Length <= 2 && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var first)
            && int.TryParse(parts[^1], NumberStyles.None, CultureInfo.InvariantCulture, out var last)
            && first is >= 100 and <= 599 && last >= first && last <= 599)
            return new Range(first, last, verdict);
        statuses.Fault(verdict.ToString(), $"names {word}, which is no status; write like 200-299, 409");
        return null;
    }

    private static Field? ReadPlace(MappedSection answers, string key)
    {
        var field = answers.Field(key);
        if (field?.Places.Any(place => place is Place.Query or Place.Hash or Place.Constant) != true) return field;
        answers.Fault(key, "is not in an answer; write json:, xml:, form:, header: or body: and its name "
            + "there");
        return null;
    }

    private static TimeSpan ReadTimeout(MappedSection send)
    {
        if (send.Text("Timeout") is not { } text) return TimeSpan.FromSeconds(10);
        if (!TimeSpan.TryParse(text, CultureInfo.InvariantCulture, out var timeout)
            || timeout < ShortestTimeout || timeout > LongestTimeout)
            send.Fault("Timeout", "is not between 1 and 25 seconds; write it like 00:00:10");
        return timeout;
    }

    private sealed record Range(int First, int Last, Verdict Verdict);

    [GeneratedRegex(@"\A(?<origin>https?://[^/?#@{}\\\s]+)(?<path>/[^?#\\\s]*)?(?<query>\?[^#\\\s]*)?\z")]
    private static partial Regex Address();
}
