using System.Globalization;
using System.Text.Json.Nodes;
using HeapText.Carriers;
using HeapText.Carriers.Mapped;
using HeapText.Carriers.Native;
using HeapText.Carriers.Smpp;
using HeapText.Dialog.Ports;
using HeapText.Service.Hooks;
using NodaTime;
using NodaTime.Text;

namespace HeapText.Service.Verbs;

/// <summary>What the verb <c>line</c> writes of a line.</summary>
internal static class LineViews
{
    private const string SampleReply = "Here stands what the farmer reads.";

    /// <summary>A line of the settings.</summary>
    public static JsonObject Of(LineOptions line, IConfiguration configuration) => new()
    {
        ["name"] = line.Name,
        ["form"] = configuration[$"Lines:{line.Name}:Form"] ?? "native",
        ["from"] = line.From,
        ["region"] = line.Region,
        ["countries"] = Texts(line.Countries.Order(StringComparer.Ordinal)),
        ["allowedFrom"] = Texts(line.AllowedFrom.Select(network => network.ToString())),
        ["segmentsPerSecond"] = line.SegmentsPerSecond,
        ["segmentsPerDay"] = line.SegmentsPerDay,
        ["backup"] = line.Backup,
        ["hooks"] = new JsonArray([.. Hooks(line)]),
        ["sendsTo"] = AddressOf(line),
    };

    // Neither query nor user, which may hold secrets.
    private static string? AddressOf(LineOptions line) => line switch
    {
        MappedLineOptions mapped => mapped.Send.Url.Text.Split('?')[0],
        NativeLineOptions native =>
            native.Url.GetComponents(UriComponents.SchemeAndServer | UriComponents.Path, UriFormat.UriEscaped),
        SmppLineOptions smpp => string.Create(CultureInfo.InvariantCulture, $"{smpp.Host}:{smpp.Port}"),
        _ => null,
    };

    /// <summary>What a line reads from a request, and what it would answer.</summary>
    public static JsonObject Of(InboundLine line, HookKind hook, HookRequest request, Instant now)
    {
        var read = hook switch
        {
            HookKind.Sms => Texts(line, request),
            HookKind.Ussd => Steps(line, request),
            HookKind.Receipts => Receipts(line, request, now),
            _ => Calls(line, request),
        };
        var view = new JsonObject
        {
            ["line"] = line.Name,
            ["hook"] = hook.ToString().ToLowerInvariant(),
            ["methodTaken"] = line.Form.Methods(hook).Contains(request.Method),
            ["genuine"] = line.Form.IsGenuine(request, now),
        };
        foreach (var (name, value) in read) view[name] = value?.DeepClone();
        return view;
    }

    /// <summary>The request that would send a message, its secrets hidden.</summary>
    public static JsonObject Of(MappedLineOptions line, Msisdn to, string text, Instant now)
    {
        var message = new Outbound("sample-1", line.Name, text, Priority.Reply, now, now + Duration.FromDays(1));
        var hidden = line with { Send = line.Send with { Auth = line.Send.Auth.Hidden() } };
        using var request = SendRequest.Write(hidden, message, to, now);
        var headers = request.Headers.Concat(request.Content?.Headers.AsEnumerable() ?? []);
        return new JsonObject
        {
            ["method"] = request.Method.Method,
            ["url"] = request.RequestUri!.AbsoluteUri,
            ["headers"] = new JsonObject(headers.Select(header =>
                KeyValuePair.Create<string, JsonNode?>(header.Key, Shown(line.Send.Auth, header)))),
            ["body"] = request.Content?.ReadAsStringAsync().GetAwaiter().GetResult(),
        };
    }

    // A name and a hidden password would not look hidden in base64, and a hash says something of its key.
    private static string Shown(LineAuth auth, KeyValuePair<string, IEnumerable<string>> header) => auth switch
    {
        LineAuth.Basic when header.Key == "Authorization" => $"Basic {LineSecret.Mask}",
        LineAuth.Hmac(var scheme) when header.Key == scheme.Header => $"{scheme.Prefix}{LineSecret.Mask}",
        _ => string.Join(',', header.Value),
    };

    private static IEnumerable<JsonNode?> Hooks(LineOptions options)
    {
        if (InboundLine.Of(options) is not { } line) yield break;
        foreach (var hook in Enum.GetValues<HookKind>())
        {
            if (line.Form.Methods(hook) is not { Count: > 0 } methods) continue;
            yield return new JsonObject
            {
                ["path"] = $"/{hook.ToString().ToLowerInvariant()}/{line.Name}",
                ["methods"] = Texts(methods),
            };
        }
    }

    private static JsonObject Texts(InboundLine line, HookRequest request)
    {
        var read = line.Form.ReadTexts(request, line);
        var answers = new JsonObject();
        if (read.IsUsable && line.Form.RepliesInAnswer)
        {
            answers["reply"] = View(line.Form.AnswerTexts(read.Taken, SampleReply, false));
            answers["quiet"] = View(line.Form.AnswerTexts(read.Taken, null, false));
        }
        else if (read.IsUsable)
        {
            answers["taken"] = View(line.Form.AnswerTexts(read.Taken, null, false));
        }

        return View(read, answers, text => new JsonObject
        {
            ["id"] = text.Id,
            ["from"] = text.From.Value,
            ["text"] = text.Text,
        });
    }

    private static JsonObject Steps(InboundLine line, HookRequest request)
    {
        var read = line.Form.ReadStep(request, line);
        var answers = new JsonObject();
        if (read.Taken is [var step])
        {
            answers["open"] = View(line.Form.AnswerStep(step, new Screen(SampleReply, Open: true)));
            answers["closed"] = View(line.Form.AnswerStep(step, new Screen(SampleReply, Open: false)));
        }

        return View(read, answers, one => new JsonObject
        {
            ["session"] = one.Session,
            ["step"] = one.Step,
            ["from"] = one.From.Value,
            ["input"] = one.Input,
        });
    }

    private static JsonObject Receipts(InboundLine line, HookRequest request, Instant now)
    {
        var read = line.Form.ReadReceipts(request, line, now);
        var answers = new JsonObject();
        if (read.IsUsable) answers["taken"] = View(line.Form.AnswerReceipts(read.Taken, false));
        return View(read, answers, report => new JsonObject
        {
            ["message"] = report.Message,
            ["state"] = report.Receipt?.State.ToString().ToLowerInvariant() ?? "on its way",
            ["at"] = report.Receipt is { } receipt ? InstantPattern.General.Format(receipt.At) : null,
        });
    }

    private static JsonObject Calls(InboundLine line, HookRequest request)
    {
        var read = line.Form.ReadCalls(request, line);
        var answers = new JsonObject();
        if (read.IsUsable) answers["taken"] = View(line.Form.AnswerCalls(read.Taken, false));
        return View(read, answers, call => new JsonObject { ["id"] = call.Id, ["from"] = call.From.Value });
    }

    private static JsonObject View<T>(HookReading<T> read, JsonObject answers, Func<T, JsonNode> view) => new()
    {
        ["read"] = new JsonArray([.. read.Taken.Select(view)]),
        ["faults"] = Texts(read.Faults),
        ["answers"] = answers,
    };

    private static JsonObject View(HookAnswer answer) => new()
    {
        ["status"] = answer.Status,
        ["contentType"] = answer.ContentType,
        ["headers"] = new JsonObject(answer.Headers.Select(header =>
            KeyValuePair.Create<string, JsonNode?>(header.Key, header.Value))),
        ["body"] = answer.Body,
    };

    private static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(text => JsonValue.Create(text))]);
}
