using System.Globalization;
using HeapText.Carriers.Mapped;

namespace HeapText.Service.Startup;

/// <summary>Reads how a request is answered.</summary>
internal static class MappedAnswerReader
{
    /// <summary>What an answer says.</summary>
    public static readonly string[] Known = ["Status", "ContentType", "Headers", "Body"];

    private const int LeastStatus = 200;
    private const int MostStatus = 499;

    // The server lets neither have a body, and fails once the effect is durable.
    private const int ResetContent = 205, NotModified = 304;

    /// <summary>The answer.</summary>
    /// <param name="section">Its section; may be left out.</param>
    /// <param name="usual">What it is where the section does not say.</param>
    /// <param name="names">The names its body may hold; its headers may hold all but {text}.</param>
    public static AnswerTemplate Read(MappedSection section, AnswerTemplate usual, IReadOnlyList<string> names)
    {
        section.Know(Known);
        var body = section.Raw("Body") is { } text ? Template.Parse(text) : usual.Body;
        var written = section.Text("ContentType") ?? usual.ContentType;
        var format = written is null ? TextFormat.Plain : ReadFormat(section, written);
        if (written is null && body.Text.Length > 0)
            section.Fault("ContentType", "is missing; write what the body is, like text/plain or application/json");
        else if (TemplateCheck.FaultOf(body, format, names) is { } fault)
            section.Fault("Body", fault);
        return new AnswerTemplate
        {
            Status = ReadStatus(section, usual.Status),
            ContentType = body.Text.Length == 0 ? null : written,
            Format = format,
            Headers = Merge(usual.Headers, section.Headers([.. names.Where(name => name != "text")])),
            Body = body,
        };
    }

    /// <summary>The format of a body; adds a fault when the type is none that can be written.</summary>
    public static TextFormat ReadFormat(MappedSection section, string contentType)
    {
        if (TextFormats.Of(contentType) is { } format) return format;
        section.Fault("ContentType", "is no type that can be written; write application/json, application/xml, "
            + "application/x-www-form-urlencoded or text/plain, in UTF-8");
        return TextFormat.Plain;
    }

    private static int ReadStatus(MappedSection section, int usual)
    {
        if (section.Text("Status") is not { } text) return usual;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var status)
            && status is >= LeastStatus and <= MostStatus and not (ResetContent or NotModified))
            return status;
        section.Fault("Status", $"is no status of an answer; write one from {LeastStatus} to {MostStatus}, but neither "
            + $"{ResetContent} nor {NotModified}, like 200");
        return usual;
    }

    private static List<KeyValuePair<string, Template>> Merge(
        IReadOnlyList<KeyValuePair<string, Template>> usual, IReadOnlyList<KeyValuePair<string, Template>> own) =>
    [
        .. usual.Where(header => own.All(one => !one.Key.Equals(header.Key, StringComparison.OrdinalIgnoreCase))),
        .. own,
    ];
}
