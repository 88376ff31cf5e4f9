namespace HeapText.Carriers.Mapped;

/// <summary>How the answer to a request is built.</summary>
public sealed record AnswerTemplate
{
    /// <summary>The status. 200 to 499.</summary>
    public int Status { get; init; } = 200;

    /// <summary>The content type; null for an answer without a body.</summary>
    public string? ContentType { get; init; }

    /// <summary>What the body is a document of, by its content type.</summary>
    public TextFormat Format { get; init; }

    /// <summary>The headers.</summary>
    public IReadOnlyList<KeyValuePair<string, Template>> Headers { get; init; } = [];

    /// <summary>The body.</summary>
    public Template Body { get; init; } = Template.Parse("");

    /// <summary>True when a header repeats this value.</summary>
    internal bool RepeatsInHeader(string name) => Headers.Any(header => header.Value.Names.Contains(name));

    /// <summary>The answer.</summary>
    /// <param name="values">What the names stand for.</param>
    public HookAnswer Fill(IReadOnlyDictionary<string, string> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return new HookAnswer(
            Status, ContentType,
            [.. Headers.Select(header => KeyValuePair.Create(
                header.Key, header.Value.Fill(TextFormat.Plain, name => values[name])))],
            Body.Fill(Format, name => values[name]));
    }
}

/// <summary>The answer to a request.</summary>
/// <param name="Status">The status.</param>
/// <param name="ContentType">The content type; null when there is no body.</param>
/// <param name="Headers">Headers beside the content type.</param>
/// <param name="Body">The body, to be sent in UTF-8. May hold what a farmer reads: never logged.</param>
public sealed record HookAnswer(
    int Status, string? ContentType, IReadOnlyList<KeyValuePair<string, string>> Headers, string Body);
